import { diagnose } from '../../reckon/rail/diagnose.ts';
import type { Diagnosis, RailSurvey } from '../../reckon/rail/diagnosis.ts';
import { flatSag, offsetsAt } from '../../reckon/rail/forward.ts';
import type { RailPlan } from '../../reckon/rail/rail-plan.ts';
import { planRecuts } from '../../reckon/rail/recuts.ts';
import { fitRigid, rigidColumns } from '../../reckon/rail/rigid.ts';

/** What is known of a rail that lies off its line: plain data, the same for the same survey. */
export type RailQuestion = Readonly<{
  /** The line it was read to, and its slits along that line. */
  line: RailPlan;
  stations_mm: readonly number[];
  /** As read, less what is expected at each station, the flats' own sag left in; mm, + toward the centre. */
  offsets_mm: readonly number[];
  read_to_mm: number;
  depth_mm: number;
  deck_mm: number;
  wall_mm: number;
  /** Second less first reading of the stations read twice, mm. */
  twice_mm: readonly number[];
  /** What an angle gauge said of single slits, from 1: closed more (+) than planned, rad. */
  gauge: readonly SlitTurn[];
  /** Worst that a remedy aims to leave, mm. */
  aim_mm: number;
  /** How far a slit may be opened and closed, rad, and slits that stay as they are, from 1. Null: none may be cut. */
  recut: Readonly<{ open_rad: number; close_rad: number; leave: readonly number[] }> | null;
  /** How far a slit sawn midway between two others can close, rad, and behind which slits one has room. Null: nowhere. */
  fresh: Readonly<{ most_rad: number; behind: readonly number[] }> | null;
}>;

/** One slit to turn, counted from 1; + closes it, rad. */
export type SlitTurn = Readonly<{ slit: number; turn_rad: number }>;

export type RailAnswer = Readonly<
  Pick<
    Diagnosis,
    | 'cause'
    | 'sure'
    | 'rivals'
    | 'notes'
    | 'even_rad'
    | 'odd_slits'
    | 'doubted_station'
    | 'measure_again'
    | 'edge_mm'
  > & {
    /** Worst at the stations with the rail laid at its best, mm. */
    worst_mm: number;
    /** The same without the reading that is not believed, mm; as worst_mm where all are believed. */
    believed_mm: number;
    recuts: readonly SlitTurn[];
    /** Worst after the re-cuts, mm. */
    recut_mm: number;
    /** A slit that was not closed, or not sawn, and what closing it leaves, mm. */
    missed: Readonly<SlitTurn & { after_mm: number }> | null;
    /** Slits to saw midway behind these, each turned by so much, and what that leaves, mm. */
    fresh: Readonly<{ slits: readonly Readonly<SlitTurn & { at_mm: number }>[]; after_mm: number }> | null;
  }
>;

/** New slits in one rail at most: more of them, and a spare rail is quicker. */
const MOST_FRESH = 6;

const surveyOf = (q: RailQuestion): RailSurvey => ({
  plan: q.line,
  stations_mm: q.stations_mm,
  offsets_mm: q.offsets_mm,
  read_to_mm: q.read_to_mm,
  depth_mm: q.depth_mm,
  deck_mm: q.deck_mm,
  wall_mm: q.wall_mm,
  gauge: q.gauge,
  twice_mm: q.twice_mm,
});

/** Worst at the stations after slits were turned, the rail laid at its best. Station `without` (from 1) is left out. */
const worstAfter = (
  survey: RailSurvey,
  d: Diagnosis,
  turns: readonly SlitTurn[],
  without: number | null = null,
  dent: (station_mm: number) => number = () => 0,
): number => {
  const { plan, stations_mm, offsets_mm } = survey;
  const turned = d.errors_rad.map(
    (e, i) => e + turns.reduce((sum, t) => (t.slit === i + 1 ? sum + t.turn_rad : sum), 0),
  );
  const now = offsetsAt(plan, d.errors_rad, d.rigid, stations_mm);
  const then = turns.length === 0 ? now : offsetsAt(plan, turned, d.rigid, stations_mm);
  const rows = stations_mm.map((s, j) => ({
    s,
    left: (offsets_mm[j] ?? 0) - d.edge_mm + (then[j] ?? 0) - (now[j] ?? 0) - flatSag(plan, s) - dent(s),
  }));
  const kept = rows.filter((_, j) => j + 1 !== without);
  return fitRigid(
    rigidColumns(
      plan,
      kept.map(r => r.s),
    ),
    kept.map(r => r.left),
  ).worst_mm;
};

const missedSlit = (survey: RailSurvey, d: Diagnosis): RailAnswer['missed'] => {
  const slit = d.notes.find(n => n.is === 'missed-slit')?.slit;
  if (slit === undefined) return null;
  const turn_rad = survey.plan.bend_rad / survey.plan.slits_mm.length;
  return { slit, turn_rad, after_mm: worstAfter(survey, d, [{ slit, turn_rad }]) };
};

/**
 * New slits midway between two others for a rail that bends too little: as few as do, evenly spread, each closing alike.
 * A turn half way between two slits acts on the rest of the rail as half of it in each; on the flat itself its corner stands
 * outside by half the turn times what is left of the way to the nearer slit [derived].
 */
const freshSlits = (q: RailQuestion, survey: RailSurvey, d: Diagnosis): RailAnswer['fresh'] => {
  const { slits_mm } = survey.plan;
  const short = -d.even_rad * slits_mm.length;
  if (q.fresh === null || q.fresh.most_rad <= 0 || !d.cause.startsWith('under-curl') || short <= 0)
    return null;
  const room = q.fresh.behind.filter(slit => slit >= 1 && slit < slits_mm.length);
  let best: RailAnswer['fresh'] = null;
  for (let m = Math.ceil(short / q.fresh.most_rad); m <= Math.min(MOST_FRESH, room.length); m++) {
    const turn_rad = short / m;
    const slits = evenlyFrom(room, m, slits_mm.length).map(slit => ({
      slit,
      turn_rad,
      at_mm: ((slits_mm[slit - 1] ?? 0) + (slits_mm[slit] ?? 0)) / 2,
    }));
    const halves = slits.flatMap(s => [
      { slit: s.slit, turn_rad: turn_rad / 2 },
      { slit: s.slit + 1, turn_rad: turn_rad / 2 },
    ]);
    const dent = (station_mm: number): number =>
      slits.reduce((sum, { slit, at_mm }) => {
        const room = ((slits_mm[slit] ?? at_mm) - (slits_mm[slit - 1] ?? at_mm)) / 2;
        return sum + (turn_rad / 2) * Math.max(0, room - Math.abs(station_mm - at_mm));
      }, 0);
    const after_mm = worstAfter(survey, d, halves, null, dent);
    if (best === null || after_mm < best.after_mm) best = { slits, after_mm };
    if (after_mm <= q.aim_mm) break;
  }
  return best;
};

/** m of the places that are free, each the nearest left to where it would stand if all were. */
const evenlyFrom = (room: readonly number[], m: number, slits: number): readonly number[] => {
  const free = new Set(room);
  return Array.from({ length: m }, (_, k) => ((k + 0.5) * slits) / m).map(wanted => {
    const nearest = [...free].reduce((a, b) => (Math.abs(b - wanted) < Math.abs(a - wanted) ? b : a));
    free.delete(nearest);
    return nearest;
  });
};

const plannedRecuts = (
  q: RailQuestion,
  survey: RailSurvey,
  d: Diagnosis,
): { recuts: SlitTurn[]; recut_mm: number } => {
  if (q.recut === null) return { recuts: [], recut_mm: worstAfter(survey, d, []) };
  const found = planRecuts(survey, d, {
    tolerance_mm: q.aim_mm,
    most_open_rad: q.recut.open_rad,
    most_close_rad: q.recut.close_rad,
    leave: q.recut.leave,
  });
  return {
    recuts: found.recuts.map(r => ({ slit: r.slit, turn_rad: r.turn_rad })),
    recut_mm: found.worst_after_mm,
  };
};

/**
 * What a survey says of a rail, and what the slits can do about it. Heavy: asked, and computed off the key's thread.
 * @param q three stations or more
 */
export const railAnswer = (q: RailQuestion): RailAnswer => {
  const survey = surveyOf(q);
  const d = diagnose(survey);
  return {
    cause: d.cause,
    sure: d.sure,
    rivals: d.rivals,
    notes: d.notes,
    even_rad: d.even_rad,
    odd_slits: d.odd_slits,
    doubted_station: d.doubted_station,
    measure_again: d.measure_again,
    edge_mm: d.edge_mm,
    worst_mm: worstAfter(survey, d, []),
    believed_mm: worstAfter(survey, d, [], d.doubted_station),
    ...plannedRecuts(q, survey, d),
    missed: missedSlit(survey, d),
    fresh: freshSlits(q, survey, d),
  };
};

import type { Diagnosis, RailSurvey } from './diagnosis.ts';
import { bench, flatSag, offsetsOn, slopesOn } from './forward.ts';
import { flatMiddles, lineLength } from './rail-plan.ts';
import { type Shaping, searchSlits } from './recut-search.ts';
import { fitRigid, type RigidColumns, rigidColumns } from './rigid.ts';

/**
 * Which slits to open or close again, and by how much, so that the rail lies on its line.
 *
 * The prediction starts from the readings, not from the cause: what each re-cut moves is taken from the exact shape, and what
 * the cause leaves unexplained stays in. [derived: minimax with a free rigid fit, seeded with even spacing; pure greedy
 * addition is worse]
 */

/** One slit to saw again: `turn_rad` + closes it, − opens it, as it is to stand after the weld has pulled. */
export type Recut = Readonly<{
  /** Counted from 1. */
  slit: number;
  turn_rad: number;
  /** Gap at the face when sawn and set, before welding, mm; null when kerf or tube are not known. */
  face_gap_mm: number | null;
}>;

export type RecutLimits = Readonly<{
  /** Largest offset that is let stand, mm. */
  tolerance_mm: number;
  /** Kerf of the re-cut, mm, and how much a slit turns as its weld cools, rad. */
  kerf_mm?: number;
  pull_rad?: number;
  /** Lever from the back wall's middle to the slit face, mm: depth less half the wall. */
  lever_mm?: number;
  /** Never more slits than this. */
  most?: number;
  /**
   * Where six closings by the kerf do not do, slits may be sawn wider than the kerf: a second pass, or a thicker disc. Their gap
   * comes out below nothing, by so much must the saw cut be wider.
   */
  wider?: boolean;
  /** Slits that must not be touched, counted from 1: re-cut once already, nicked at the back wall, under an upright. */
  leave?: readonly number[];
  /** Greatest gap to be welded, mm: bench practice 1.5 mm or half the wall, the lesser. */
  most_gap_mm?: number;
  /** Most that one slit may be opened and closed, rad. */
  most_open_rad?: number;
  most_close_rad?: number;
  /** The entry end stays on its mark: the rail may be turned about it but not shifted. */
  entry_held?: boolean;
}>;

export type RecutPlan = Readonly<{
  recuts: readonly Recut[];
  /** Largest offset at the stations as the rail is, own sag off, laid at its best, mm. */
  worst_mm: number;
  /** The same after the re-cuts. */
  worst_after_mm: number;
  within: boolean;
  /** What is left at each station after the re-cuts, laid at its best, mm. */
  left_mm: readonly number[];
}>;

/** Bench practice: a shim is a built-in crack, so no gap above this is welded, nor above half the wall [practice]. */
export const mostGap = (wall_mm: number): number => Math.min(1.5, wall_mm / 2);

/** Gap at the face before welding, mm: kerf − h (turn − pull). */
export const recutGap = (kerf_mm: number, lever_mm: number, turn_rad: number, pull_rad: number): number =>
  kerf_mm - lever_mm * (turn_rad - pull_rad);

const MOST = 6;
/** No search needs a slit turned further, rad. */
const REACH = 0.3;
/** Between stations the rail is known only by the diagnosis: there a little more is let stand, as a share of the tolerance. */
const BETWEEN = 1.25;

/**
 * The fewest re-cuts that bring the rail within tolerance, never more than six; where six do not, the best of them.
 *
 * @param survey the readings
 * @param diagnosis of the same readings; while they contradict each other there is nothing to cut, and where it asks to measure
 *   again the plan is only what these readings would ask for
 */
export function planRecuts(survey: RailSurvey, diagnosis: Diagnosis, limits: RecutLimits): RecutPlan {
  const shaping = shapingOf(survey, diagnosis, limits);
  const before = shaping.lay(shaping.raw_mm);
  const none = (worst_after_mm: number, left_mm: readonly number[]): RecutPlan => ({
    recuts: [],
    worst_mm: before.worst_mm,
    worst_after_mm,
    within: worst_after_mm <= limits.tolerance_mm,
    left_mm,
  });
  // Read from the wrong edge, a rail is judged by its readings from the right one.
  const righted = shaping.lay(shaping.raw_mm.map(o => o - diagnosis.edge_mm));
  if (righted.worst_mm <= limits.tolerance_mm || before.worst_mm <= limits.tolerance_mm)
    return none(Math.min(righted.worst_mm, before.worst_mm), righted.left_mm);
  // Readings that contradict each other would be cut into the steel: one is wrong, or they jump half way.
  if (diagnosis.contradictory) return none(before.worst_mm, before.left_mm);
  const found = searchSlits(shaping);
  const { wider = false, ...rest } = limits;
  if (wider && found !== null && found.worst_mm > limits.tolerance_mm)
    return planWider(survey, diagnosis, rest);
  if (found === null) return none(righted.worst_mm, righted.left_mm);
  const { kerf_mm, lever_mm, pull_rad = 0 } = limits;
  const recuts = found.slits
    .map((slit, k) => {
      const turn_rad = found.turns[k]!;
      const known = kerf_mm !== undefined && lever_mm !== undefined;
      return {
        slit: slit + 1,
        turn_rad,
        face_gap_mm: known ? recutGap(kerf_mm, lever_mm, turn_rad, pull_rad) : null,
      };
    })
    .sort((a, b) => a.slit - b.slit);
  return {
    recuts,
    worst_mm: before.worst_mm,
    worst_after_mm: found.worst_mm,
    within: found.worst_mm <= limits.tolerance_mm,
    left_mm: found.left_mm,
  };
}

/** The same with no kerf to bound a closing; the gaps told for the kerf all the same. */
function planWider(survey: RailSurvey, diagnosis: Diagnosis, limits: RecutLimits): RecutPlan {
  const { kerf_mm, lever_mm, pull_rad = 0, most_gap_mm, ...rest } = limits;
  const plan = planRecuts(survey, diagnosis, {
    ...rest,
    // Opening keeps the bound that a gap sets; only closing goes on past the kerf.
    ...(kerf_mm === undefined || lever_mm === undefined || most_gap_mm === undefined
      ? {}
      : { most_open_rad: Math.max(0, (most_gap_mm - kerf_mm) / lever_mm - pull_rad) }),
  });
  if (kerf_mm === undefined || lever_mm === undefined) return plan;
  const recuts = plan.recuts.map(r => ({
    ...r,
    face_gap_mm: recutGap(kerf_mm, lever_mm, r.turn_rad, pull_rad),
  }));
  return { ...plan, recuts };
}

/** How far each slit may turn, rad: the kerf limits closing, the gap limits opening. */
function boundsOf(limits: RecutLimits): [number, number] {
  const {
    kerf_mm,
    lever_mm,
    pull_rad = 0,
    most_gap_mm,
    most_open_rad = REACH,
    most_close_rad = REACH,
  } = limits;
  let low = -most_open_rad;
  let high = most_close_rad;
  if (kerf_mm !== undefined && lever_mm !== undefined) {
    high = Math.min(high, pull_rad + kerf_mm / lever_mm);
    if (most_gap_mm !== undefined) low = Math.max(low, pull_rad + (kerf_mm - most_gap_mm) / lever_mm);
  }
  return [Math.min(low, high - 1e-6), high];
}

function shapingOf(survey: RailSurvey, diagnosis: Diagnosis, limits: RecutLimits): Shaping {
  const { plan, stations_mm, offsets_mm } = survey;
  const { errors_rad, rigid } = diagnosis;
  const slits = plan.slits_mm.length;
  const n = stations_mm.length;
  // Where something stands in the readings that is no slit, the diagnosis knows nothing between them.
  const between = diagnosis.measure_again ? [] : [...new Set([...flatMiddles(plan), lineLength(plan)])];
  const places = [...stations_mm, ...between];
  const on = bench(plan, places);
  const columns = rigidColumns(plan, places);
  const atStations: RigidColumns = { shift: columns.shift.slice(0, n), turn: columns.turn.slice(0, n) };
  const now = offsetsOn(on, errors_rad, rigid);
  const sag = stations_mm.map(s => flatSag(plan, s));
  const entry = limits.entry_held ? rigid.y_mm : undefined;
  const leave = new Set(limits.leave ?? []);
  const [low, high] = boundsOf(limits);
  /** Takes the fit at the stations off a row of places; the places between follow it. */
  const strip = (row: ArrayLike<number>, held: number | undefined): Float64Array => {
    const { rigid: fit } = fitRigid(
      atStations,
      Array.from({ length: n }, (_, j) => row[j]!),
      held,
    );
    return Float64Array.from(places, (_, j) => {
      const rest = row[j]! - columns.shift[j]! * fit.y_mm - columns.turn[j]! * fit.turn_rad;
      return j < n ? rest : rest / BETWEEN;
    });
  };
  const shape = (turns: readonly number[]) => errors_rad.map((e, i) => e + (turns[i] ?? 0));
  return {
    slits: [...plan.slits_mm.keys()].filter(i => !leave.has(i + 1)),
    odd: diagnosis.odd_slits.map(o => o.slit - 1).filter(i => !leave.has(i + 1)),
    count: slits,
    most: Math.min(limits.most ?? MOST, MOST),
    tolerance_mm: limits.tolerance_mm,
    half: errors_rad.map(e => -e / 2),
    low,
    high,
    raw_mm: offsets_mm.map((o, j) => o - sag[j]!),
    lay: offsets => fitRigid(atStations, offsets, entry),
    rows: turns => {
      const moved = offsetsOn(on, shape(turns), rigid);
      const row = places.map((_, j) =>
        j < n
          ? offsets_mm[j]! - diagnosis.edge_mm - sag[j]! + moved[j]! - now[j]!
          : moved[j]! - on.sag_mm[j]!,
      );
      return strip(row, entry);
    },
    columns: turns => {
      const { bySlit } = slopesOn(on, shape(turns), rigid);
      return Array.from({ length: slits }, (_, i) =>
        strip(
          bySlit.subarray(i * places.length, (i + 1) * places.length),
          entry === undefined ? undefined : 0,
        ),
      );
    },
    stations: n,
  };
}

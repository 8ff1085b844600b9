import { edgeCorrection, looksLikeOtherEdge, readStations } from '../../build/facts.ts';
import type { Survey } from '../../build/fold.ts';
import { countingSurvey } from '../../build/surveys.ts';
import type { RailName, Tube } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { tackLineOffset } from '../../ramp/rail-shape.ts';
import { deckThickness } from '../../ramp/settle.ts';
import { flatSag } from '../../reckon/rail/forward.ts';
import { arcLength, type RailPlan as Line } from '../../reckon/rail/rail-plan.ts';
import { fitRigid, type RigidColumns, type RigidFit, rigidColumns } from '../../reckon/rail/rigid.ts';
import { alongLine } from '../jig.ts';
import type { Situation } from '../situation.ts';
import { type GaugeRead, gaugeReads } from './gauge.ts';
import { outstanding } from './welded-slits.ts';

/** One rail by its counting survey, as numbers: how it lies, and how it would lie at its best. */
export type RailReading = Readonly<{
  rail: RailName;
  index: number;
  survey: Survey;
  plan: RailPlan;
  tube: Tube;
  deck_mm: number;
  /** The line it was read to, with its slits along that line. */
  line: Line;
  stations_mm: readonly number[];
  /** Number of each station read, from 1. */
  numbers: readonly number[];
  /** Of the bottom face, as read. */
  offsets_mm: readonly number[];
  /** Less what is expected there, the flats' own sag left in. */
  deviations_mm: readonly number[];
  /** The same, the sag taken off: how it lies. */
  lies_mm: readonly number[];
  /** Laid at its best. */
  fit: RigidFit;
  /** Worst as it lies. */
  worst_mm: number;
  /** Greatest change from one flat to the next, laid at its best. */
  step_mm: number;
  /** Second less first reading of the stations read twice, mm. */
  twice_mm: readonly number[];
  /** What an angle gauge said of single slits since; empty while none was laid. */
  gauge: readonly GaugeRead[];
  /** The size of an edge that all readings are off by; null where they are not. */
  otherEdge_mm: number | null;
}>;

export const largest = (values: readonly number[]): number =>
  values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);

/** The finding of a rail off its line, by its survey; told anew once a gauge was laid. */
export const offKey = (r: RailReading): string =>
  `rail-off@${r.rail}#${r.survey.id}${r.gauge.length > 0 ? '~gauge' : ''}`;

/** Index of the value farthest from zero. */
export const farthest = (values: readonly number[]): number =>
  values.reduce((best, v, k) => (Math.abs(v) > Math.abs(values[best] ?? 0) ? k : best), 0);

/** The line a survey was read to, slits noted as moved where they stand. */
const lineOf = (s: Situation, plan: RailPlan, to: Survey['to']): Line => {
  const { radius_mm, turn_rad } = to === 'tack line' ? plan.tack : plan.finished;
  const moved = new Map(
    s.build.slitNotes.flatMap(n =>
      n.rail === plan.rail && n.note === 'moved' && n.at_mm !== undefined ? [[n.slit, n.at_mm] as const] : [],
    ),
  );
  const slits_mm = plan.slits
    .map(slit => alongLine(plan, to, moved.get(slit.number) ?? slit.at_mm))
    .sort((a, b) => a - b);
  return { radius_mm, bend_rad: turn_rad, straight_mm: plan.straight_mm, slits_mm };
};

/** A distance along a line of the bottom face as one along the back wall, both from the entry end, mm. */
export const onBackWall = (plan: RailPlan, line: Line, station_mm: number): number => {
  const arc = arcLength(line);
  const bent = Math.min(station_mm, arc);
  return (bent * plan.bend_mm) / arc + station_mm - bent;
};

/** Straight between places that rise, level past the ends. */
export const between = (xs: readonly number[], ys: readonly number[], x: number): number => {
  const next = xs.findIndex(at => at >= x - 1e-6);
  if (next < 0) return ys.at(-1) ?? 0;
  if (next === 0) return ys[0] ?? 0;
  const [x0, x1] = [xs[next - 1] ?? 0, xs[next] ?? 0];
  const [y0, y1] = [ys[next - 1] ?? 0, ys[next] ?? 0];
  return x1 > x0 ? y0 + ((y1 - y0) * (x - x0)) / (x1 - x0) : y1;
};

/** Its stations along the back wall, mm. */
export const stationsOnWall = (r: RailReading): readonly number[] =>
  r.stations_mm.map(at => onBackWall(r.plan, r.line, at));

/** Change from one station to the next, for stations farther apart than a flat its share of one flat. */
const steepest = (stations: readonly number[], left: readonly number[], pitch: number): number => {
  let most = 0;
  for (let j = 1; j < stations.length; j++) {
    const apart = (stations[j] ?? 0) - (stations[j - 1] ?? 0);
    const step = Math.abs((left[j] ?? 0) - (left[j - 1] ?? 0)) * Math.min(1, pitch / Math.max(apart, 1e-9));
    if (step > most) most = step;
  }
  return most;
};

/**
 * How far a rail should lie from the line it was read to, as a share of the way from the finished line to the tack line: by
 * what its welds have still to pull. Where that is known within bounds only, what the readings show of it, within those.
 */
const shareOf = (
  columns: RigidColumns,
  offsets: readonly number[],
  apart: readonly number[],
  [least, most]: readonly [number, number],
  to: Survey['to'],
): number => {
  const less = to === 'tack line' ? 1 : 0;
  if (most - least < 1e-9) return least - less;
  const shape = fitRigid(columns, apart).left_mm;
  const read = fitRigid(columns, offsets).left_mm;
  const under = shape.reduce((sum, v) => sum + v * v, 0);
  const shown = under > 0 ? shape.reduce((sum, v, j) => sum + v * (read[j] ?? 0), 0) / under : 0;
  return Math.min(most - less, Math.max(least - less, shown));
};

/**
 * A rail's counting survey in numbers, or null: none closed, or of no phase asked for, or fewer than three stations.
 * Offsets are those of the bottom face; a half-welded rail is held against where it should be by then.
 */
export const railReading = (
  s: Situation,
  rail: RailName,
  phases: readonly Survey['phase'][],
): RailReading | null => {
  const survey = countingSurvey(s.build, rail);
  const plan = s.ramp.plans.get(rail);
  if (survey === null || plan === undefined || !phases.includes(survey.phase)) return null;
  const { stations_mm, offsets_mm: raw } = readStations(survey);
  if (stations_mm.length < 3) return null;
  const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(rail) };
  const deck_mm = deckThickness(s.ramp.design.deck);
  const off = (survey.edge === 'rail top face' ? tube.depth_mm : 0) + edgeCorrection(s.build, survey.id);
  const offsets_mm = raw.map(o => o - off);
  const line = lineOf(s, plan, survey.to);
  const columns = rigidColumns(line, stations_mm);
  const apart = stations_mm.map(at => tackLineOffset(plan, onBackWall(plan, line, at)));
  const share = shareOf(columns, offsets_mm, apart, outstanding(s, survey, plan), survey.to);
  const deviations_mm = offsets_mm.map((o, j) => o - share * (apart[j] ?? 0));
  const asRead = deviations_mm.map((o, j) => o - flatSag(line, stations_mm[j] ?? 0));
  const fit = fitRigid(columns, asRead);
  // A half-welded rail is taken up again to be welded: how it lay to be read matters to nobody.
  const lies_mm = survey.phase === 'half-welded' ? fit.left_mm : asRead;
  return {
    rail,
    index: s.ramp.rails.indexOf(rail),
    survey,
    plan,
    tube,
    deck_mm,
    line,
    stations_mm,
    numbers: survey.readings.flatMap((r, k) => (r === null ? [] : [k + 1])),
    offsets_mm,
    deviations_mm,
    lies_mm,
    fit,
    worst_mm: largest(lies_mm),
    step_mm: steepest(stations_mm, fit.left_mm, plan.pitch_mm),
    twice_mm: survey.readings.flatMap(x =>
      x === null ? [] : (x.again ?? []).slice(-1).map(before => x.offset_mm - before),
    ),
    gauge: gaugeReads(s, survey, line),
    otherEdge_mm: looksLikeOtherEdge(offsets_mm, tube.depth_mm, deck_mm),
  };
};

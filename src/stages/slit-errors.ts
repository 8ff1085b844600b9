import type { RailPlan } from '../ramp/rail-plan.ts';
import { offsetsAt } from '../reckon/rail/forward.ts';
import { UNMOVED } from '../reckon/rail/rail-plan.ts';
import { fitRigid, rigidColumns } from '../reckon/rail/rigid.ts';
import { alongLine } from './jig.ts';
import type { LineName } from './sheet.ts';

/** A rail and its line as the calculators of offsets have them: slits along that line. */
const slitLine = (plan: RailPlan, line: LineName) => {
  const { radius_mm, turn_rad } = line === 'tack line' ? plan.tack : plan.finished;
  return {
    radius_mm,
    bend_rad: turn_rad,
    straight_mm: plan.straight_mm,
    slits_mm: plan.slits.map(slit => alongLine(plan, line, slit.at_mm)),
  };
};

/** Where offsets are read: the middles of the flats, both ends, and the lip mark where a straight part follows. mm along the line. */
export const flatStations = (plan: RailPlan, line: LineName): readonly number[] => [
  ...plan.flats_mm.map(at => alongLine(plan, line, at)),
  ...(plan.straight_mm > 1 ? [alongLine(plan, line, plan.toLip_mm)] : []),
];

/**
 * What would be read of a rail whose slits are bent more (+) or less (−) than the line asks, with its entry end on the line, mm,
 * + toward the centre.
 * @param errors_rad one a slit, rad
 */
export const offsetsOf = (
  plan: RailPlan,
  line: LineName,
  errors_rad: readonly number[],
  stations_mm: readonly number[] = flatStations(plan, line),
): readonly number[] => offsetsAt(slitLine(plan, line), errors_rad, UNMOVED, stations_mm);

/** The worst offset left of such a rail once it is laid at its best against the finished line, mm. */
export const worstLaid = (plan: RailPlan, errors_rad: readonly number[]): number => {
  const stations = flatStations(plan, 'finished line');
  const columns = rigidColumns(slitLine(plan, 'finished line'), stations);
  return fitRigid(columns, offsetsOf(plan, 'finished line', errors_rad, stations)).worst_mm;
};

/**
 * Bend that a change of offsets tells, rad a slit, for the slits that were worked on in between: least squares with the rail free
 * to have been laid anew (derived).
 * @param moved_mm later less earlier offset at each station
 * @param worked numbers of the slits worked on
 */
export const bendTold = (
  plan: RailPlan,
  line: LineName,
  stations_mm: readonly number[],
  moved_mm: readonly number[],
  worked: readonly number[],
): number => {
  const small = 1e-4;
  const on = new Set(worked);
  const unit = offsetsOf(
    plan,
    line,
    plan.slits.map(slit => (on.has(slit.number) ? small : 0)),
    stations_mm,
  );
  const still = offsetsOf(
    plan,
    line,
    plan.slits.map(() => 0),
    stations_mm,
  );
  const columns = rigidColumns(slitLine(plan, line), stations_mm);
  // What of one slit's bend, and of what was read, no laying anew explains away.
  const shape = fitRigid(
    columns,
    unit.map((o, i) => (o - (still[i] ?? 0)) / small),
  ).left_mm;
  const read = fitRigid(columns, moved_mm).left_mm;
  const under = shape.reduce((sum, v) => sum + v * v, 0);
  return under > 0 ? shape.reduce((sum, v, i) => sum + v * (read[i] ?? 0), 0) / under : 0;
};

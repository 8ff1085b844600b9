import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
/** A slit rail that is not welded yet holds by its back walls alone. */
export type SlitTube = Readonly<{
  /** Width across the curve's plane, B, mm. */
  width_mm: number;
  depth_mm: number;
  wall_mm: number;
  /** Yield strength of the steel, MPa. */
  yield_MPa: number;
  /** Mass of one metre, kg/m. */
  mass_kg_m: number;
}>;

/** Own weight on one mm of length, N/mm. */
export const weightPerLength = (tube: SlitTube): number => (tube.mass_kg_m * GRAVITY_m_s2) / 1000;

/** Moment at which the back wall of an open slit folds, N·mm: f_y B t²/4. [derived] */
export const backWallMoment = (tube: SlitTube): number =>
  (tube.yield_MPa * tube.width_mm * tube.wall_mm ** 2) / 4;

/**
 * Free overhang at which a slit, unwelded rail folds under its own weight, mm: w a²/2 = f_y B t²/4. 1.14, 0.91 and 0.78 m for
 * 40 mm tube of 3, 2 and 1.5 mm wall. [calc, bench practice]
 */
export const foldingOverhang = (tube: SlitTube): number =>
  Math.sqrt((2 * backWallMoment(tube)) / weightPerLength(tube));

import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import type { Tube } from '../../ramp/design.ts';
import { tubeMassPerMetre } from '../../ramp/mass.ts';

/** Yield of structural tube of the plainest grade, MPa (S235, EN 10219-1 table A.3 [memory]). */
const YIELD_MPa = 235;

/** How far above the back of the tube a slit stops: where the flat of the side turns into the corner, 2t (common practice). */
export const stopLine = (tube: Tube): number => 2 * tube.wall_mm;

/**
 * The free overhang at which a slit rail folds at its back wall under its own weight, mm: √(2M/w) with M = f·B·t²/4, the plastic
 * bending of the back wall alone, and w the tube's weight (common practice; derived).
 */
export const foldingOverhang = (tube: Tube): number => {
  const moment_Nmm = (YIELD_MPa * tube.width_mm * tube.wall_mm ** 2) / 4;
  const weight_N_mm = (tubeMassPerMetre(tube) * GRAVITY_m_s2) / 1000;
  return Math.sqrt((2 * moment_Nmm) / weight_N_mm);
};

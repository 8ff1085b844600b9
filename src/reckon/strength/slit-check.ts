import { ELECTRODE_MPA, filletStrength_MPa } from './joint-weld.ts';
import { SLIT_DERATE, SLIT_RANGE_MPA, type SlitSection } from './slit-section.ts';
import { type Grade, OMEGA, type Standard } from './tube-strength.ts';

/** AISC 360 table J2.5, a weld through a part of the wall pulled across its length: 0.60·FEXX/1.88 [memory]. */
const PART_WELD_SHARE = 0.6 / 1.88;

/**
 * Stress a welded slit is allowed, MPa, to hold unfactored (AISC) or factored (EN) stresses against: the tube's own, or the weld's
 * where it is weaker. EN 1993-1-8 4.7.2 reckons a weld through a part of the wall as a fillet [memory].
 * @param proven whether this welder's slit test piece has passed; half is counted until then
 */
export const slitAllowed_MPa = (
  standard: Standard,
  grade: Grade,
  proven: boolean,
  electrode_MPa: number = ELECTRODE_MPA,
): number => {
  const whole =
    standard === 'AISC'
      ? Math.min(grade.yield_MPa / OMEGA, PART_WELD_SHARE * electrode_MPa)
      : Math.min(grade.yield_MPa, filletStrength_MPa('EN', grade));
  return whole * (proven ? 1 : SLIT_DERATE);
};

/** Stress at the slit face and at the back wall, MPa, tension +. */
export type SlitStress = Readonly<{ top_MPa: number; back_MPa: number }>;

/**
 * Stress at a slit under a force along the rail (tension +, N) and a moment (sagging +, which presses the slit face, N·mm).
 */
export const slitStress = (section: SlitSection, axial_N: number, sagging_Nmm: number): SlitStress => ({
  top_MPa: axial_N / section.area_mm2 - sagging_Nmm / section.top_mm3,
  back_MPa: axial_N / section.area_mm2 + sagging_Nmm / section.back_mm3,
});

/** Greatest size of stress over what is allowed. */
export const slitUse = (stress: SlitStress, allowed_MPa: number): number =>
  Math.max(Math.abs(stress.top_MPa), Math.abs(stress.back_MPa)) / allowed_MPa;

/** Range of stress at a slit as wheels pass, over the cap. */
export const rangeUse = (range_MPa: number): number => range_MPa / SLIT_RANGE_MPA;

/**
 * Moment in N·mm whose coming and going uses up the cap on the range of stress at a slit.
 */
export const momentAtCap = (section: SlitSection): number =>
  SLIT_RANGE_MPA * Math.min(section.top_mm3, section.back_mm3);

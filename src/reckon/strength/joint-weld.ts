import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Grade, Standard } from './tube-strength.ts';

/** Share of a joint's weld counted until the T test piece of this welder passes [practice]. */
export const JOINT_DERATE = 0.5;

/** Tensile strength of the usual solid and cored wire, E70 / ER70S-6: 70 ksi [memory, AWS A5.18]. */
export const ELECTRODE_MPA = 482.6;

/** AISC 360 J2 and J4, allowable strength: fillet 0.60·FEXX/2.0 [found], rupture of the wall 0.60·Fu/2.0 in shear [memory]. */
const AISC_SHARE = 0.3;
/**
 * AISI S100, fillet along a sheet under 3 mm, N of each mm and MPa: (1 − 0.01 L/t) t Fu/2.55 while a side is under 25 walls long,
 * 0.75 t Fu/3.05 from there on; across the sheet, t Fu/2.35, it bears more [memory].
 */
const sheetShare = (side_mm: number, wall_mm: number): number =>
  side_mm / wall_mm < 25 ? (1 - (0.01 * side_mm) / wall_mm) / 2.55 : 0.75 / 3.05;
const SHEET_MM = 3;
/** EN 1993-1-8 2.2 and 4.5.3 [memory]. */
const GAMMA_M2 = 1.25;

/** Throat of an equal-legged fillet over its leg [found]. */
export const THROAT_OF_LEG = Math.SQRT1_2;

/** Leg that a first-timer is asked for: as wide as the wall [practice]; min 3 mm by AISC 360 J2.4, but never over the wall [found]. */
export const usualLeg = (thinnerWall_mm: number): number => thinnerWall_mm;

/** Correlation factor βw by grade, EN 1993-1-8 table 4.1: S235 0.8, S275 0.85, S355 0.9 [memory]. */
const betaOf = (yield_MPa: number): number => (yield_MPa <= 240 ? 0.8 : yield_MPa <= 290 ? 0.85 : 0.9);

/** Strength of a fillet by its throat, MPa: EN 1993-1-8 4.5.3.3, fu/(√3 βw γM2) [memory]; AISC 0.30 FEXX [found]. */
export const filletStrength_MPa = (
  standard: Standard,
  grade: Grade,
  electrode_MPa: number = ELECTRODE_MPA,
): number =>
  standard === 'AISC'
    ? AISC_SHARE * electrode_MPa
    : grade.tensile_MPa / (Math.sqrt(3) * betaOf(grade.yield_MPa) * GAMMA_M2);

export type JointWeldInput = Readonly<{
  standard: Standard;
  grade: Grade;
  /** The tube that is welded all round by its end: depth in the plane of the frame. */
  depth_mm: number;
  width_mm: number;
  leg_mm: number;
  /** Design wall of the thinner of the two tubes. */
  thinnerWall_mm: number;
  electrode_MPa?: number | undefined;
  /** Whether the T test piece has passed. */
  proven: boolean;
}>;

/** Forces at the joint, as sizes: along the tube, across it, and what bends it in the plane of the frame. */
export type JointForces = Readonly<{ axial_N: number; shear_N: number; moment_Nmm: number }>;

export type JointWeld = Readonly<{
  length_mm: number;
  /** Line modulus, mm² [Blodgett, memory]. */
  modulus_mm2: number;
  /** Of a millimetre of weld, before and after the derate. */
  perMm_N: number;
  counted_N_mm: number;
  governedBy: 'weld' | 'wall' | 'thin sheet';
  use: (forces: JointForces) => number;
}>;

/**
 * A fillet all round the end of a tube as a line: force over length, moment over S = b d + d²/3, shear on the two sides along
 * it, added as vectors [memory: Blodgett, Design of Weldments]. The least of weld, wall and thin sheet (AISC) or of the throat
 * no thicker than the wall (EN). Cut square: a slope makes the weld longer, which is not counted.
 * Refuses sizes not above 0.
 */
export const jointWeld = (input: JointWeldInput): Outcome<JointWeld> => {
  const { standard, grade, depth_mm, width_mm, leg_mm, thinnerWall_mm, proven } = input;
  for (const [field, value] of Object.entries({ depth_mm, width_mm, leg_mm, thinnerWall_mm }))
    if (!(value > 0 && Number.isFinite(value)))
      return refuse('out-of-range', field, `${value} mm is no size of a joint.`, 'more than 0 mm');
  const throat = THROAT_OF_LEG * leg_mm;
  const strength = filletStrength_MPa(standard, grade, input.electrode_MPa);
  const limits: [JointWeld['governedBy'], number][] =
    standard === 'AISC'
      ? [
          ['weld', strength * throat],
          ['wall', AISC_SHARE * grade.tensile_MPa * thinnerWall_mm],
          [
            'thin sheet',
            thinnerWall_mm < SHEET_MM
              ? sheetShare(Math.max(depth_mm, width_mm), thinnerWall_mm) * grade.tensile_MPa * thinnerWall_mm
              : Infinity,
          ],
        ]
      : [
          ['weld', strength * throat],
          ['wall', strength * thinnerWall_mm],
        ];
  const [governedBy, perMm_N] = limits.reduce((least, next) => (next[1] < least[1] ? next : least));
  const counted_N_mm = perMm_N * (proven ? 1 : JOINT_DERATE);
  const length_mm = 2 * (depth_mm + width_mm);
  const modulus_mm2 = width_mm * depth_mm + depth_mm ** 2 / 3;
  return good({
    length_mm,
    modulus_mm2,
    perMm_N,
    counted_N_mm,
    governedBy,
    use: ({ axial_N, shear_N, moment_Nmm }) => {
      const along = Math.abs(axial_N) / length_mm + Math.abs(moment_Nmm) / modulus_mm2;
      const across = Math.abs(shear_N) / (2 * depth_mm);
      return Math.hypot(along, across) / counted_N_mm;
    },
  });
};

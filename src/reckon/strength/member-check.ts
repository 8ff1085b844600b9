import { good, type Outcome } from '../../quantity/outcome.ts';
import { aiscColumn, enColumn } from '../statics/column.ts';
import type { TubeStrength } from './tube-strength.ts';

/** Forces in a member at one place: tension +, and what bends and shears it in the plane of the frame, as sizes. */
export type MemberForces = Readonly<{ axial_N: number; shear_N: number; moment_Nmm: number }>;

export type MemberCheck = 'bending' | 'buckling' | 'tension' | 'shear';

/** Demand over what is allowed; 1 and no more is wanted. `check` is the larger share of it. */
export type MemberUse = Readonly<{ utilisation: number; check: MemberCheck }>;

/** A member ready to be held against any number of forces. */
export type MemberCapacity = Readonly<{
  strength: TubeStrength;
  compression_N: number;
  /** Euler's load in the plane of the frame, which enlarges the moments of a pressed member. */
  euler_N: number;
  /** Greatest effective length over radius of gyration; AISC advises no more than 200. */
  slenderness: number;
  use: (forces: MemberForces) => MemberUse;
  /** The utilisation alone, for going through thousands of arrangements. */
  share: (axial_N: number, shear_N: number, moment_Nmm: number) => number;
}>;

/** Past this share of Euler's load a moment grows without end; the compression alone is refused by then. */
const NEAR_EULER = 0.95;

/** AISC 360 appendix 8: second-order moments of allowable strength design are found at 1.6 times the load [memory]. */
const AISC_ALPHA = 1.6;

/**
 * What a tube of a length bears in compression with bending in the plane of the frame, and how far forces use it.
 * Buckles in the plane or across it, whichever comes first; ends pinned (k = 1).
 * AISC 360: E3 [found], H1-1 [memory] with moments enlarged by B1 = 1/(1 − 1.6 P/Pe1), Cm = 1 [memory]. EN 1993-1-1: 6.3.1 curve c
 * [found], N/Nb + M/(1 − N/Ncr)/Mc ≤ 1, on the safe side of 6.3.3 [memory]; shear over half the resistance weakens bending, 6.2.8 [memory].
 * Refuses what the column kernels refuse.
 * @param inPlane_mm length between what holds it in the plane of the frame
 * @param acrossPlane_mm length between what holds it across that plane
 */
export const memberCapacity = (
  strength: TubeStrength,
  inPlane_mm: number,
  acrossPlane_mm: number,
): Outcome<MemberCapacity> => {
  const { section, grade, E_MPa, standard } = strength;
  const base = { yield_MPa: grade.yield_MPa, E_MPa, area_mm2: section.area_mm2, k: 1 };
  const struts = [
    { ...base, gyration_mm: section.gyration_mm, length_mm: inPlane_mm },
    { ...base, gyration_mm: strength.sideGyration_mm, length_mm: acrossPlane_mm },
  ];
  const borne: number[] = [];
  for (const strut of struts) {
    const column = standard === 'AISC' ? aiscColumn(strut) : enColumn(strut);
    if (!column.ok) return column;
    borne.push('allowable_N' in column.value ? column.value.allowable_N : column.value.design_N);
  }
  const capacity = {
    strength,
    compression_N: Math.min(...borne),
    euler_N: (Math.PI ** 2 * E_MPa * section.inertia_mm4) / inPlane_mm ** 2,
    slenderness: Math.max(...struts.map(strut => strut.length_mm / strut.gyration_mm)),
  };
  const combined = standard === 'AISC' ? aiscShare : enShare;
  const share: MemberCapacity['share'] = (axial_N, shear_N, moment_Nmm) =>
    Math.max(combined(capacity, axial_N, shear_N, moment_Nmm), Math.abs(shear_N) / strength.shear_N);
  return good({
    ...capacity,
    share,
    use: ({ axial_N, shear_N, moment_Nmm }) => ({
      utilisation: share(axial_N, shear_N, moment_Nmm),
      check: checkOf(capacity, combined(capacity, axial_N, shear_N, moment_Nmm), {
        axial_N,
        shear_N,
        moment_Nmm,
      }),
    }),
  });
};

type Capacity = Omit<MemberCapacity, 'use' | 'share'>;

const axialShare = ({ strength, compression_N }: Capacity, axial_N: number): number =>
  axial_N < 0 ? -axial_N / compression_N : axial_N / strength.tension_N;

const bendingShare = (
  { strength, euler_N }: Capacity,
  axial_N: number,
  moment_Nmm: number,
  alpha: number,
): number => {
  const enlarged = 1 - Math.min(NEAR_EULER, (alpha * Math.max(0, -axial_N)) / euler_N);
  return Math.abs(moment_Nmm) / enlarged / strength.moment_Nmm;
};

const aiscShare = (capacity: Capacity, axial_N: number, _shear_N: number, moment_Nmm: number): number => {
  const axial = axialShare(capacity, axial_N);
  const bending = bendingShare(capacity, axial_N, moment_Nmm, AISC_ALPHA);
  // H1-1b halves a small axial share; alone it must still not pass for half of itself.
  return Math.max(axial >= 0.2 ? axial + (8 / 9) * bending : axial / 2 + bending, axial);
};

/** What is left of the moment a tube bears beside its shear. */
const leftByShear = (strength: TubeStrength, shear_N: number): number => {
  const sheared = Math.abs(shear_N) / strength.shear_N;
  return sheared > 0.5 ? Math.max(0.01, 1 - (2 * sheared - 1) ** 2) : 1;
};

const enShare = (capacity: Capacity, axial_N: number, shear_N: number, moment_Nmm: number): number =>
  axialShare(capacity, axial_N) +
  bendingShare(capacity, axial_N, moment_Nmm, 1) / leftByShear(capacity.strength, shear_N);

const checkOf = (
  capacity: Capacity,
  combined: number,
  { axial_N, shear_N, moment_Nmm }: MemberForces,
): MemberCheck => {
  const { strength } = capacity;
  if (Math.abs(shear_N) / strength.shear_N > combined) return 'shear';
  const bending =
    strength.standard === 'AISC'
      ? bendingShare(capacity, axial_N, moment_Nmm, AISC_ALPHA)
      : bendingShare(capacity, axial_N, moment_Nmm, 1) / leftByShear(strength, shear_N);
  if (bending >= axialShare(capacity, axial_N)) return 'bending';
  return axial_N < 0 ? 'buckling' : 'tension';
};

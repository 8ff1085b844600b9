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
  const use = standard === 'AISC' ? aiscUse : enUse;
  return good({ ...capacity, use: forces => worse(use(capacity, forces), shearUse(strength, forces)) });
};

type Capacity = Omit<MemberCapacity, 'use'>;

const worse = (a: MemberUse, b: MemberUse): MemberUse => (b.utilisation > a.utilisation ? b : a);

const shearUse = ({ shear_N }: TubeStrength, forces: MemberForces): MemberUse => ({
  utilisation: Math.abs(forces.shear_N) / shear_N,
  check: 'shear',
});

const shares = (
  { strength, compression_N, euler_N }: Capacity,
  { axial_N, moment_Nmm }: MemberForces,
  alpha: number,
  moment_allowed: number,
): Readonly<{ axial: number; bending: number; check: MemberCheck }> => {
  const pressed = -axial_N;
  const axial = pressed > 0 ? pressed / compression_N : axial_N / strength.tension_N;
  const enlarged = 1 - Math.min(NEAR_EULER, (alpha * Math.max(0, pressed)) / euler_N);
  const bending = Math.abs(moment_Nmm) / enlarged / moment_allowed;
  return { axial, bending, check: bending >= axial ? 'bending' : pressed > 0 ? 'buckling' : 'tension' };
};

const aiscUse = (capacity: Capacity, forces: MemberForces): MemberUse => {
  const { axial, bending, check } = shares(capacity, forces, AISC_ALPHA, capacity.strength.moment_Nmm);
  const utilisation = axial >= 0.2 ? axial + (8 / 9) * bending : axial / 2 + bending;
  // H1-1b halves a small axial share; alone it must still not pass for half of itself.
  return { utilisation: Math.max(utilisation, axial), check };
};

const enUse = (capacity: Capacity, forces: MemberForces): MemberUse => {
  const { strength } = capacity;
  const sheared = Math.abs(forces.shear_N) / strength.shear_N;
  const weaker = sheared > 0.5 ? Math.max(0.01, 1 - (2 * sheared - 1) ** 2) : 1;
  const { axial, bending, check } = shares(capacity, forces, 1, strength.moment_Nmm * weaker);
  return { utilisation: axial + bending, check };
};

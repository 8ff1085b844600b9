import type { Situation } from './situation.ts';

/** Wall of the rails that are slit, the thinnest in hand, mm. */
export const railWall = (s: Situation): number =>
  Math.min(s.ramp.design.tube.wall_mm, ...[...s.measured.tubes.values()].map(t => t.wall_mm ?? Infinity));

/** The thinner wall where an upright or crossmember meets a rail, mm. */
export const jointWall = (s: Situation): number =>
  Math.min(s.ramp.design.post.wall_mm, s.ramp.design.tube.wall_mm);

/**
 * Walls closer than this are one wall to a welder, mm: less than a tube mill's step from one wall to the next but one, more than a
 * caliper's scatter on one tube (our own judgement).
 */
const ONE_WALL_mm = 0.35;

export const sameWall = (a_mm: number, b_mm: number): boolean => Math.abs(a_mm - b_mm) <= ONE_WALL_mm;

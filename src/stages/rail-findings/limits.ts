import type { Situation } from '../situation.ts';

/**
 * How far a rail may be off, mm: smooth error, mismatch of two rails, sideways bow. A novice's first; a careful shop has a table
 * (common practice). Tight numbers cause the damage they fear.
 */
const LIMITS = {
  novice: { smooth: 4, mismatch: 4, sideways: 3 },
  'careful shop': { smooth: 2, mismatch: 2, sideways: 3 },
} as const;

export const limitsOf = (s: Situation): (typeof LIMITS)[keyof typeof LIMITS] =>
  LIMITS[s.ramp.design.tolerance];

/** From one flat to the next a wheel feels more than this, mm (common practice). */
export const STEP = 1;
/** Below this a smooth error is left and the deck packed, mm (common practice). */
export const PACKED = 5;
/** A thing is watched from this share of its limit on. */
export const WATCH = 0.5;
/** A remedy aims at this share of the limit: readings and hands take up the rest (common practice). */
export const AIM = 0.75;
/** A rail built with care comes out this near to its line, mm (careful hobby shop; common practice). */
export const CAREFUL_RAIL = 2;

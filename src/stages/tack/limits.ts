const DEGREE = Math.PI / 180;

/** Changes that matter at the bench: an angle (0.1°), a length mm. */
export const MATTERS = { angle: 0.1 * DEGREE, length: 0.5 } as const;

/** Bend that may be missing or too much, rad: 0.5° for a novice, 0.25° in a careful shop (common practice). */
export const BEND_LIMIT = { novice: 0.5 * DEGREE, 'careful shop': 0.25 * DEGREE } as const;
/** Smooth offset of a rail that is left alone, mm (common practice). */
export const SMOOTH_LIMIT = { novice: 4, 'careful shop': 2 } as const;
/** Twist of one rail between its ends, rad (common practice; the frame's own limit is told when it stands). */
export const TWIST_LIMIT = { novice: 1 * DEGREE, 'careful shop': 0.5 * DEGREE } as const;
/** Sideways bow, mm (common practice). */
export const SIDEWAYS_LIMIT = 3;

/** Lengths of tacks by wall, mm: fit-up tacks on slits, and as they are grown before the sides are welded (common practice). */
export const tackLengths = (
  wall_mm: number,
): Readonly<{ low: number; high: number; grownLow: number; grownHigh: number }> =>
  wall_mm < 2.5
    ? { low: 4, high: 6, grownLow: 5, grownHigh: 6 }
    : { low: 6, high: 8, grownLow: 8, grownHigh: 10 };

/** Yield of structural tube of the plainest grade, MPa (S235, EN 10219-1 table A.3 [memory]). */
export const YIELD_MPa = 235;

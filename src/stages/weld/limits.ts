const DEGREE = Math.PI / 180;

/** Changes that matter at the bench: an angle (0.1°), an offset mm. */
export const MATTERS = { angle: 0.1 * DEGREE, offset: 0.5 } as const;

/** Bend that may be missing or too much, rad: 0.5° for a novice, 0.25° in a careful shop (common practice). */
export const BEND_LIMIT = { novice: 0.5 * DEGREE, 'careful shop': 0.25 * DEGREE } as const;
/** Smooth offset of one rail, and of one rail from the other, that is left alone, mm (common practice). */
export const SMOOTH_LIMIT = { novice: 4, 'careful shop': 2 } as const;
/** Sideways bow, mm (common practice). */
export const SIDEWAYS_LIMIT = 3;
/** Cold enough for the next weld, °C, and how near the back of a hand is held to tell, mm (common practice). */
export const HAND_WARM_C = 45;
export const HAND_OFF = 20;
/** Widest gap that is welded in a slit, mm: 1.5, and half the wall (common practice). */
export const widestGap = (wall_mm: number): number => Math.min(1.5, wall_mm / 2);

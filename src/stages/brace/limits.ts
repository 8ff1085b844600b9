/** Changes that matter at the bench: a cut length mm, an angle (0.1°), a movement of the rail mm, a clamp's force N. */
export const MATTERS = { cut: 0.5, angle: (0.1 * Math.PI) / 180, movement: 1, force: 50 } as const;

/** Gap that a cut piece may leave at its joint, mm: shrinkage stays under half a millimetre (common practice). */
export const FIT_GAP = 1;

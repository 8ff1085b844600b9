/** Changes that matter at the bench: a cut length mm, an angle (0.1°), a movement of the rail mm. */
export const MATTERS = { cut: 0.5, angle: (0.1 * Math.PI) / 180, movement: 1 } as const;

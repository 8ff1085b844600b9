/** Changes that matter at the bench: a length mm, an angle (0.1°), a mass kg, a head count. */
export const MATTERS = { length: 0.5, angle: (0.1 * Math.PI) / 180, mass: 1, count: 0.5 } as const;

/** Change that matters at the bench: of a length mm, of an angle (0.1°), of a mass kg, of a share per cent. */
export const MATTERS = { length: 0.5, angle: (0.1 * Math.PI) / 180, mass: 1, share: 1 } as const;

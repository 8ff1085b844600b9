/** Changes that matter at the bench: a length mm, a force N, a mass kg, a speed m/s, a head count. */
export const MATTERS = { length: 0.5, force: 10, mass: 1, speed: 0.3, count: 0.5 } as const;

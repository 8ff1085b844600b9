/** Rounding, relative to the number, that must not make one more of a count that comes out whole. */
const NOISE = 1e-9;

/**
 * The smallest whole number not below `amount`, forgiving last-bit noise: 25.000000000000004 slits are 25 slits.
 * A plain ceil would saw a 26th.
 */
export const wholeUp = (amount: number): number => Math.ceil(amount - NOISE * Math.max(1, Math.abs(amount)));

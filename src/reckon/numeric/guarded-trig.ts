/** How far past ±1 rounding may carry a ratio that is ±1 in truth; more than this is a caller's mistake. */
const NOISE = 1e-9;

const held = (ratio: number): number => {
  if (!(Math.abs(ratio) <= 1 + NOISE)) throw new RangeError(`no angle has the ratio ${ratio}`);
  return Math.min(1, Math.max(-1, ratio));
};

/** The angle in radians, −π/2 to π/2, whose sine is `ratio`; rounding past ±1 is forgiven, more is a bug. */
export const asinGuarded = (ratio: number): number => Math.asin(held(ratio));

/** The angle in radians, 0 to π, whose cosine is `ratio`; rounding past ±1 is forgiven, more is a bug. */
export const acosGuarded = (ratio: number): number => Math.acos(held(ratio));

type Search = Readonly<{
  /** The function whose zero is wanted. */
  of: (x: number) => number;
  /** Its slope. Without one the bracket is halved, which is slower and as sure. */
  slope?: (x: number) => number;
  low: number;
  high: number;
  /** A first guess inside the bracket; the middle without one. */
  start?: number;
}>;

/** Halving a bracket of doubles cannot need more than this; reaching it means the search is wrong. */
const MOST_STEPS = 2200;

/**
 * Where a continuous function crosses zero between `low` and `high`, to the last bits of a double; undefined when
 * both ends lie on one side of zero. Newton's step is taken only while it stays in the bracket and gains at least as
 * much as halving would: Newton alone may leave the bracket where the slope is small.
 */
export const rootBetween = ({ of, slope, low, high, start }: Search): number | undefined => {
  const atLow = of(low);
  const atHigh = of(high);
  if (atLow === 0) return low;
  if (atHigh === 0) return high;
  if (!(atLow < 0 !== atHigh < 0) || Number.isNaN(atLow) || Number.isNaN(atHigh)) return undefined;

  // `under` is the end where the function is negative, whichever side that is.
  let under = atLow < 0 ? low : high;
  let over = atLow < 0 ? high : low;
  let x = start !== undefined && start > low && start < high ? start : low + (high - low) / 2;
  let lastStep = high - low;
  for (let n = 0; n < MOST_STEPS; n += 1) {
    const value = of(x);
    if (value === 0) return x;
    if (value < 0) under = x;
    else over = x;

    const newton = slope === undefined ? Number.NaN : x - value / slope(x);
    const inside = newton > Math.min(under, over) && newton < Math.max(under, over);
    const next = inside && 2 * Math.abs(newton - x) <= lastStep ? newton : under + (over - under) / 2;
    lastStep = Math.abs(next - x);
    if (next === x || lastStep <= Number.EPSILON * Math.abs(next)) return next;
    x = next;
  }
  throw new Error('the search for a root did not end');
};

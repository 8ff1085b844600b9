/**
 * A number carried as an unevaluated sum of two, about 32 digits. Where a very stiff member joins soft ones, the small
 * stretch that carries its force is lost in the rounding of the large movements of its ends; here it is kept.
 * Sums after Knuth, products after Dekker (both exact in round-to-nearest arithmetic) [memory].
 */
export type Twofold = readonly [head: number, tail: number];

const exactSum = (a: number, b: number): Twofold => {
  const sum = a + b;
  const part = sum - a;
  return [sum, a - (sum - part) + (b - part)];
};

/** Half the digits of a number, so that a product of halves is exact. */
const upperHalf = (a: number): number => {
  const shifted = 134_217_729 * a;
  return shifted - (shifted - a);
};

const exactProduct = (a: number, b: number): Twofold => {
  const product = a * b;
  const aHigh = upperHalf(a);
  const bHigh = upperHalf(b);
  const aLow = a - aHigh;
  const bLow = b - bHigh;
  return [product, aHigh * bHigh - product + aHigh * bLow + aLow * bHigh + aLow * bLow];
};

export const plus = (a: Twofold, b: Twofold): Twofold => {
  const [head, tail] = exactSum(a[0], b[0]);
  return exactSum(head, tail + a[1] + b[1]);
};

export const minus = (a: Twofold, b: Twofold): Twofold => plus(a, [-b[0], -b[1]]);

export const times = (a: Twofold, factor: number): Twofold => {
  const [head, tail] = exactProduct(a[0], factor);
  return exactSum(head, tail + a[1] * factor);
};

/** The nearest plain number. */
export const plain = (a: Twofold): number => a[0] + a[1];

import { rootBetween } from '../numeric/root-between.ts';

/** Below this angle the series are exact to the last bit and the closed forms have lost digits. */
const SMALL_rad = 0.5;

/** Σ of an alternating series in θ², its first term given and each next one by its ratio; exact below `SMALL_rad`. */
const series = (first: number, ratio: (n: number) => number): number => {
  let term = first;
  let sum = 0;
  for (let n = 1; n <= 10; n += 1) {
    sum += term;
    term *= ratio(n);
  }
  return sum;
};

/** 1 − sin θ / θ: the share by which an arc's run falls short of its length. */
export const runLoss = (exit_rad: number): number => {
  const square = exit_rad * exit_rad;
  return exit_rad < SMALL_rad
    ? series(square / 6, n => -square / ((2 * n + 2) * (2 * n + 3)))
    : 1 - Math.sin(exit_rad) / exit_rad;
};

/** d(1 − sin θ / θ)/dθ = (sin θ − θ cos θ)/θ². */
const runLossSlope = (exit_rad: number): number =>
  exit_rad < SMALL_rad
    ? exit_rad / 3 - exit_rad ** 3 / 30 + exit_rad ** 5 / 840
    : (Math.sin(exit_rad) - exit_rad * Math.cos(exit_rad)) / exit_rad ** 2;

/** (1 − cos θ)/θ: the share of an arc's length that becomes its height. */
export const riseShare = (exit_rad: number): number => (2 * Math.sin(exit_rad / 2) ** 2) / exit_rad;

/** d((1 − cos θ)/θ)/dθ, positive below 133.6°. */
const riseShareSlope = (exit_rad: number): number =>
  Math.sin(exit_rad) / exit_rad - riseShare(exit_rad) / exit_rad;

/**
 * The exit angle in rad at which an arc's height is `share` of its length, 0 < share ≤ `riseShare(most_rad)`.
 * Newton from θ₀ = 2x(1 + x²/3) [derived].
 */
export const exitOfRiseShare = (share: number, most_rad: number): number =>
  rootBetween({
    of: exit => riseShare(exit) - share,
    slope: riseShareSlope,
    // (1 − cos θ)/θ lies below θ/2, so the root lies above 2x.
    low: Math.min(1.9 * share, most_rad / 2),
    high: most_rad,
    start: 2 * share * (1 + share ** 2 / 3),
  }) ?? most_rad;

/**
 * The exit angle in rad at which an arc's run falls short of its length by `loss` of it, 0 < loss ≤ `runLoss(most_rad)`.
 * Newton from θ₀ = √(10 − √(100 − 120 loss)), written so that a small loss keeps its digits [derived].
 */
export const exitOfRunLoss = (loss: number, most_rad: number): number =>
  rootBetween({
    of: exit => runLoss(exit) - loss,
    slope: runLossSlope,
    // 1 − sin θ / θ lies below θ²/6, so the root lies above √(6 loss).
    low: Math.min(0.9 * Math.sqrt(6 * loss), most_rad / 2),
    high: most_rad,
    start: Math.sqrt((120 * loss) / (10 + Math.sqrt(Math.max(0, 100 - 120 * loss)))),
  }) ?? most_rad;

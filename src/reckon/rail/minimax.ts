import { solveSmall } from './dense.ts';

/**
 * The smallest greatest size: min over β of max |r + Aβ|, low ≤ β ≤ high, for a handful of unknowns. Log barrier with Newton steps
 * on (β, t): rows ±(r + Aβ) < t, bounds strictly inside. Standard convex method (Boyd and Vandenberghe, Convex Optimization,
 * ch. 11 [memory]).
 */
export type Minimax = Readonly<{ values: Float64Array; worst: number }>;

/** Each round the barrier weighs this much less; after the last it is worth under a thousandth of the answer. */
const EASE = 0.12;
const ROUNDS = 6;
const NEWTON = 6;

/**
 * @param rest what is there to begin with, one number a row
 * @param columns what one unit of each unknown adds, in the scale of the unknowns
 * @param low least value of each unknown, finite
 * @param high greatest value, finite and above the least
 */
export function minimax(
  rest: Float64Array,
  columns: readonly Float64Array[],
  low: readonly number[],
  high: readonly number[],
): Minimax {
  const m = columns.length;
  const n = rest.length;
  const size = rest.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  const worstOf = (values: ArrayLike<number>): number => {
    let worst = 0;
    for (let j = 0; j < n; j++) {
      let v = rest[j]!;
      for (let p = 0; p < m; p++) v += columns[p]![j]! * values[p]!;
      worst = Math.max(worst, Math.abs(v));
    }
    return worst;
  };
  if (m === 0 || size === 0) return { values: new Float64Array(m), worst: size };
  const x = Float64Array.from(low, (l, p) => {
    const inset = 0.05 * (high[p]! - l);
    return Math.min(Math.max(0, l + inset), high[p]! - inset);
  });
  let t = worstOf(x) * 1.1 + 1e-9;
  let mu = t / (2 * n);
  const d = m + 1;
  const slope = new Float64Array(d);
  const curve = new Float64Array(d * d);
  for (let round = 0; round < ROUNDS; round++) {
    for (let step = 0; step < NEWTON; step++) {
      slope.fill(0);
      curve.fill(0);
      slope[m] = 1;
      for (let j = 0; j < n; j++) {
        let v = rest[j]!;
        for (let p = 0; p < m; p++) v += columns[p]![j]! * x[p]!;
        const up = mu / (t - v);
        const down = mu / (t + v);
        const up2 = (up * up) / mu;
        const down2 = (down * down) / mu;
        const s = up - down;
        const c = up2 + down2;
        const ct = down2 - up2;
        for (let p = 0; p < m; p++) {
          const a = columns[p]![j]!;
          slope[p]! += s * a;
          for (let q = 0; q <= p; q++) curve[p * d + q]! += c * a * columns[q]![j]!;
          curve[m * d + p]! += ct * a;
        }
        slope[m]! -= up + down;
        curve[m * d + m]! += c;
      }
      for (let p = 0; p < m; p++) {
        const above = mu / (x[p]! - low[p]!);
        const below = mu / (high[p]! - x[p]!);
        slope[p]! += below - above;
        curve[p * d + p]! += (above * above + below * below) / mu;
      }
      const move = solveSmall(
        curve,
        slope.map(v => -v),
      );
      if (move === null) break;
      const share = farthest(rest, columns, low, high, x, t, move);
      for (let p = 0; p < m; p++) x[p]! += share * move[p]!;
      t += share * move[m]!;
      let decrement = 0;
      for (let p = 0; p < d; p++) decrement -= slope[p]! * move[p]!;
      if (decrement < 0.05 * mu) break;
    }
    mu *= EASE;
  }
  return { values: x, worst: worstOf(x) };
}

/** How much of a Newton move keeps every row and bound strictly inside, at most all of it. */
function farthest(
  rest: Float64Array,
  columns: readonly Float64Array[],
  low: readonly number[],
  high: readonly number[],
  x: Float64Array,
  t: number,
  move: Float64Array,
): number {
  const m = columns.length;
  let share = 1;
  const keep = (room: number, closing: number) => {
    if (closing > 0) share = Math.min(share, (0.9 * room) / closing);
  };
  for (let j = 0; j < rest.length; j++) {
    let v = rest[j]!;
    let dv = 0;
    for (let p = 0; p < m; p++) {
      v += columns[p]![j]! * x[p]!;
      dv += columns[p]![j]! * move[p]!;
    }
    keep(t - v, dv - move[m]!);
    keep(t + v, -dv - move[m]!);
  }
  for (let p = 0; p < m; p++) {
    keep(high[p]! - x[p]!, move[p]!);
    keep(x[p]! - low[p]!, -move[p]!);
  }
  return share;
}

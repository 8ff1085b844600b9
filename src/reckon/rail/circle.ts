import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { solveSmall } from './dense.ts';

/** The geometric (orthogonal) least-squares circle through points, and how well they know it. */
export type Circle = Readonly<{
  centre_mm: readonly [number, number];
  radius_mm: number;
  /** Root mean square distance of the points from the circle, mm. */
  rms_mm: number;
  /** Standard deviation of the radius by the covariance of the fit, mm; 0 with three points, which leave nothing over. */
  radius_sd_mm: number;
}>;

/** Points that reach less than this share of their span out of a straight line have no circle. */
const STRAIGHT = 1e-7;
/** A circle this many times larger than the points' span is a straight line. */
const HUGE = 1e5;
const ROUNDS = 200;

const ACCEPTED = 'three or more points that do not lie on one straight line';
const straight = (): Outcome<never> =>
  refuse(
    'no-solution',
    'points_mm',
    'The points lie on a straight line: no circle runs through them.',
    ACCEPTED,
  );

/**
 * Fits a circle: Taubin's algebraic fit to start (the simpler one of Kåsa comes out small on short arcs), then
 * Levenberg–Marquardt on the distances d − R. [found: Chernov and Lesort, arXiv cs/0301001, on starts and bias; the geometric
 * results of Gander, Golub and Strebel 1994 and Coope 1993 are reproduced in the tests]
 *
 * @param points_mm x and y of each, mm; far from the origin is no matter, they are moved to their middle first
 * @returns the circle, or `no-solution` for fewer than three different points or points on a line
 */
export function fitCircle(points_mm: readonly (readonly [number, number])[]): Outcome<Circle> {
  const n = points_mm.length;
  if (n < 3) return straight();
  const middle = [0, 1].map(k => points_mm.reduce((sum, p) => sum + p[k]! / n, 0));
  const away = points_mm.map(([x, y]) => [x - middle[0]!, y - middle[1]!] as const);
  const scale = Math.sqrt(away.reduce((sum, [x, y]) => sum + (x * x + y * y) / n, 0));
  if (!(scale > 0)) return straight();
  const points = away.map(([x, y]) => [x / scale, y / scale] as const);
  const start = taubin(points);
  if (start === null) return straight();
  const [a, b, r] = levenberg(points, start);
  if (!(r < HUGE)) return straight();
  const left = points.map(([x, y]) => Math.hypot(x - a, y - b) - r);
  const squares = left.reduce((sum, d) => sum + d * d, 0);
  return good({
    centre_mm: [middle[0]! + scale * a, middle[1]! + scale * b],
    radius_mm: scale * r,
    rms_mm: scale * Math.sqrt(squares / n),
    radius_sd_mm: n > 3 ? scale * radiusSd(points, [a, b], squares / (n - 3)) : 0,
  });
}

type Points = readonly (readonly [number, number])[];
type Guess = readonly [number, number, number];

/** Taubin's fit on centred points, by Newton on its characteristic cubic from zero; null for a straight line. */
function taubin(points: Points): Guess | null {
  const n = points.length;
  let [xx, xy, yy, xz, yz, zz] = [0, 0, 0, 0, 0, 0];
  for (const [x, y] of points) {
    const z = x * x + y * y;
    xx += (x * x) / n;
    xy += (x * y) / n;
    yy += (y * y) / n;
    xz += (x * z) / n;
    yz += (y * z) / n;
    zz += (z * z) / n;
  }
  const z = xx + yy;
  const cov = xx * yy - xy * xy;
  // cov over z² is the square of how far the points reach out of their own best line.
  if (cov <= (STRAIGHT * z) ** 2) return null;
  const a3 = 4 * z;
  const a2 = -3 * z * z - zz;
  const varZ = zz - z * z;
  const a1 = varZ * z + 4 * cov * z - xz * xz - yz * yz;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - varZ * cov;
  let root = 0;
  for (let k = 0; k < 60; k++) {
    const value = a0 + root * (a1 + root * (a2 + root * a3));
    const slope = a1 + root * (2 * a2 + root * 3 * a3);
    const next = root - value / slope;
    if (!Number.isFinite(next) || Math.abs(next - root) < 1e-14) break;
    root = next;
  }
  const det = root * root - root * z + cov;
  if (det === 0) return null;
  const a = (xz * (yy - root) - yz * xy) / det / 2;
  const b = (yz * (xx - root) - xz * xy) / det / 2;
  const r = Math.sqrt(a * a + b * b + z);
  return Number.isFinite(r) ? [a, b, r] : null;
}

const distances = (points: Points, [a, b, r]: Guess): number =>
  points.reduce((sum, [x, y]) => sum + (Math.hypot(x - a, y - b) - r) ** 2, 0);

/** JᵀJ and Jᵀd of the distances in (a, b, R). */
function normal(points: Points, [a, b, r]: Guess): { jj: Float64Array; jd: Float64Array } {
  const jj = new Float64Array(9);
  const jd = new Float64Array(3);
  for (const [x, y] of points) {
    const d = Math.hypot(x - a, y - b) || Number.MIN_VALUE;
    const row = [(a - x) / d, (b - y) / d, -1];
    for (let p = 0; p < 3; p++) {
      jd[p]! += row[p]! * (d - r);
      for (let q = 0; q < 3; q++) jj[p * 3 + q]! += row[p]! * row[q]!;
    }
  }
  return { jj, jd };
}

function levenberg(points: Points, start: Guess): Guess {
  let now = start;
  let height = distances(points, now);
  let damp = 1e-4;
  for (let round = 0; round < ROUNDS; round++) {
    const { jj, jd } = normal(points, now);
    const damped = Float64Array.from(jj);
    for (let p = 0; p < 3; p++) damped[p * 4]! += damp * (jj[p * 4]! + 1e-12);
    const step = solveSmall(damped, jd);
    if (step === null) {
      damp = Math.max(damp * 10, 1e-10);
      if (damp > 1e12) break;
      continue;
    }
    const next: Guess = [now[0] - step[0]!, now[1] - step[1]!, now[2] - step[2]!];
    const lower = distances(points, next);
    if (next[2] > 0 && lower <= height) {
      const moved = Math.max(...step.map(Math.abs));
      now = next;
      height = lower;
      damp = Math.max(damp / 10, 1e-15);
      if (moved < 1e-13 * now[2] || now[2] > HUGE) break;
    } else {
      damp *= 10;
      if (damp > 1e12) break;
    }
  }
  return now;
}

/** Sd of the radius for a variance of the distances: the last entry of variance · (JᵀJ)⁻¹. */
function radiusSd(points: Points, [a, b]: readonly [number, number], variance: number): number {
  const { jj } = normal(points, [a, b, 1]);
  const inverse = solveSmall(jj, Float64Array.of(0, 0, 1));
  return inverse === null ? 0 : Math.sqrt(Math.max(0, variance * inverse[2]!));
}

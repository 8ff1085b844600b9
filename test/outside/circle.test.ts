import { describe, expect, test } from 'vitest';
import { fitCircle } from '../../src/reckon/rail/circle.ts';

/**
 * Circle fits with published answers.
 * [G] Gander, Golub and Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994): the data found in an open test
 *     file; the results from memory, reproduced to every digit by our own arithmetic, the paper itself not opened.
 * [C] Coope, Circle fitting by linear and nonlinear least squares, JOTA 76 (1993): data and results from memory, reproduced.
 * [S] SciPy Cookbook, Least squares circle: six points, their algebraic and geometric circles; data and results from memory, the
 *     page not opened, the geometric one reproduced by SciPy's own least squares.
 * [K] Chernov, note on the fit of Kåsa; Chernov and Lesort, arXiv cs/0301001 [found]: the linear fit comes out small on short arcs.
 */
const TOLERANCE = 5e-5; // the published digits

const circleOf = (points: [number, number][]) => {
  const found = fitCircle(points);
  if (!found.ok) throw new Error(found.fault.message);
  return found.value;
};

const near = (value: number, published: number, digits: number) =>
  expect(Math.abs(value - published)).toBeLessThanOrEqual(digits);

describe('geometric least-squares circle', () => {
  test('[G] six points: centre 4.7398, 2.9835, radius 4.7142, ‖d‖ 1.1080', () => {
    const points: [number, number][] = [
      [1, 7],
      [2, 6],
      [5, 8],
      [7, 7],
      [9, 5],
      [3, 7],
    ];
    const c = circleOf(points);
    near(c.centre_mm[0], 4.7398, TOLERANCE);
    near(c.centre_mm[1], 2.9835, TOLERANCE);
    near(c.radius_mm, 4.7142, TOLERANCE);
    near(c.rms_mm * Math.sqrt(points.length), 1.108, TOLERANCE);
  });

  test('[C] eight points: centre 3.04324, 0.74568, radius 4.10586, ‖d‖ 0.54401', () => {
    const points: [number, number][] = [
      [0.7, 4],
      [3.3, 4.7],
      [5.6, 4],
      [7.5, 1.3],
      [6.4, -1.1],
      [4.4, -3],
      [0.3, -2.5],
      [-1.1, 1.3],
    ];
    const c = circleOf(points);
    near(c.centre_mm[0], 3.04324, 5e-6);
    near(c.centre_mm[1], 0.74568, 5e-6);
    near(c.radius_mm, 4.10586, 5e-6);
    near(c.rms_mm * Math.sqrt(points.length), 0.54401, 5e-6);
  });

  test('[C] the sd of its radius is a little over σ/√n, as for points nearly all round [derived]', () => {
    const c = circleOf([
      [0.7, 4],
      [3.3, 4.7],
      [5.6, 4],
      [7.5, 1.3],
      [6.4, -1.1],
      [4.4, -3],
      [0.3, -2.5],
      [-1.1, 1.3],
    ]);
    // points nearly all round: σ/√n would be the least possible; the covariance gives a little more
    const sigma = (c.rms_mm * Math.sqrt(8)) / Math.sqrt(5);
    expect(c.radius_sd_mm).toBeGreaterThan(sigma / Math.sqrt(8));
    expect(c.radius_sd_mm).toBeLessThan((1.2 * sigma) / Math.sqrt(8));
  });

  test('[S] six points: centre 10.50009, 9.65995, radius 23.33353, not the algebraic 10.55231, 9.70590, 23.33482', () => {
    const c = circleOf([
      [9, 34],
      [35, 10],
      [-13, 6],
      [10, -14],
      [23, 27],
      [0, -10],
    ]);
    near(c.centre_mm[0], 10.50009, 5e-6);
    near(c.centre_mm[1], 9.65995, 5e-6);
    near(c.radius_mm, 23.33353, 5e-6);
  });

  test('[K] a short arc is not drawn in: 20° of 3 m, 9 points bent ±2 mm in turn', () => {
    const points = Array.from({ length: 9 }, (_, k): [number, number] => {
      const phi = ((20 * Math.PI) / 180) * (k / 8);
      const r = 3000 + (k % 2 === 0 ? 2 : -2);
      return [r * Math.sin(phi), r * Math.cos(phi)];
    });
    // Kåsa on the same points [derived]: solve [2x 2y 1] for the least squares of x² + y²
    const n = points.length;
    const mean = [0, 1].map(k => points.reduce((sum, p) => sum + p[k as 0 | 1] / n, 0));
    let [xx, xy, yy, xz, yz, z1] = [0, 0, 0, 0, 0, 0];
    for (const p of points) {
      const [x, y] = [p[0] - mean[0]!, p[1] - mean[1]!];
      const z = x * x + y * y;
      xx += x * x;
      xy += x * y;
      yy += y * y;
      xz += x * z;
      yz += y * z;
      z1 += z / n;
    }
    const det = xx * yy - xy * xy;
    const a = (xz * yy - yz * xy) / det / 2;
    const b = (yz * xx - xz * xy) / det / 2;
    const kasa = Math.sqrt(a * a + b * b + z1);
    expect(circleOf(points).radius_mm).toBeGreaterThan(kasa);
  });
});

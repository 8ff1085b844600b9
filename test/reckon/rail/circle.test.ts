import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Circle, fitCircle } from '../../../src/reckon/rail/circle.ts';
import { chance } from './simulated-rail.ts';

type Points = [number, number][];

const circleOf = (points: Points): Circle => {
  const found = fitCircle(points);
  if (!found.ok) throw new Error(found.fault.message);
  return found.value;
};

const arc = (radius: number, bend_deg: number, n: number, x = 0, y = 0): Points =>
  Array.from({ length: n }, (_, k) => {
    const phi = ((bend_deg * Math.PI) / 180) * (k / (n - 1));
    return [x + radius * Math.sin(phi), y + radius * (1 - Math.cos(phi))];
  });

describe('the circle nearest to points', () => {
  test('through three points is met exactly and claims no spread', () => {
    const c = circleOf([
      [0, 0],
      [574, 228.36 - 172.93],
      [1148.05, 228.36],
    ]);
    expect(c.rms_mm).toBeCloseTo(0, 6);
    expect(c.radius_sd_mm).toBe(0);
  });

  test('of a perfect arc anywhere, however far from the origin', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 100, max: 20000, noNaN: true }),
        fc.double({ min: 10, max: 300, noNaN: true }),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (radius, bend, x, y) => {
          const c = circleOf(arc(radius, bend, 9, x, y));
          expect(c.radius_mm / radius).toBeCloseTo(1, 4);
          expect(c.centre_mm[0]).toBeCloseTo(x, 0);
        },
      ),
    );
  });

  test('scales and moves with its points', () => {
    const dice = chance(4);
    const points = arc(3000, 45, 12).map(([x, y]): [number, number] => [
      x + dice.normal(),
      y + dice.normal(),
    ]);
    const one = circleOf(points);
    const ten = circleOf(points.map(([x, y]) => [10 * x + 5000, 10 * y - 900]));
    expect(ten.radius_mm / one.radius_mm).toBeCloseTo(10, 6);
    expect(ten.rms_mm / one.rms_mm).toBeCloseTo(10, 6);
    expect(ten.radius_sd_mm / one.radius_sd_mm).toBeCloseTo(10, 6);
  });

  test('no small move of centre or radius brings it nearer', () => {
    const dice = chance(8);
    const points = arc(4000, 30, 15).map(([x, y]): [number, number] => [
      x + 2 * dice.normal(),
      y + 2 * dice.normal(),
    ]);
    const c = circleOf(points);
    const squares = (a: number, b: number, r: number) =>
      points.reduce((sum, [x, y]) => sum + (Math.hypot(x - a, y - b) - r) ** 2, 0);
    const best = squares(c.centre_mm[0], c.centre_mm[1], c.radius_mm);
    for (const [da, db, dr] of [
      [0.5, 0, 0],
      [0, 0.5, 0],
      [0, 0, 0.1],
      [0, 5, 5],
      [0, -5, -5],
    ] as const)
      expect(squares(c.centre_mm[0] + da, c.centre_mm[1] + db, c.radius_mm + dr)).toBeGreaterThan(best);
  });

  test('knows how well it knows the radius: 1 mm at nine points of 3 m and 45° is about 11 mm', () => {
    const dice = chance(21);
    const radii: number[] = [];
    const sds: number[] = [];
    for (let k = 0; k < 300; k++) {
      const c = circleOf(arc(3000, 45, 9).map(([x, y]) => [x + dice.normal(), y + dice.normal()]));
      radii.push(c.radius_mm);
      sds.push(c.radius_sd_mm);
    }
    const mean = radii.reduce((sum, r) => sum + r, 0) / 300;
    const sd = Math.sqrt(radii.reduce((sum, r) => sum + (r - mean) ** 2, 0) / 299);
    expect(mean).toBeGreaterThan(2997);
    expect(mean).toBeLessThan(3003);
    expect(sd).toBeGreaterThan(9.5);
    expect(sd).toBeLessThan(13);
    const claimed = sds.reduce((sum, s) => sum + s, 0) / 300;
    expect(claimed / sd).toBeGreaterThan(0.85);
    expect(claimed / sd).toBeLessThan(1.15);
  });

  test.each([
    [
      'on a line',
      [
        [0, 0],
        [1, 1],
        [2, 2],
        [5, 5],
      ],
    ],
    [
      'on a line far away',
      [
        [1e6, 3e6],
        [2e6, 6e6],
        [3e6, 9e6],
      ],
    ],
    [
      'all one',
      [
        [4, 4],
        [4, 4],
        [4, 4],
      ],
    ],
    [
      'two and one of them twice',
      [
        [0, 0],
        [9, 4],
        [9, 4],
      ],
    ],
    [
      'fewer than three',
      [
        [0, 0],
        [1, 2],
      ],
    ],
  ] as [string, Points][])('points %s have no circle', (_, points) => {
    const found = fitCircle(points);
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.fault).toMatchObject({ code: 'no-solution', field: 'points_mm' });
  });

  test('gives finite numbers or says no for anything typed', () => {
    const coordinate = fc.oneof(
      fc.integer({ min: -5, max: 5 }),
      fc.double({ min: -1e9, max: 1e9, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(coordinate, coordinate), { minLength: 3, maxLength: 8 }), points => {
        const found = fitCircle(points);
        if (!found.ok) return;
        const { centre_mm, radius_mm, rms_mm, radius_sd_mm } = found.value;
        for (const v of [...centre_mm, radius_mm, rms_mm, radius_sd_mm])
          expect(Number.isFinite(v)).toBe(true);
        expect(radius_mm).toBeGreaterThan(0);
      }),
      { numRuns: 500 },
    );
  });
});

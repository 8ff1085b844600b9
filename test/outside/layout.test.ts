/**
 * Marks on a floor.
 * Sources
 *   [prac] B.E. Surveying practical no. 1: R 50 m, long chord 30 m, stations every 5 m. Its stations are found, the
 *          ordinates 2.303, 2.052, 1.293, 0 m are by the exact formula (derived). The sheet itself prints
 *          O = R − √(R² − x²) for them, which is the offset from the tangent and not from the chord.
 *   [quiz] railway quiz text: h = L²/8R, v[mm] = 125 C²/R with C, R in m                      (found)
 *   the rows of the reference arc, R 3000 and 45°                                             (derived)
 */
import { describe, expect, test } from 'vitest';
import { layoutOf } from '../../src/reckon/curve/layout.ts';

const ordinates = (
  radius_mm: number,
  exit_rad: number,
  from: 'chord' | 'tangent',
  at_mm: readonly number[],
) => {
  const outcome = layoutOf({ radius_mm, exit_rad, from, at_mm });
  if (!outcome.ok) throw new Error(outcome.fault.message);
  return outcome.value.map(point => point.y_mm);
};

const expectRow = (row: readonly number[], expected: readonly number[], places: number) => {
  expect(row).toHaveLength(expected.length);
  for (const [n, value] of expected.entries()) expect(row[n]).toBeCloseTo(value, places);
};

describe('the reference arc [derived]', () => {
  test('from its chord, at eighths of it', () => {
    // The row's marks 287.0, 574.0 … are eighths of the chord rounded to a tenth; its ordinates are those of the eighths.
    const chord = 2 * 3000 * Math.sin(Math.PI / 8);
    const row = ordinates(
      3000,
      Math.PI / 4,
      'chord',
      [0, 1, 2, 3, 4].map(n => (n * chord) / 8),
    );
    expectRow(row, [228.36, 214.6, 172.93, 102.14, 0], 2);
  });

  test('from its tangent', () => {
    const row = ordinates(3000, Math.PI / 4, 'tangent', [300, 600, 900, 1200, 1500, 1800, 2100]);
    expectRow(row, [15.04, 60.61, 138.18, 250.45, 401.92, 600, 857.57], 2);
  });

  test('is not the parabola: 2.2 mm off the chord, 122 mm off the tangent', () => {
    const half = 3000 * Math.sin(Math.PI / 8);
    const [exactAtThreeEighths] = ordinates(3000, Math.PI / 4, 'chord', [0.75 * half]);
    expect((exactAtThreeEighths as number) - 228.361 * (1 - 0.75 ** 2)).toBeCloseTo(102.14 - 99.91, 2);
    const [exact] = ordinates(3000, Math.PI / 4, 'tangent', [2100]);
    expect((exact as number) - 2100 ** 2 / 6000).toBeGreaterThan(122);
    expect((exact as number) - 2100 ** 2 / 6000).toBeLessThan(123);
  });

  // 1800 of 3000 is a 3-4-5 triangle: 2400 is left, so the ordinate is 600 without any rounding.
  test('is exact where the triangle is', () => {
    expect(ordinates(3000, Math.PI / 4, 'tangent', [1800])).toEqual([600]);
  });
});

test('R 50 m on a chord of 30 m, every 5 m [prac]', () => {
  const row = ordinates(50_000, 2 * Math.asin(15 / 50), 'chord', [0, 5000, 10_000, 15_000, -5000]);
  // Three places of a metre are whole millimetres.
  expectRow(row, [2303, 2052, 1293, 0, 2052], 0);
  // What the sheet prints for its stations is the other base line's ordinate.
  const [tangent] = ordinates(50_000, 2 * Math.asin(15 / 50), 'tangent', [15_000]);
  expect(tangent).toBeCloseTo(2303, 0);
});

test.each([
  [200, 20],
  [1000, 20],
  [1750, 30],
])('the mid-ordinate at R %s m on %s m of chord is the railway versine [quiz]', (R_m, C_m) => {
  const [mid] = ordinates(R_m * 1000, 2 * Math.asin(C_m / 2 / R_m), 'chord', [0]);
  // The published rule is in whole millimetres.
  expect(Math.abs((mid as number) - (125 * C_m ** 2) / R_m)).toBeLessThan(0.5);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rootBetween } from '../../../src/reckon/numeric/root-between.ts';

describe('the root of a function between two places', () => {
  test('is found to the last bits, with a slope or without', () => {
    const square = (x: number) => x * x - 2;
    expect(rootBetween({ of: square, low: 0, high: 2 })).toBeCloseTo(Math.SQRT2, 15);
    expect(rootBetween({ of: square, slope: x => 2 * x, low: 0, high: 2 })).toBeCloseTo(Math.SQRT2, 15);
  });

  test('is not given where the function stays on one side', () => {
    expect(rootBetween({ of: x => x * x + 1, low: -1, high: 1 })).toBeUndefined();
    expect(rootBetween({ of: () => Number.NaN, low: -1, high: 1 })).toBeUndefined();
  });

  test('is the end of the bracket where it lies there', () => {
    expect(rootBetween({ of: x => x - 3, low: 3, high: 5 })).toBe(3);
    expect(rootBetween({ of: x => x - 5, low: 3, high: 5 })).toBe(5);
  });

  // Newton's own step from 1 leads away from this root and never comes back.
  test('is found where Newton alone runs away', () => {
    const of = (x: number) => Math.atan(x - 0.3);
    const slope = (x: number) => 1 / (1 + (x - 0.3) ** 2);
    expect(rootBetween({ of, slope, low: -1e6, high: 1e6, start: 900 })).toBeCloseTo(0.3, 12);
  });

  test('is found with a slope that is wrong, or none at all at the start', () => {
    expect(rootBetween({ of: x => x ** 3, slope: () => -1, low: -1, high: 2 })).toBeCloseTo(0, 5);
    expect(
      rootBetween({ of: x => x ** 3 - 8, slope: x => 3 * x * x, low: -5, high: 5, start: 0 }),
    ).toBeCloseTo(2, 12);
  });

  test('any root of any falling or rising cubic is met', () => {
    const place = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(place, fc.constantFrom(1, -1), (root, sign) => {
        const of = (x: number) => sign * ((x - root) ** 3 + 0.1 * (x - root));
        const slope = (x: number) => sign * (3 * (x - root) ** 2 + 0.1);
        const found = rootBetween({ of, slope, low: -60, high: 60 });
        expect(Math.abs((found as number) - root)).toBeLessThan(1e-11);
      }),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { logAdd, normalAbove, normalBelow, normalBeyond } from '../../../src/reckon/rail/chances.ts';
import { solveSmall } from '../../../src/reckon/rail/dense.ts';
import { symmetricEigen } from '../../../src/reckon/rail/eigen.ts';
import { minimax } from '../../../src/reckon/rail/minimax.ts';
import { chance } from './simulated-rail.ts';

describe('small dense algebra', () => {
  test('solves a symmetric system and refuses a singular one', () => {
    const x = solveSmall(Float64Array.of(4, 0, 2, 3), Float64Array.of(2, 5));
    // the lower half is read: [[4, 2], [2, 3]]
    expect([...x!]).toEqual([expect.closeTo(-0.5, 12), expect.closeTo(2, 12)]);
    expect(solveSmall(Float64Array.of(1, 1, 1, 1), Float64Array.of(1, 1))).toBeNull();
  });

  test.each([1, 2, 3, 7, 26, 60])('falls a matrix of %d rows apart into its own directions', n => {
    const dice = chance(n);
    const half = Array.from({ length: n }, () =>
      Array.from({ length: Math.ceil(n / 2) }, () => dice.normal()),
    );
    const a = Float64Array.from({ length: n * n }, (_, k) =>
      half[Math.floor(k / n)]!.reduce((sum, v, p) => sum + v * half[k % n]![p]!, 0),
    );
    const { values, vectors } = symmetricEigen(a, n);
    for (let k = 0; k < n; k++)
      for (let i = 0; i < n; i++) {
        let av = 0;
        for (let j = 0; j < n; j++) av += a[i * n + j]! * vectors[k * n + j]!;
        expect(av).toBeCloseTo(values[k]! * vectors[k * n + i]!, 9);
      }
    for (let k = 0; k < n; k++) {
      let self = 0;
      for (let j = 0; j < n; j++) self += vectors[k * n + j]! ** 2;
      expect(self).toBeCloseTo(1, 10);
    }
  });
});

describe('chances', () => {
  test('of a normal number', () => {
    expect(normalBelow(0)).toBeCloseTo(0.5, 6);
    expect(normalBelow(1.959964)).toBeCloseTo(0.975, 6);
    expect(normalBelow(-1)).toBeCloseTo(0.158655, 6);
    expect(normalAbove(3, 5, 2)).toBeCloseTo(0.841345, 6);
    expect(normalBeyond(1, 0, 1)).toBeCloseTo(0.31731, 5);
  });

  test('added in logs', () => {
    expect(logAdd(Math.log(2), Math.log(3))).toBeCloseTo(Math.log(5), 12);
    expect(logAdd(Number.NEGATIVE_INFINITY, 1)).toBe(1);
    expect(logAdd(Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY)).toBe(Number.NEGATIVE_INFINITY);
  });
});

describe('the smallest greatest size', () => {
  test('of a step split evenly', () => {
    const { values, worst } = minimax(
      Float64Array.of(0, 0, 10, 10),
      [Float64Array.of(1, 1, 1, 1)],
      [-20],
      [20],
    );
    expect(values[0]).toBeCloseTo(-5, 1);
    expect(worst).toBeCloseTo(5, 1);
  });

  test('stays within its bounds and no grid point beats it', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -4, max: 4, noNaN: true })),
          {
            minLength: 4,
            maxLength: 20,
          },
        ),
        rows => {
          const rest = Float64Array.from(rows, r => r[0]);
          const column = Float64Array.from(rows, r => r[1]);
          const { values, worst } = minimax(rest, [column], [-1], [2]);
          expect(values[0]).toBeGreaterThanOrEqual(-1);
          expect(values[0]).toBeLessThanOrEqual(2);
          for (let v = -1; v <= 2; v += 0.05) {
            const there = rest.reduce((most, r, j) => Math.max(most, Math.abs(r + column[j]! * v)), 0);
            expect(worst).toBeLessThanOrEqual(there * 1.01 + 1e-6);
          }
        },
      ),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  halvesOf,
  pulledSlits,
  ROUND,
  roundsOf,
  SIDES_SHARE,
  skipOrder,
} from '../../src/stages/weld-order.ts';

const slits = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);

describe('the order slits are welded in', () => {
  test('every slit comes once, whatever their number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 80 }), n => {
        expect([...skipOrder(slits(n))].sort((a, b) => a - b)).toEqual(slits(n));
      }),
    );
  });

  test('from five slits on no slit is welded right after its neighbour', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 80 }), n => {
        const order = skipOrder(slits(n));
        for (const [i, slit] of order.entries()) {
          if (i > 0) expect(Math.abs(slit - (order[i - 1] ?? 0))).toBeGreaterThan(1);
        }
      }),
    );
  });

  test('the first round is spread along the whole rail: a slit in each quarter', () => {
    fc.assert(
      fc.property(fc.integer({ min: 16, max: 80 }), n => {
        const quarters = new Set(
          skipOrder(slits(n))
            .slice(0, ROUND)
            .map(slit => Math.floor(((slit - 1) * ROUND) / n)),
        );
        expect(quarters.size).toBe(ROUND);
      }),
    );
  });

  test('25 slits: every second one first, entry and lip among them, then those between', () => {
    const { first, rest } = halvesOf(slits(25));
    expect(first).toEqual([1, 9, 17, 25, 3, 11, 19, 5, 13, 21, 7, 15, 23]);
    expect([...rest].sort((a, b) => a - b)).toEqual([2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24]);
  });

  test('a pause after every four; a last slit alone goes with the round before', () => {
    expect(roundsOf([1, 9, 17, 25, 3])).toEqual([[1, 9, 17, 25, 3]]);
    expect(roundsOf([1, 9, 17, 25, 3, 11])).toEqual([
      [1, 9, 17, 25],
      [3, 11],
    ]);
    expect(roundsOf([])).toEqual([]);
  });
});

describe('how much of the pull is in', () => {
  test('sides and tops of every slit are the whole pull, however it is shared', () => {
    for (const share of Object.values(SIDES_SHARE)) expect(pulledSlits(25, 25, share)).toBeCloseTo(25, 12);
  });

  test('with only the sides in, the likely share is small: the tops bring the most', () => {
    expect(pulledSlits(25, 0, SIDES_SHARE.likely)).toBeLessThan(pulledSlits(25, 25, SIDES_SHARE.likely) / 2);
  });
});

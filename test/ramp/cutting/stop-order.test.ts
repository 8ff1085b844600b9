import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stopOrder } from '../../../src/ramp/cutting/stop-order.ts';

/** Times the stop is set when lengths are cut one after the other. */
const settings = (lengths: readonly (readonly number[])[]): number => {
  const row = lengths.flat();
  return row.filter((l, i) => l !== row[i - 1]).length;
};

const permutations = <T>(list: readonly T[]): T[][] =>
  list.length < 2
    ? [[...list]]
    : list.flatMap((x, i) => permutations([...list.slice(0, i), ...list.slice(i + 1)]).map(p => [x, ...p]));

describe('the saw’s stop', () => {
  test('stays where one bar’s last length is the next one’s first', () => {
    const order = stopOrder([[1120, 545], [500], [545, 500]]);
    expect(order.settings).toBe(3);
    expect(settings(order.lengths)).toBe(3);
  });

  test('one bar: once for every length; none: not at all', () => {
    expect(stopOrder([[3, 2, 1]]).settings).toBe(3);
    expect(stopOrder([])).toEqual({ order: [], lengths: [], settings: 0 });
  });

  const bars = fc.array(fc.uniqueArray(fc.integer({ min: 1, max: 5 }), { minLength: 1, maxLength: 3 }), {
    minLength: 1,
    maxLength: 4,
  });

  /** Every order of bars and of the lengths in each, tried. */
  const fewest = (list: readonly (readonly number[])[]): number => {
    let least = Number.POSITIVE_INFINITY;
    for (const order of permutations(list.map((_, i) => i))) {
      let ways: number[][][] = [[]];
      for (const bar of order) ways = ways.flatMap(w => permutations(list[bar] ?? []).map(p => [...w, p]));
      for (const way of ways) least = Math.min(least, settings(way));
    }
    return least;
  };

  const isWhole = (list: readonly (readonly number[])[]): number => {
    const found = stopOrder(list);
    expect([...found.order].sort((a, b) => a - b)).toEqual(list.map((_, i) => i));
    expect(settings(found.lengths)).toBe(found.settings);
    for (const [i, bar] of found.order.entries())
      expect([...(found.lengths[i] ?? [])].sort()).toEqual([...(list[bar] ?? [])].sort());
    return found.settings;
  };

  test('no other order of bars and lengths sets it fewer times', () => {
    fc.assert(
      fc.property(bars, list => {
        expect(isWhole(list)).toBe(fewest(list));
      }),
      { numRuns: 60 },
    );
  });

  test('nor with many bars, as parts of bars are, that share lengths in small families', () => {
    fc.assert(
      fc.property(fc.array(bars, { minLength: 4, maxLength: 6 }), lists => {
        const apart = lists.map((list, k) => list.map(bar => bar.map(l => l + 10 * k)));
        const all = apart.flat().sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0) || a.length - b.length);
        expect(isWhole(all)).toBe(
          apart.reduce((sum, list) => sum + (list.length === 0 ? 0 : fewest(list)), 0),
        );
      }),
      { numRuns: 20 },
    );
  });

  test('thirty bars of two lengths are two settings, a bar of both between them', () => {
    const list = Array.from({ length: 30 }, (_, i) => (i === 7 ? [600, 900] : [i % 2 === 0 ? 600 : 900]));
    expect(isWhole(list)).toBe(2);
  });

  test('many bars: every bar once, and never worse than setting it anew for every length', () => {
    const list = Array.from({ length: 25 }, (_, i) => [1 + (i % 4), 5 + (i % 3)]);
    const found = stopOrder(list);
    expect([...found.order].sort((a, b) => a - b)).toEqual(list.map((_, i) => i));
    expect(settings(found.lengths)).toBe(found.settings);
    expect(found.settings).toBeLessThan(50);
  });
});

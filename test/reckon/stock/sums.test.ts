import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Sums } from '../../../src/reckon/stock/sums.ts';
import { dot, kinds, takings } from './small-kinds.ts';

describe('the table of sums', () => {
  test('holds the sums that pieces can make, and finds the nearest', () => {
    fc.assert(
      fc.property(kinds, fc.integer({ min: 0, max: 80 }), ({ size, demand }, at) => {
        const sums = Sums.of(size, demand, 70)!;
        const all = new Set(takings(size, demand, 70).map(t => dot(t, size)));
        const sorted = [...all].sort((a, b) => a - b);
        for (let s = 0; s <= 70; s++) expect(sums.has(0, s)).toBe(all.has(s));
        expect(sums.greatest(0, at)).toBe(sorted.filter(s => s <= at).at(-1));
        expect(sums.least(0, at)).toBe(sorted.find(s => s >= at) ?? -1);
        expect(sums.any(0, at - 3, at)).toBe(sorted.some(s => s >= at - 3 && s <= Math.min(at, 70)));
        expect(sums.has(size.length, 0)).toBe(true);
        expect(sums.greatest(size.length, at)).toBe(0);
      }),
    );
  });

  test('is not made for a grid too fine', () => {
    expect(Sums.of([1], [1], 1e9)).toBeNull();
  });
});

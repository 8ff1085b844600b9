import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NearSums } from '../../../src/reckon/stock/near-sums.ts';
import { dot, kinds, takings } from './small-kinds.ts';

describe('which sums there may be', () => {
  const asked = fc.record({
    kinds,
    j: fc.integer({ min: 0, max: 2 }),
    least: fc.integer({ min: -5, max: 60 }),
    width: fc.integer({ min: 0, max: 10 }),
  });

  /** Sums of the kinds from j on. */
  const sumsFrom = (size: Float64Array, demand: Int32Array, j: number, top: number): number[] =>
    takings(
      size,
      demand.map((n, i) => (i < j ? 0 : n)),
      top,
    ).map(t => dot(t, size));

  test('a table wide enough is exact', () => {
    fc.assert(
      fc.property(asked, ({ kinds: { size, demand }, j, least, width }) => {
        const from = Math.min(j, size.length - 1);
        const there = sumsFrom(size, demand, from, 70).some(s => s >= least && s <= least + width);
        expect(new NearSums(size, demand, 70).any(from, least, least + width)).toBe(there);
      }),
    );
  });

  test('a coarse one never says that a sum is not there which is', () => {
    fc.assert(
      fc.property(asked, fc.integer({ min: 2, max: 40 }), ({ kinds, j, least, width }, finer) => {
        // The same pieces in a finer step, a little off it, so that cells cut across them.
        const size = kinds.size.map((s, i) => s * 64 * finer + ((i * 37) % (finer + 1)));
        const from = Math.min(j, size.length - 1);
        const top = 70 * 64 * finer;
        const [low, high] = [least * 64 * finer, (least + width) * 64 * finer];
        const there = sumsFrom(size, kinds.demand, from, top).some(s => s >= low && s <= high);
        const words = (size.length + 1) * 4;
        if (there) expect(new NearSums(size, kinds.demand, top, words).any(from, low, high)).toBe(true);
      }),
    );
  });

  test('and where none is near it says so', () => {
    const size = Float64Array.of(50_000, 30_000);
    const sums = new NearSums(size, Int32Array.of(1, 1), 100_000, 30);
    expect(sums.any(0, 80_000, 80_000)).toBe(true);
    expect(sums.any(0, 60_000, 70_000)).toBe(false);
  });
});

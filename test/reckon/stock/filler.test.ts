import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Filler } from '../../../src/reckon/stock/filler.ts';
import { dot, kinds, takings } from './small-kinds.ts';

describe('filling one bar for the most worth', () => {
  test('search and table find what every taking gives', () => {
    const worths = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 5, maxLength: 5 });
    fc.assert(
      fc.property(kinds, worths, fc.integer({ min: 2, max: 40 }), ({ size, demand }, worth, room) => {
        const prices = Float64Array.from(size, (_, i) => worth[i]! / 7);
        const best = Math.max(...takings(size, demand, room).map(t => dot(t, prices)));
        const filler = new Filler(size);
        filler.price(prices, demand);
        for (const fill of [() => filler.fill(room, 0, 1e6), () => filler.fillSurely(room, 0, 45)]) {
          fill();
          expect(filler.value).toBeCloseTo(best, 9);
          expect(filler.upper).toBeGreaterThanOrEqual(best - 1e-12);
          expect(dot(filler.taken, prices)).toBeCloseTo(best, 9);
          expect(dot(filler.taken, size)).toBeLessThanOrEqual(room);
        }
      }),
    );
  });

  test('a search cut short still tells what no filling can beat', () => {
    fc.assert(
      fc.property(
        kinds,
        fc.integer({ min: 10, max: 40 }),
        fc.integer({ min: 0, max: 6 }),
        ({ size, demand }, room, steps) => {
          const prices = size.map((s, i) => s + ((i * 5) % 3));
          const best = Math.max(...takings(size, demand, room).map(t => dot(t, prices)));
          const filler = new Filler(size);
          filler.price(prices, demand);
          filler.fill(room, 0, steps);
          expect(filler.upper).toBeGreaterThanOrEqual(best);
          expect(filler.value).toBeLessThanOrEqual(best);
        },
      ),
    );
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { settle } from '../../../src/reckon/stock/settle.ts';

describe('bars for given fillings', () => {
  test('are the cheapest that hold them', () => {
    const type = fc.record({
      room: fc.integer({ min: 4, max: 20 }),
      limit: fc.integer({ min: 0, max: 3 }),
      cost: fc.integer({ min: 0, max: 9 }),
    });
    const sums = fc.array(fc.integer({ min: 2, max: 18 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(fc.array(type, { minLength: 1, maxLength: 4 }), sums, (types, list) => {
        types.sort((a, b) => b.room - a.room);
        const shelf = {
          size: Float64Array.of(1),
          room: Float64Array.from(types, t => t.room),
          limit: Int32Array.from(types, t => t.limit),
          cost: Float64Array.from(types, t => t.cost),
        };
        const least = (k: number, left: readonly number[]): number =>
          k === list.length
            ? 0
            : Math.min(
                Number.POSITIVE_INFINITY,
                ...types.map((t, u) =>
                  left[u]! > 0 && t.room >= list[k]!
                    ? t.cost +
                      least(
                        k + 1,
                        left.map((n, v) => (v === u ? n - 1 : n)),
                      )
                    : Number.POSITIVE_INFINITY,
                ),
              );
        const best = least(
          0,
          types.map(t => t.limit),
        );
        const settled = settle(
          shelf,
          list.map(sum => ({ type: 0, taken: Int32Array.of(sum) })),
        );
        expect(settled?.cost ?? Number.POSITIVE_INFINITY).toBe(best);
        if (settled === null) return;
        expect(settled.bars.map(b => b.taken[0]).sort()).toEqual([...list].sort());
        for (const b of settled.bars) expect(b.taken[0]!).toBeLessThanOrEqual(types[b.type]!.room);
        for (const [t, { limit }] of types.entries())
          expect(settled.bars.filter(b => b.type === t).length).toBeLessThanOrEqual(limit);
      }),
    );
  });
});

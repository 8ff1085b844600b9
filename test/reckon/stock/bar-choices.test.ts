import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BarChoices } from '../../../src/reckon/stock/bar-choices.ts';
import { meter } from '../../../src/reckon/stock/meter.ts';
import { dot, takings } from './small-kinds.ts';

const enough = () => meter(1e9);

describe('choices of bars', () => {
  const type = fc.record({
    most: fc.integer({ min: 1, max: 9 }),
    limit: fc.integer({ min: 0, max: 3 }),
    cost: fc.integer({ min: 0, max: 7 }),
  });

  test('come in order of cost, none forgotten that could hold more than those before', () => {
    fc.assert(
      fc.property(
        fc.array(type, { minLength: 1, maxLength: 4 }),
        fc.integer({ min: 1, max: 30 }),
        (types, needed) => {
          types.sort((a, b) => b.most - a.most);
          const cost = Float64Array.from(types, t => t.cost);
          const limit = Int32Array.from(types, t => t.limit);
          const most = Float64Array.from(types, t => t.most);
          const ones = types.map(() => 1);
          const every = takings(Float64Array.from(ones), limit, 99).filter(n => dot(n, most) >= needed);
          const choices = new BarChoices(cost, limit, Number.POSITIVE_INFINITY, enough());
          choices.add({ most, needed });
          const given: { bars: Int32Array; cost: number; atLeast: number }[] = [];
          for (let next = choices.next(1000); next !== null; next = choices.next(1000)) {
            expect(next.atLeast).toBeLessThanOrEqual(next.cost);
            given.push(next);
            choices.leaveOut(next.bars);
          }
          expect(choices.cutShort).toBe(false);
          const costs = given.map(g => g.cost);
          expect(costs).toEqual([...costs].sort((a, b) => a - b));
          for (const g of given) expect(dot(g.bars, most)).toBeGreaterThanOrEqual(needed);
          // Whatever holds the cut is given, or holds no more than something given that costs no more.
          for (const e of every) {
            const covered = given.some(g => {
              const more = e.map((_, t) => dot(g.bars.slice(0, t + 1), ones) - dot(e.slice(0, t + 1), ones));
              return dot(g.bars, cost) <= dot(e, cost) && more.every(n => n >= 0);
            });
            expect(covered).toBe(true);
          }
        },
      ),
    );
  });

  test('one left out takes those that hold less with it, until it is taken back', () => {
    const given = (back: boolean) => {
      const choices = new BarChoices(
        Float64Array.of(5, 4),
        Int32Array.of(2, 2),
        Number.POSITIVE_INFINITY,
        enough(),
      );
      choices.add({ most: Float64Array.of(9, 6), needed: 12 });
      choices.leaveOut(Int32Array.of(1, 1));
      if (back) choices.takeBack(Int32Array.of(1, 1));
      return choices.next(1000)!.bars;
    };
    expect([...given(false)]).toEqual([2, 0]);
    expect([...given(true)]).toEqual([0, 2]);
  });
});

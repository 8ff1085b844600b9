import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { heuristicPlan, planStock } from '../../../src/reckon/stock/plan-stock.ts';
import { STOCK_AIMS, type StockJob } from '../../../src/reckon/stock/stock-job.ts';
import { amountOf, leastByEveryWay, wrongWith } from './every-way.ts';

/** Jobs of up to nine pieces from up to four kinds of bar, small numbers, so that what just fits comes often. */
const job: fc.Arbitrary<StockJob> = fc
  .record({
    lengths: fc.array(
      fc.record({ length_mm: fc.integer({ min: 2, max: 16 }), count: fc.integer({ min: 1, max: 3 }) }),
      {
        minLength: 1,
        maxLength: 4,
      },
    ),
    bars: fc.array(
      fc.record({
        length_mm: fc.integer({ min: 8, max: 24 }),
        count: fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined }),
        price: fc.integer({ min: 0, max: 12 }),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    kerf_mm: fc.constantFrom(0, 0.5, 1),
    trim_mm: fc.constantFrom(0, 0, 1),
    aim: fc.constantFrom(...STOCK_AIMS),
  })
  .map(({ lengths, ...rest }) => ({ ...rest, pieces: lengths }))
  .filter(({ pieces }) => pieces.reduce((n, p) => n + p.count, 0) <= 9);

describe('against every way there is to cut a small job', () => {
  test('the plan is good, the best, and known to be the best; what cannot be cut is refused', () => {
    fc.assert(
      fc.property(job, j => {
        const least = leastByEveryWay(j);
        const outcome = planStock(j);
        expect(outcome.ok).toBe(least !== null);
        if (!outcome.ok) return;
        expect(wrongWith(j, outcome.value)).toEqual([]);
        expect(amountOf(j, outcome.value)).toBe(least);
        expect(outcome.value.proven).toBe(true);
      }),
      { numRuns: 400 },
    );
  });

  test('the plan at once is good, its bound true', () => {
    fc.assert(
      fc.property(job, j => {
        const least = leastByEveryWay(j);
        const outcome = heuristicPlan(j);
        expect(outcome.ok).toBe(least !== null);
        if (!outcome.ok || least === null) return;
        expect(wrongWith(j, outcome.value)).toEqual([]);
        expect(outcome.value.lower_bound).toBeLessThanOrEqual(least);
      }),
      { numRuns: 300 },
    );
  });
});

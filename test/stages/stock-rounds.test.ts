import { describe, expect, test } from 'vitest';
import { good } from '../../src/quantity/outcome.ts';
import type { StockJob, StockPlan } from '../../src/reckon/stock/stock-job.ts';
import { knownPlan, STOCK_ROUNDS, stockAnswer } from '../../src/stages/heavy/stock-answer.ts';
import { askKey } from '../../src/stages/situation.ts';

const job: StockJob = {
  pieces: [
    { name: 'upright', length_mm: 1400, count: 6 },
    { name: 'crossmember', length_mm: 1150, count: 9 },
    { name: 'base rail', length_mm: 1850, count: 4 },
  ],
  bars: [{ length_mm: 6000, price: 30 }],
  kerf_mm: 2,
  aim: 'price',
};

const bars = (price: number, lower_bound: number): StockPlan => ({
  bars: [],
  bar_count: price / 30,
  total_length_mm: price * 200,
  price,
  lower_bound,
  proven: lower_bound >= price,
});

const known = (...rounds: readonly StockPlan[]) =>
  knownPlan(
    new Map(
      rounds.map((plan, round) => [askKey({ topic: 'stock', input: { job, round } }), good(plan)] as const),
    ),
    job,
  );

const planOf = (k: ReturnType<typeof known>): StockPlan => {
  if (!k.plan.ok) throw new Error('refused');
  return k.plan.value;
};

describe('the rounds of a cutting search', () => {
  test('a plan stands before the first', () => {
    const at = known();
    expect(planOf(at).price).toBeGreaterThan(0);
    expect(at.rounds).toBe(0);
  });

  test('a better plan takes the place of the one that stands', () => {
    const at = known(bars(180, 120), bars(150, 120));
    expect(planOf(at)).toMatchObject({ price: 150, lower_bound: 120 });
    expect(at).toMatchObject({ rounds: 2, next: { input: { round: 2 } } });
  });

  test('a worse one does not, but what it learned counts', () => {
    expect(planOf(known(bars(150, 90), bars(180, 120)))).toMatchObject({
      price: 150,
      lower_bound: 120,
      proven: false,
    });
    const at = known(bars(150, 90), bars(180, 150));
    expect(planOf(at)).toMatchObject({ price: 150, lower_bound: 150, proven: true });
    expect(at.next).toBeNull();
  });

  test('the last round, or a proof, is the end', () => {
    const open = Array.from({ length: STOCK_ROUNDS }, () => bars(150, 120));
    expect(known(...open)).toMatchObject({ rounds: STOCK_ROUNDS, next: null });
    expect(known(bars(150, 150))).toMatchObject({ rounds: 1, next: null });
  });

  test('a round ends at the same plan whenever it is asked', () => {
    expect(stockAnswer({ job, round: 0 })).toEqual(stockAnswer({ job, round: 0 }));
  });
});

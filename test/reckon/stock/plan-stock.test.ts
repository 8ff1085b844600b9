import { describe, expect, test } from 'vitest';
import { heuristicPlan, planStock } from '../../../src/reckon/stock/plan-stock.ts';
import type { StockJob, StockPlan } from '../../../src/reckon/stock/stock-job.ts';
import { amountOf, wrongWith } from './every-way.ts';

const planned = (job: StockJob): StockPlan => {
  const outcome = planStock(job);
  if (!outcome.ok) throw new Error(outcome.fault.message);
  expect(wrongWith(job, outcome.value)).toEqual([]);
  return outcome.value;
};

describe('a cutting plan', () => {
  test('three pieces and two kerfs just fill a bar', () => {
    const job: StockJob = {
      pieces: [{ length_mm: 1998, count: 3 }],
      bars: [{ length_mm: 6000 }],
      kerf_mm: 3,
      aim: 'bars',
    };
    expect(planned(job)).toEqual({
      bars: [{ length_mm: 6000, cuts: Array(3).fill({ length_mm: 1998 }), left_mm: 0 }],
      bar_count: 1,
      total_length_mm: 6000,
      price: null,
      lower_bound: 1,
      proven: true,
    });
  });

  test('a kerf a hair wider takes a second bar', () => {
    const job: StockJob = {
      pieces: [{ length_mm: 1998, count: 3 }],
      bars: [{ length_mm: 6000 }],
      kerf_mm: 3.001,
      aim: 'bars',
    };
    expect(planned(job).bar_count).toBe(2);
  });

  test('the squaring trim is taken off once a bar', () => {
    const job = (trim_mm: number): StockJob => ({
      pieces: [{ length_mm: 2990, count: 4 }],
      bars: [{ length_mm: 6000 }],
      kerf_mm: 3,
      trim_mm,
      aim: 'bars',
    });
    expect(planned(job(17)).bars.map(b => b.left_mm)).toEqual([0, 0]);
    expect(planned(job(17.5)).bar_count).toBe(4);
  });

  test.each([
    ['thirds of a bar', 2000 / 3, 3, 0, 2000],
    ['tenths that do not add up in binary', 0.1, 3, 0, 0.3],
    ['inches in sixty-fourths', (23 + 61 / 64) * 25.4, 4, 25.4 / 8, (4 * (23 + 61 / 64) + 3 / 8) * 25.4],
  ])('noise in the last digits costs no bar: %s', (_, length_mm, count, kerf_mm, bar) => {
    const job: StockJob = {
      pieces: [{ length_mm, count }],
      bars: [{ length_mm: bar }],
      kerf_mm,
      aim: 'bars',
    };
    const plan = planned(job);
    expect(plan.bar_count).toBe(1);
    expect(plan.bars[0]!.left_mm).toBeGreaterThanOrEqual(0);
  });

  test('a hundredth of a millimetre too much is too much', () => {
    const job: StockJob = {
      pieces: [{ length_mm: 1000.005, count: 2 }],
      bars: [{ length_mm: 2000 }],
      kerf_mm: 0,
      aim: 'bars',
    };
    expect(planned(job).bar_count).toBe(2);
  });

  test('rows of one length are cut as one, and keep their names', () => {
    const job: StockJob = {
      pieces: [
        { name: 'upright A', length_mm: 900, count: 2 },
        { name: 'crossmember', length_mm: 1200, count: 1 },
        { name: 'upright B', length_mm: 900, count: 2 },
        { length_mm: 900, count: 1 },
      ],
      bars: [{ length_mm: 6000 }],
      kerf_mm: 2,
      aim: 'length',
    };
    const plan = planned(job);
    expect(plan.bars.map(b => b.cuts.map(c => c.name))).toEqual([
      ['crossmember', 'upright A', 'upright A', 'upright B', 'upright B', undefined],
    ]);
    expect('name' in plan.bars[0]!.cuts[5]!).toBe(false);
  });

  test('bars: the longest are taken, and shorter ones where they do as well', () => {
    const job: StockJob = {
      pieces: [
        { length_mm: 2900, count: 4 },
        { length_mm: 1000, count: 1 },
      ],
      bars: [{ length_mm: 3000 }, { length_mm: 6000 }, { length_mm: 1100, count: 1 }],
      kerf_mm: 3,
      aim: 'bars',
    };
    const plan = planned(job);
    expect(plan.bar_count).toBe(3);
    expect(plan.bars.map(b => b.length_mm)).toEqual([6000, 6000, 1100]);
  });

  test('length: two lengths of stock share the work where that wastes less', () => {
    const job: StockJob = {
      pieces: [
        { length_mm: 3900, count: 3 },
        { length_mm: 1950, count: 3 },
      ],
      bars: [{ length_mm: 6000 }, { length_mm: 4000 }],
      kerf_mm: 2,
      aim: 'length',
    };
    // Three of 3900 + 1950 in 6000 are 18 m; 3 × 4000 and 2 × 1950 in one 4000 with one in another are 20 m.
    expect(planned(job).total_length_mm).toBe(18_000);
    expect(planned({ ...job, bars: [{ length_mm: 5800 }, { length_mm: 4000 }] }).total_length_mm).toBe(
      20_000,
    );
  });

  test('price: a dearer metre wins where it takes fewer of them', () => {
    const bars = [
      { length_mm: 6000, price: 30 },
      { length_mm: 3000, price: 16 },
    ];
    const pieces = [{ length_mm: 2900, count: 3 }];
    const job: StockJob = { pieces, bars, kerf_mm: 3, aim: 'price' };
    expect(planned(job)).toMatchObject({ price: 46, total_length_mm: 9000, lower_bound: 46, proven: true });
    expect(planned({ ...job, aim: 'bars' })).toMatchObject({ bar_count: 2, price: 46 });
  });

  test('price: an offcut at no price is used before steel is bought', () => {
    const job: StockJob = {
      pieces: [{ length_mm: 1400, count: 5 }],
      bars: [
        { length_mm: 6000, price: 30 },
        { length_mm: 1500, count: 1, price: 0 },
      ],
      kerf_mm: 3,
      aim: 'price',
    };
    const plan = planned(job);
    expect(plan.price).toBe(30);
    expect(plan.bars.map(b => b.length_mm)).toEqual([6000, 1500]);
  });

  test('a price is told where every bar has one, whatever the aim', () => {
    const bars = [{ length_mm: 6000, price: 30 }, { length_mm: 3000 }];
    const job: StockJob = { pieces: [{ length_mm: 5000, count: 2 }], bars, kerf_mm: 3, aim: 'bars' };
    expect(planned(job).price).toBeNull();
    expect(planned({ ...job, bars: bars.slice(0, 1) }).price).toBe(60);
  });

  test('bars of one length at two prices: the cheap ones first', () => {
    const job: StockJob = {
      pieces: [{ length_mm: 5000, count: 5 }],
      bars: [
        { length_mm: 6000, price: 40 },
        { length_mm: 6000, price: 25, count: 2 },
      ],
      kerf_mm: 3,
      aim: 'price',
    };
    expect(planned(job).price).toBe(2 * 25 + 3 * 40);
  });

  test('a bar with a count of none is not there', () => {
    const job: StockJob = {
      pieces: [{ length_mm: 2900, count: 2 }],
      bars: [{ length_mm: 6000, count: 0 }, { length_mm: 3000 }],
      kerf_mm: 3,
      aim: 'length',
    };
    expect(planned(job).bars.map(b => b.length_mm)).toEqual([3000, 3000]);
  });

  test('limited bars that just hold everything are filled to the last', () => {
    const job: StockJob = {
      pieces: [
        { length_mm: 1499, count: 2 },
        { length_mm: 2499, count: 2 },
        { length_mm: 3499, count: 2 },
      ],
      bars: [
        { length_mm: 5000, count: 1 },
        { length_mm: 4000, count: 1 },
        { length_mm: 6000, count: 1 },
      ],
      kerf_mm: 2,
      aim: 'length',
    };
    expect(planned(job).bars.map(b => b.left_mm)).toEqual([0, 0, 0]);
  });

  test('the same job gives the same plan, again and again', () => {
    const pieces = Array.from({ length: 30 }, (_, i) => ({
      length_mm: 300 + ((i * 617) % 1900),
      count: 1 + (i % 3),
    }));
    const job: StockJob = {
      pieces,
      bars: [{ length_mm: 6000 }, { length_mm: 4000, count: 3 }],
      kerf_mm: 3,
      aim: 'length',
    };
    expect(planned(job)).toEqual(planned(job));
  });

  test('two thousand pieces of fifty lengths are planned, and the plan proven', () => {
    const pieces = Array.from({ length: 50 }, (_, i) => ({ length_mm: 400 + ((i * 617) % 2100), count: 40 }));
    const job: StockJob = { pieces, bars: [{ length_mm: 6000 }], kerf_mm: 3, aim: 'bars' };
    expect(planned(job).proven).toBe(true);
  });
});

describe('on the way to the plan', () => {
  const pieces = Array.from({ length: 24 }, (_, i) => ({ length_mm: 800 + ((i * 331) % 1700), count: 2 }));
  const job: StockJob = {
    pieces,
    bars: [{ length_mm: 6000 }, { length_mm: 4100 }, { length_mm: 2750, count: 2 }],
    kerf_mm: 3,
    aim: 'length',
  };

  test('every plan told is good and no worse than the one before; the last is the answer', () => {
    const told: StockPlan[] = [];
    const answer = planStock(job, { onBetter: plan => told.push(plan) });
    if (!answer.ok) throw new Error('refused');
    expect(told.length).toBeGreaterThan(1);
    for (const plan of told) expect(wrongWith(job, plan)).toEqual([]);
    const values = told.map(plan => amountOf(job, plan));
    expect(values).toEqual([...values].sort((a, b) => b - a));
    expect(told.at(-1)!.bars).toEqual(answer.value.bars);
  });

  test('a clock that is already out leaves the plan made at once, and no false proof', () => {
    let time = 0;
    const now = () => {
      time += 1e6;
      return time;
    };
    const answer = planStock(job, { now, budget_ms: 1 });
    if (!answer.ok) throw new Error('refused');
    expect(wrongWith(job, answer.value)).toEqual([]);
    const best = planned(job);
    expect(answer.value.lower_bound).toBeLessThanOrEqual(best.total_length_mm);
    expect(answer.value.total_length_mm).toBeGreaterThanOrEqual(best.total_length_mm);
  });

  test('few steps leave a good plan with a true bound, more steps never a worse one', () => {
    const best = planned(job).total_length_mm;
    let before = Number.POSITIVE_INFINITY;
    for (const steps of [0, 1e4, 1e6, 1e8]) {
      const answer = planStock(job, { steps });
      if (!answer.ok) throw new Error('refused');
      expect(wrongWith(job, answer.value)).toEqual([]);
      expect(answer.value.lower_bound).toBeLessThanOrEqual(best);
      expect(answer.value.total_length_mm).toBeLessThanOrEqual(before);
      before = answer.value.total_length_mm;
    }
    expect(before).toBe(best);
  });

  test('a plate that the yard cuts to size is its own proof: nothing is searched', () => {
    const job: StockJob = {
      pieces: [{ length_mm: 1219.2, count: 1 }],
      bars: [{ length_mm: 1219.2, price: 1219.2 }],
      kerf_mm: 3.175,
      aim: 'price',
    };
    const quick = heuristicPlan(job);
    expect(quick.ok && quick.value).toMatchObject({ bar_count: 1, proven: true, lower_bound: 1219.2 });
  });

  test('the plan at once is good, and near the best', () => {
    const quick = heuristicPlan(job);
    if (!quick.ok) throw new Error('refused');
    expect(wrongWith(job, quick.value)).toEqual([]);
    const best = planned(job).total_length_mm;
    expect(quick.value.lower_bound).toBeLessThanOrEqual(best);
    expect(quick.value.total_length_mm).toBeLessThan(best * 1.05);
  });

  test('an offcut that costs nothing leaves its bound standing for the bars that must be bought', () => {
    const quick = heuristicPlan({
      pieces: [{ length_mm: 1500, count: 9 }],
      bars: [
        { length_mm: 6000, price: 30 },
        { length_mm: 3100, count: 1, price: 0 },
      ],
      kerf_mm: 0,
      aim: 'price',
    });
    if (!quick.ok) throw new Error('refused');
    // 13.5 m, of which the offcut gives 3.1 m at most: 10.4 m at 5 a metre.
    expect(quick.value.lower_bound).toBeCloseTo(52, 5);
    expect(quick.value.price).toBe(60);
  });

  test('where bars are so scarce that no quick plan comes out, it is searched for', () => {
    const tight: StockJob = {
      pieces: [
        { length_mm: 6, count: 1 },
        { length_mm: 5, count: 2 },
        { length_mm: 4, count: 6 },
      ],
      bars: [
        { length_mm: 12, count: 1 },
        { length_mm: 10, count: 1 },
        { length_mm: 9, count: 2 },
      ],
      kerf_mm: 0,
      aim: 'bars',
    };
    const quick = heuristicPlan(tight);
    expect(quick.ok && wrongWith(tight, quick.value)).toEqual([]);
  });
});

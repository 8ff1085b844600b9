import { describe, expect, test } from 'vitest';
import { planStock } from '../../../src/reckon/stock/plan-stock.ts';
import type { StockBar, StockJob } from '../../../src/reckon/stock/stock-job.ts';
import { amountOf, wrongWith } from './every-way.ts';
import { rowsOf, series } from './sawn-up.ts';

// Jobs cut the other way round: bars are sawn up at random to the last of their length, so that the best plan is known, and then the
// pieces are handed in. A plan without waste has to be found among few that do, which is the hardest a job can be.

const expectBest = (job: StockJob, best: number) => {
  const outcome = planStock(job);
  if (!outcome.ok) throw new Error(outcome.fault.message);
  expect(wrongWith(job, outcome.value)).toEqual([]);
  expect(amountOf(job, outcome.value)).toBe(best);
  expect(outcome.value).toMatchObject({ lower_bound: best, proven: true });
};

describe('three pieces to a bar, without waste', () => {
  // Each piece is longer than a quarter of the bar and shorter than half: no bar holds four, none is full with two.
  test.each([
    [10, 6000, 0, 1],
    [10, 6000, 3, 10],
    [16, 1000, 0, 1],
    [20, 6100, 2.5, 5],
    [24, 6000, 3, 5],
    [30, 1000, 0, 10],
    [30, 2400, 2, 20],
  ])('%i bars of %i mm, kerf %f, in steps of %f', (bars, length_mm, kerf_mm, step) => {
    const chance = series(bars * length_mm + step);
    const net = length_mm - 2 * kerf_mm;
    const lengths: number[] = [];
    const made: number[][] = [];
    while (made.length < bars) {
      const a = Math.round(((0.38 + 0.11 * chance()) * net) / step) * step;
      const b = Math.round((0.25 * net + chance() * ((net - a) / 2 - 0.25 * net)) / step) * step;
      const three = [a, b, net - a - b];
      const fresh = new Set([...lengths, ...three]).size <= 50;
      made.push(fresh ? three : made[Math.floor(chance() * made.length)]!);
      lengths.push(...made.at(-1)!);
    }
    expectBest({ pieces: rowsOf(lengths), bars: [{ length_mm }], kerf_mm, aim: 'bars' }, bars);
  });
});

describe('lengths to a hundredth of a millimetre, without waste', () => {
  // A table of sums in such steps is large, and there are ten thousands of ways to fill a bar: the fillings are listed and sifted.
  test.each([
    [3, 8, 6000, 2],
    [5, 10, 6000, 0],
    [8, 12, 4000, 3],
  ])('job %i: %i bars of %i mm, kerf %f', (seed, bars, length_mm, kerf_mm) => {
    const chance = series(seed * 1013);
    const lengths: number[] = [];
    for (let b = 0; b < bars; b++) {
      const pieces = 3 + (b % 3);
      const net = Math.round((length_mm - kerf_mm * (pieces - 1)) * 100);
      const cuts = new Set([0, net]);
      while (cuts.size < pieces + 1) cuts.add(Math.round((0.05 + 0.9 * chance()) * net));
      const places = [...cuts].sort((p, q) => p - q);
      for (let k = 1; k < places.length; k++) lengths.push((places[k]! - places[k - 1]!) / 100);
    }
    expectBest({ pieces: rowsOf(lengths), bars: [{ length_mm }], kerf_mm, aim: 'bars' }, bars);
  });
});

describe('bars of several lengths sawn up without waste', () => {
  const STOCK = [6000, 4000, 7300, 2450, 12_000];

  test.each([
    [1, 6, 1, 0, 'length'],
    [2, 8, 2, 3, 'length'],
    [3, 10, 3, 2.5, 'price'],
    [4, 12, 3, 3, 'length'],
    [5, 9, 4, 2, 'price'],
    [6, 14, 2, 3, 'price'],
    [7, 15, 4, 0, 'length'],
  ] as const)('job %i: %i bars of %i lengths, kerf %f, least %s', (seed, bars, kinds, kerf_mm, aim) => {
    const chance = series(seed * 77);
    const lengths: number[] = [];
    const used = new Map<number, number>();
    for (let b = 0; b < bars; b++) {
      const bar = STOCK[b % kinds]!;
      const pieces = 2 + Math.floor((chance() * 2 + 1) * (bar / 4000));
      const net = bar - kerf_mm * (pieces - 1);
      const cuts = new Set([0]);
      while (cuts.size < pieces) cuts.add(Math.round(((0.04 + 0.92 * chance()) * net) / 5) * 5);
      const places = [...cuts, net].sort((p, q) => p - q);
      const sawn = places.slice(1).map((p, i) => p - places[i]!);
      if (new Set([...lengths, ...sawn]).size > 50) break;
      lengths.push(...sawn);
      used.set(bar, (used.get(bar) ?? 0) + 1);
    }
    // As many as were sawn up of each length, and one more that is not needed.
    const stock: StockBar[] = [...used].map(([length_mm, n]) => ({
      length_mm,
      count: n + 1,
      price: length_mm / 200,
    }));
    const whole = [...used].reduce((sum, [length_mm, n]) => sum + n * length_mm, 0);
    const job: StockJob = { pieces: rowsOf(lengths), bars: stock, kerf_mm, aim };
    expectBest(job, aim === 'length' ? whole : whole / 200);
    // And with no bar to spare.
    expectBest(
      { ...job, bars: stock.map(bar => ({ ...bar, count: bar.count! - 1 })) },
      aim === 'length' ? whole : whole / 200,
    );
  });
});

describe('jobs whose best plan wastes', () => {
  test('pieces longer than half a bar are one to a bar, whatever the waste', () => {
    const pieces = Array.from({ length: 40 }, (_, i) => ({ length_mm: 3010 + 7 * i, count: 2 }));
    expectBest({ pieces, bars: [{ length_mm: 6000 }], kerf_mm: 3, aim: 'bars' }, 80);
  });

  test('pieces longer than a third are two to a bar, and an odd one is left', () => {
    const pieces = Array.from({ length: 45 }, (_, i) => ({ length_mm: 2010 + 2 * i, count: 1 }));
    expectBest({ pieces, bars: [{ length_mm: 6000 }], kerf_mm: 3, aim: 'bars' }, 23);
  });
});

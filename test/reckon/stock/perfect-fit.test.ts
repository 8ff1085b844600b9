import { describe, expect, test } from 'vitest';
import { planStock } from '../../../src/reckon/stock/plan-stock.ts';
import { wrongWith } from './every-way.ts';
import { sawnUp } from './sawn-up.ts';

// Bars sawn up to the last, and no other bar to be had: unless every piece finds its place again there is no plan at all.

describe('pieces that fill the bars there are to the last', () => {
  const LONG_AND_SHORT = [
    [12_000, 4],
    [6000, 6],
    [4000, 4],
  ] as const;
  const ODD = [
    [6000, 5],
    [3512.5, 1],
    [1890.25, 1],
    [2777.75, 1],
  ] as const;

  test.each([
    ['six bars to a thousandth', 1, [[6000, 6]], 1000, 3, 1],
    ['six bars to a millionth', 4, [[6000, 6]], 1e6, 2, 1],
    ['offcuts of odd lengths', 5, ODD, 100, 2, 1],
    ['twenty bars to a ten-thousandth', 5, [[6000, 20]], 10_000, 3, 2],
    ['long and short bars to a thousandth, first', 1, LONG_AND_SHORT, 1000, 2.5, 2],
    ['long and short bars to a thousandth, second', 4, LONG_AND_SHORT, 1000, 2.5, 2],
    ['long and short bars to a thousandth, third', 6, LONG_AND_SHORT, 1000, 2.5, 2],
    [
      'bars of many pieces to a hundredth',
      2,
      [
        [12_000, 6],
        [7300, 4],
        [2450, 4],
      ],
      100,
      2,
      2,
    ],
  ] as const)('%s', (_, seed, bars, perMm, kerf_mm, alike) => {
    const { job, whole_mm } = sawnUp(seed, bars, perMm, kerf_mm, alike);
    const outcome = planStock(job);
    if (!outcome.ok) throw new Error(outcome.fault.message);
    expect(wrongWith(job, outcome.value)).toEqual([]);
    expect(outcome.value).toMatchObject({ total_length_mm: whole_mm, proven: true });
  });

  test('a thousandth more, and it is said that they do not go', () => {
    const { job } = sawnUp(1, [[6000, 6]], 1000, 3);
    const [first, ...rest] = job.pieces;
    const outcome = planStock({
      ...job,
      pieces: [{ ...first!, length_mm: first!.length_mm + 0.001 }, ...rest],
    });
    expect(outcome).toMatchObject({ ok: false, fault: { code: 'no-solution' } });
  });
});

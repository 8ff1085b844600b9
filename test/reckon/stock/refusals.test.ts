import { describe, expect, test } from 'vitest';
import type { Fault } from '../../../src/quantity/outcome.ts';
import { heuristicPlan, planStock } from '../../../src/reckon/stock/plan-stock.ts';
import type { StockJob } from '../../../src/reckon/stock/stock-job.ts';

const JOB: StockJob = {
  pieces: [
    { name: 'upright', length_mm: 900, count: 4 },
    { name: 'base rail', length_mm: 2400, count: 2 },
  ],
  bars: [{ length_mm: 6000, price: 30 }],
  kerf_mm: 3,
  aim: 'length',
};

const fault = (change: Partial<StockJob>): Fault => {
  const job = { ...JOB, ...change };
  const outcomes = [planStock(job), heuristicPlan(job)];
  expect(outcomes.map(o => o.ok)).toEqual([false, false]);
  const [planned, quick] = outcomes.map(o => (o.ok ? null : o.fault));
  expect(quick).toEqual(planned);
  return planned!;
};

const piece = (length_mm: number, count = 1) => ({ length_mm, count });

describe('refused, with the field it is about', () => {
  test.each<[string, Partial<StockJob>, string, string]>([
    ['no pieces', { pieces: [] }, 'out-of-range', 'pieces'],
    ['a negative length', { pieces: [piece(900), piece(-1)] }, 'out-of-range', 'pieces.1.length_mm'],
    ['a piece of nothing', { pieces: [piece(0)] }, 'out-of-range', 'pieces.0.length_mm'],
    ['a piece of a mile', { pieces: [piece(1_609_344)] }, 'out-of-range', 'pieces.0.length_mm'],
    ['a length that is no number', { pieces: [piece(Number.NaN)] }, 'out-of-range', 'pieces.0.length_mm'],
    ['half a piece', { pieces: [piece(900, 1.5)] }, 'out-of-range', 'pieces.0.count'],
    ['no piece of a row', { pieces: [piece(900, 0)] }, 'out-of-range', 'pieces.0.count'],
    ['no bars', { bars: [] }, 'out-of-range', 'bars'],
    ['no bars of any row', { bars: [{ length_mm: 6000, count: 0 }] }, 'out-of-range', 'bars'],
    [
      'a bar of negative length',
      { bars: [{ length_mm: 6000 }, { length_mm: -5 }] },
      'out-of-range',
      'bars.1.length_mm',
    ],
    ['a negative number of bars', { bars: [{ length_mm: 6000, count: -1 }] }, 'out-of-range', 'bars.0.count'],
    ['a negative price', { bars: [{ length_mm: 6000, price: -1 }] }, 'out-of-range', 'bars.0.price'],
    ['a negative kerf', { kerf_mm: -3 }, 'out-of-range', 'kerf_mm'],
    ['a negative trim', { trim_mm: -3 }, 'out-of-range', 'trim_mm'],
    [
      'price as the aim where a bar has none',
      {
        aim: 'price',
        bars: [
          { length_mm: 6000, price: 30 },
          { length_mm: 1000, count: 1 },
        ],
      },
      'missing-field',
      'bars.1.price',
    ],
    ['2 001 pieces', { pieces: [piece(900, 2001)] }, 'too-large', 'pieces'],
    ['51 lengths', { pieces: Array.from({ length: 51 }, (_, i) => piece(500 + i)) }, 'too-large', 'pieces'],
  ])('%s', (_, change, code, field) => {
    expect(fault(change)).toMatchObject({ code, field });
  });

  test('the limits are said', () => {
    expect(fault({ pieces: [piece(900, 2001)] }).accepted).toBe('at most 2000 pieces');
    const pieces = Array.from({ length: 51 }, (_, i) => piece(500 + i));
    expect(fault({ pieces }).accepted).toBe('at most 50 different lengths');
  });

  test('up to the limits it is planned: rows of one length are one', () => {
    const pieces = Array.from({ length: 100 }, (_, i) => piece(500 + (i % 50), 20));
    expect(planStock({ ...JOB, pieces }).ok).toBe(true);
  });

  test('with several faults the first of them is told', () => {
    expect(fault({ pieces: [piece(-1)], bars: [], kerf_mm: -1 }).field).toBe('pieces.0.length_mm');
  });
});

describe('a piece longer than any bar', () => {
  test('is named, with the bar it would take', () => {
    const pieces = [...JOB.pieces, { name: 'rail', length_mm: 6500, count: 1 }];
    const told = fault({ pieces });
    expect(told).toMatchObject({ code: 'out-of-range', field: 'pieces.2.length_mm' });
    expect(told.message).toContain('rail, 6500 mm');
    expect(told.message).toContain('6000 mm');
    expect(told.accepted).toContain('a bar of 6500 mm or longer');
  });

  test('the trim counts, the kerf does not', () => {
    const rail = { length_mm: 5990, count: 1 };
    expect(planStock({ ...JOB, pieces: [rail], trim_mm: 10 }).ok).toBe(true);
    expect(fault({ pieces: [rail], trim_mm: 10.5 }).accepted).toContain('a bar of 6000.5 mm or longer');
  });

  test('a bar that there is none of does not help', () => {
    const bars = [{ length_mm: 6000 }, { length_mm: 12_000, count: 0 }];
    expect(fault({ bars, pieces: [piece(6500)] }).field).toBe('pieces.0.length_mm');
  });
});

describe('bars that do not hold everything', () => {
  test('too short together: by how much, and what would do', () => {
    const told = fault({ bars: [{ length_mm: 6000, count: 1 }] });
    // 4 × 903 + 2 × 2403 = 8418 in room for 6003.
    expect(told).toMatchObject({ code: 'no-solution', field: 'bars' });
    expect(told.message).toContain('2415 mm too short');
    expect(told.message).toContain('It takes one more bar of 6000 mm');
    expect(told.accepted).toContain('one more bar of 6000 mm');
  });

  test('long enough together, yet no way to cut it: what would do', () => {
    const told = fault({ pieces: [piece(2100, 3)], bars: [{ length_mm: 4000, count: 2 }] });
    expect(told.code).toBe('no-solution');
    expect(told.message).not.toContain('too short');
    expect(told.message).toContain('It takes one more bar of 4000 mm');
  });

  test('what it says would do, does', () => {
    const pieces = [piece(2900, 7), piece(1700, 5)];
    const bars = [{ length_mm: 6000, count: 2 }];
    const told = fault({ pieces, bars });
    const more = Number(/(\d+) more bars of 6000 mm/.exec(told.accepted)![1]);
    expect(planStock({ ...JOB, pieces, bars: [{ length_mm: 6000, count: 2 + more }] }).ok).toBe(true);
    expect(planStock({ ...JOB, pieces, bars: [{ length_mm: 6000, count: 1 + more }] }).ok).toBe(false);
  });

  test('short bars without end do not help long pieces', () => {
    const bars = [{ length_mm: 6000, count: 1 }, { length_mm: 2000 }];
    const told = fault({ pieces: [piece(2400, 3)], bars });
    expect(told.message).toContain('one more bar of 6000 mm');
  });
});

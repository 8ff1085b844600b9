import highsModule, { type Highs } from 'highs';
import { beforeAll, describe, expect, test } from 'vitest';
import { planStock } from '../../src/reckon/stock/plan-stock.ts';
import type { StockBar, StockJob } from '../../src/reckon/stock/stock-job.ts';
import { amountOf, wrongWith } from '../reckon/stock/every-way.ts';

// Checked against HiGHS, a general solver of mixed-integer programmes (MIT licence), on the model of P. C. Gilmore and R. E. Gomory, A linear
// programming approach to the cutting-stock problem (Operations Research 9, 1961) [memory]: one whole variable for every way to cut a bar.

// Its types are those of a CommonJS module, where the function stands under `default`; loaded as an ES module it is the default itself.
const loadHighs = highsModule as unknown as () => Promise<Highs>;

let highs: Highs;
beforeAll(async () => {
  highs = await loadHighs();
});

const inAim = (job: StockJob, bar: StockBar): number =>
  job.aim === 'bars' ? 1 : job.aim === 'length' ? bar.length_mm : bar.price!;

/** Every way to cut a bar that leaves no room for a piece more. */
const waysToCut = (sizes: readonly number[], counts: readonly number[], room: number): number[][] => {
  const ways: number[][] = [];
  const way = sizes.map(() => 0);
  const visit = (i: number, rest: number): void => {
    if (i === sizes.length) {
      const full = sizes.every((s, k) => way[k] === counts[k] || s > rest + 1e-7);
      if (full && way.some(n => n > 0)) ways.push([...way]);
      return;
    }
    for (let n = Math.min(counts[i]!, Math.floor((rest + 1e-7) / sizes[i]!)); n >= 0; n--) {
      way[i] = n;
      visit(i + 1, rest - n * sizes[i]!);
    }
    way[i] = 0;
  };
  visit(0, room);
  return ways;
};

/** The least by the solver, or null when it says that there is no plan. */
const leastBySolver = (job: StockJob): number | null => {
  const lengths = [...new Set(job.pieces.map(p => p.length_mm))];
  const counts = lengths.map(l => job.pieces.filter(p => p.length_mm === l).reduce((n, p) => n + p.count, 0));
  const sizes = lengths.map(l => l + job.kerf_mm);
  const goal: string[] = [];
  const names: string[] = [];
  const rows: string[][] = lengths.map(() => []);
  const limits: string[] = [];
  job.bars.forEach((bar, b) => {
    const mine: string[] = [];
    for (const way of waysToCut(sizes, counts, bar.length_mm - (job.trim_mm ?? 0) + job.kerf_mm)) {
      const x = `x${names.length}`;
      names.push(x);
      mine.push(x);
      goal.push(`${inAim(job, bar)} ${x}`);
      way.forEach((n, i) => {
        if (n > 0) rows[i]!.push(`${n} ${x}`);
      });
    }
    if (bar.count !== undefined && mine.length > 0)
      limits.push(` bar${b}: ${mine.join(' + ')} <= ${bar.count}`);
  });
  if (rows.some(row => row.length === 0)) return null;
  const model = [
    'Minimize',
    ` obj: ${goal.join(' + ')}`,
    'Subject To',
    ...rows.map((row, i) => ` piece${i}: ${row.join(' + ')} >= ${counts[i]}`),
    ...limits,
    'Generals',
    ` ${names.join(' ')}`,
    'End',
  ].join('\n');
  const answer = highs.solve(model, { output_flag: false, mip_rel_gap: 0, mip_abs_gap: 1e-6 });
  if (answer.Status === 'Infeasible') return null;
  expect(answer.Status).toBe('Optimal');
  return answer.ObjectiveValue;
};

/** Jobs of a frame's size, invented: a few lengths, stock of up to three lengths, offcuts, prices that follow no rule. */
const inventedJob = (seed: number): StockJob => {
  let s = seed * 2654435761;
  const whole = (least: number, most: number): number => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return least + Math.floor((s / 4294967296) * (most - least + 1));
  };
  const pieces = Array.from({ length: whole(2, 6) }, (_, i) => ({
    name: `piece ${i}`,
    length_mm: whole(450, 2900),
    count: whole(1, 6),
  }));
  const bars: StockBar[] = Array.from({ length: whole(1, 3) }, () => {
    const length_mm = [6000, 4000, 3000, 7300, 5000][whole(0, 4)]!;
    const count = whole(0, 2) === 0 ? whole(1, 6) : undefined;
    return { length_mm, count, price: (length_mm * whole(35, 75)) / 10_000 };
  });
  for (let k = whole(0, 2); k > 0; k--)
    bars.push({ length_mm: whole(900, 3500), count: 1, price: whole(0, 1) * 4.5 });
  const aim = (['bars', 'length', 'price'] as const)[whole(0, 2)]!;
  return { pieces, bars, kerf_mm: [0, 2, 3.2][whole(0, 2)]!, trim_mm: [0, 10][whole(0, 1)]!, aim };
};

describe('against a general solver', () => {
  test.each(Array.from({ length: 40 }, (_, k) => k + 1))(
    'job %i: the same least, or no plan to both',
    seed => {
      const job = inventedJob(seed);
      const least = leastBySolver(job);
      const outcome = planStock(job);
      expect(outcome.ok).toBe(least !== null);
      if (!outcome.ok || least === null) return;
      expect(wrongWith(job, outcome.value)).toEqual([]);
      expect(outcome.value.proven).toBe(true);
      expect(Math.abs(amountOf(job, outcome.value) - least)).toBeLessThan(1e-5);
    },
    60_000,
  );
});

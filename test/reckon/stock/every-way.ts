import type { StockBar, StockJob, StockPlan } from '../../../src/reckon/stock/stock-job.ts';

const inAim = (job: StockJob, bar: StockBar): number =>
  job.aim === 'bars' ? 1 : job.aim === 'length' ? bar.length_mm : (bar.price ?? 0);

/**
 * The least a job can cost, found by going through every way to cut it: for tests, on jobs of a few pieces. The longest piece left
 * goes into a new bar of every type, with every set of the others that fits. Null when there is no way.
 */
export const leastByEveryWay = (job: StockJob): number | null => {
  const trim = job.trim_mm ?? 0;
  const pieces = job.pieces
    .flatMap(p => Array.from({ length: p.count }, () => p.length_mm))
    .sort((a, b) => b - a);
  const all = (1 << pieces.length) - 1;
  const sums = Array.from({ length: all + 1 }, (_, set) =>
    pieces.reduce((sum, l, i) => (set & (1 << i) ? sum + l + job.kerf_mm : sum), -job.kerf_mm),
  );
  const seen = new Map<string, number>();
  const least = (done: number, used: readonly number[]): number => {
    if (done === all) return 0;
    const key = `${done}/${used.join()}`;
    const known = seen.get(key);
    if (known !== undefined) return known;
    let first = 0;
    while (done & (1 << first)) first++;
    const rest = all & ~done & ~(1 << first);
    let best = Number.POSITIVE_INFINITY;
    job.bars.forEach((bar, b) => {
      if (used[b]! >= (bar.count ?? pieces.length)) return;
      const now = bar.count === undefined ? used : used.map((n, k) => (k === b ? n + 1 : n));
      for (let others = rest; ; others = (others - 1) & rest) {
        const set = others | (1 << first);
        if (sums[set]! + trim <= bar.length_mm + 1e-9)
          best = Math.min(best, inAim(job, bar) + least(done | set, now));
        if (others === 0) break;
      }
    });
    seen.set(key, best);
    return best;
  };
  const found = least(
    0,
    job.bars.map(() => 0),
  );
  return Number.isFinite(found) ? found : null;
};

/** What a plan has of what its job's aim counts. */
export const amountOf = (job: StockJob, plan: StockPlan): number =>
  job.aim === 'bars' ? plan.bar_count : job.aim === 'length' ? plan.total_length_mm : plan.price!;

/** All that is wrong with a plan by the words of the contract; nothing when it is good. */
export const wrongWith = (job: StockJob, plan: StockPlan): string[] => {
  const wrong: string[] = [];
  const name = (p: { name?: string | undefined; length_mm: number }) => `${p.name ?? ''} ${p.length_mm}`;
  const missing = new Map<string, number>();
  for (const p of job.pieces) missing.set(name(p), (missing.get(name(p)) ?? 0) + p.count);
  const used = new Map<number, number>();
  for (const bar of plan.bars) {
    used.set(bar.length_mm, (used.get(bar.length_mm) ?? 0) + 1);
    const sum = bar.cuts.reduce((s, c) => s + c.length_mm, 0);
    const left = bar.length_mm - (job.trim_mm ?? 0) - sum - job.kerf_mm * (bar.cuts.length - 1);
    if (bar.cuts.length === 0) wrong.push('a bar without a cut');
    if (left < -1e-6) wrong.push(`overfull by ${-left}`);
    if (Math.abs(bar.left_mm - left) > 1e-6) wrong.push(`left ${bar.left_mm}, should be ${left}`);
    if (bar.cuts.some((c, i) => i > 0 && c.length_mm > bar.cuts[i - 1]!.length_mm))
      wrong.push('not longest first');
    for (const c of bar.cuts) missing.set(name(c), (missing.get(name(c)) ?? 0) - 1);
  }
  for (const [piece, n] of missing) if (n !== 0) wrong.push(`${n} of${piece} missing`);
  for (const [length, n] of used) {
    const alike = job.bars.filter(b => b.length_mm === length);
    const there = alike.reduce((s, b) => s + (b.count ?? Number.POSITIVE_INFINITY), 0);
    if (n > there) wrong.push(`${n} bars of ${length}, there are ${there}`);
  }
  if (plan.bar_count !== plan.bars.length) wrong.push('bar_count');
  if (Math.abs(plan.total_length_mm - plan.bars.reduce((s, b) => s + b.length_mm, 0)) > 1e-6)
    wrong.push('total_length_mm');
  const value = amountOf(job, plan);
  if (plan.lower_bound > value) wrong.push('lower_bound above the plan');
  if (plan.proven !== (plan.lower_bound === value)) wrong.push('proven');
  return wrong;
};

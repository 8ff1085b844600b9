import type { Settled } from './settle.ts';
import type { Kinds } from './shelf.ts';
import type { PlannedBar, PlannedCut, StockBar, StockJob, StockPlan } from './stock-job.ts';

/** What the bars of a plan come to: type by type, so that sums of like numbers stay as whole as they can. */
const sumOver = (job: StockJob, used: readonly number[], of: (bar: StockBar) => number): number =>
  job.bars.reduce((sum, bar, b) => {
    const times = used.filter(u => u === b).length;
    return times === 0 ? sum : sum + times * of(bar);
  }, 0);

/**
 * A plan in the words of the job: the longest bars first, alike bars together, every piece under the name of its row.
 * @param bound no plan costs less, in steps of the aim
 */
export const layOut = (job: StockJob, kinds: Kinds, settled: Settled, bound: number): StockPlan => {
  const trim = job.trim_mm ?? 0;
  const { rows, barOf, steps } = kinds;
  const order = [...settled.bars].sort((p, q) => {
    const longer = job.bars[barOf[q.type]!]!.length_mm - job.bars[barOf[p.type]!]!.length_mm;
    if (longer !== 0) return longer;
    for (let i = 0; i < p.taken.length; i++) if (p.taken[i] !== q.taken[i]) return q.taken[i]! - p.taken[i]!;
    return 0;
  });
  // Rows of one length give their pieces in turn, row by row.
  const given = rows.map(() => ({ at: 0, used: 0 }));
  const nextOf = (kind: number): PlannedCut => {
    const turn = given[kind]!;
    while (turn.used >= job.pieces[rows[kind]![turn.at]!]!.count) {
      turn.at++;
      turn.used = 0;
    }
    turn.used++;
    const { name, length_mm } = job.pieces[rows[kind]![turn.at]!]!;
    return name === undefined ? { length_mm } : { name, length_mm };
  };
  const bars = order.map(({ type, taken }): PlannedBar => {
    const { length_mm } = job.bars[barOf[type]!]!;
    const cuts: PlannedCut[] = [];
    for (let i = 0; i < taken.length; i++) for (let n = 0; n < taken[i]!; n++) cuts.push(nextOf(i));
    const sum = cuts.reduce((s, cut) => s + cut.length_mm, 0);
    // What just fits may come out a hair below nothing: it is nothing.
    return {
      length_mm,
      cuts,
      left_mm: Math.max(0, length_mm - trim - sum - job.kerf_mm * (cuts.length - 1)),
    };
  });
  const used = order.map(({ type }) => barOf[type]!);
  const total_length_mm = sumOver(job, used, bar => bar.length_mm);
  const priced = job.bars.every(bar => bar.price !== undefined);
  const price = priced ? sumOver(job, used, bar => bar.price!) : null;
  const value = job.aim === 'bars' ? bars.length : job.aim === 'length' ? total_length_mm : price!;
  const proven = bound >= settled.cost;
  return {
    bars,
    bar_count: bars.length,
    total_length_mm,
    price,
    lower_bound: proven ? value : Math.min(bound / steps, value),
    proven,
  };
};

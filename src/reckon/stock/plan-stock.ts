import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { bestPlan } from './best-plan.ts';
import { checkJob } from './check-job.ts';
import { firstPlan } from './first-plan.ts';
import { layOut } from './lay-out.ts';
import { type Meter, meter } from './meter.ts';
import type { Settled } from './settle.ts';
import { type Kinds, kindsOf, lengthText, mmText, type Shelf } from './shelf.ts';
import type { StockJob, StockPlan } from './stock-job.ts';

type StockSearch = Readonly<{
  /** A clock in milliseconds. Without one the search ends after a number of steps, the same on every machine. */
  now?: () => number;
  /** How long to search by that clock; 1 000 when not given. */
  budget_ms?: number;
  /** The most steps to search, clock or no clock: a shorter round that ends alike on every machine. */
  steps?: number;
  /** Is given every plan that is better than those before, the first at once. */
  onBetter?: (plan: StockPlan) => void;
}>;

/** About two seconds of a bench laptop. */
const STEPS = 4e8;
const BUDGET_MS = 1000;

/**
 * The best cutting plan there is, or the best found in the time, with what no plan can beat.
 *
 * Refused: what `checkJob` refuses; no-solution when limited bars cannot hold all pieces, with how much more it takes.
 */
export const planStock = (job: StockJob, search: StockSearch = {}): Outcome<StockPlan> => {
  const checked = checkJob(job);
  if (!checked.ok) return checked;
  const { now, budget_ms = BUDGET_MS, steps = STEPS, onBetter } = search;
  const limit = meter(steps, now, now === undefined ? undefined : now() + budget_ms);
  const kinds = kindsOf(job);
  const told = onBetter && ((plan: Settled, bound: number) => onBetter(layOut(job, kinds, plan, bound)));
  const { plan, bound, proven } = bestPlan(kinds.shelf, kinds.demand, limit, told);
  return plan === null ? tooLittle(job, kinds, limit, proven) : good(layOut(job, kinds, plan, bound));
};

/**
 * A plan at once, made bar by bar: good, not always the best. Where limited bars are so scarce that it finds none, it searches as
 * `planStock` does.
 *
 * Refused: as `planStock`.
 */
export const heuristicPlan = (job: StockJob): Outcome<StockPlan> => {
  const checked = checkJob(job);
  if (!checked.ok) return checked;
  const kinds = kindsOf(job);
  const plan = firstPlan(kinds.shelf, kinds.demand);
  return plan === null ? planStock(job) : good(layOut(job, kinds, plan, roughBound(kinds)));
};

/** What the pieces cost at the least: cut without waste from the bars that cost least for their length, or as few of the longest bars as hold them at the least price of any. */
const roughBound = ({ shelf: { size, room, cost, limit }, demand }: Kinds): number => {
  let sum = 0;
  for (let i = 0; i < size.length; i++) sum += size[i]! * demand[i]!;
  let least = 0;
  let still = sum;
  const cheapest = Array.from(room, (_, t) => t).sort((p, q) => cost[p]! * room[q]! - cost[q]! * room[p]!);
  for (const t of cheapest) {
    const cut = Math.min(still, room[t]! * limit[t]!);
    least += (cut * cost[t]!) / room[t]!;
    still -= cut;
  }
  const fewest = Math.ceil((sum / room[0]!) * (1 - 1e-9));
  return Math.max(Math.ceil(least * (1 - 1e-9)), fewest * Math.min(...cost));
};

/**
 * Says how much more it takes: the bars given cost nothing, and more of the longest cost one each.
 * @param proven that there is no plan with the bars given; else none was found
 */
const tooLittle = (job: StockJob, kinds: Kinds, limit: Meter, proven: boolean): Outcome<never> => {
  const { size, room, limit: there } = kinds.shelf;
  const pieces = kinds.demand.reduce((a, b) => a + b, 0);
  const longest = mmText(job.bars[kinds.barOf[0]!]!.length_mm);
  const extended: Shelf = {
    size,
    room: Float64Array.of(room[0]!, ...room),
    limit: Int32Array.of(pieces, ...there),
    cost: Float64Array.of(1, ...room.map(() => 0)),
  };
  const { plan, bound } = bestPlan(extended, kinds.demand, limit);
  const more = plan?.cost ?? pieces;
  const bars = more === 1 ? `one more bar of ${longest}` : `${more} more bars of ${longest}`;
  let lack = 0;
  for (let i = 0; i < size.length; i++) lack += size[i]! * kinds.demand[i]!;
  for (let t = 0; t < room.length; t++) lack -= room[t]! * there[t]!;
  const said = proven
    ? 'The bars do not hold all pieces.'
    : 'No way was found to cut all pieces from these bars; there may be one.';
  const short = lack > 0 ? ` Together they are ${lengthText(lack)} too short, kerfs counted.` : '';
  const would = proven && bound >= more ? `It takes ${bars}.` : `With ${bars} it can be done.`;
  return refuse('no-solution', 'bars', `${said}${short} ${would}`, `${bars}, or fewer pieces`);
};

import { good, type Outcome } from '../../quantity/outcome.ts';
import { heuristicPlan, planStock } from '../../reckon/stock/plan-stock.ts';
import type { StockJob, StockPlan } from '../../reckon/stock/stock-job.ts';
import { type Answers, type Ask, answer } from '../situation.ts';

/** A section's cutting question in one of the rounds of its search: plain data. */
export type StockQuestion = Readonly<{ job: StockJob; round: number }>;

/**
 * How long each round searches, in steps of its innermost loops and not by a clock, so that a round ends at the same plan on every machine.
 * The last one is about two seconds of a bench laptop.
 */
const ROUNDS = [2e6, 2e7, 4e8] as const;
export const STOCK_ROUNDS = ROUNDS.length;

/** The best plan a round finds, proven or with what no plan can beat. Heavy: asked, and computed off the key's thread. */
export const stockAnswer = ({ job, round }: StockQuestion): Outcome<StockPlan> =>
  planStock(job, { steps: ROUNDS[round] ?? ROUNDS[0] });

export type Known = Readonly<{
  plan: Outcome<StockPlan>;
  /** Rounds that were searched; 0 for a plan made at once. */
  rounds: number;
  /** The round to ask next; null when the plan is proven, cannot be, or was searched to the end. */
  next: Ask | null;
}>;

/** What a plan has of what its job's aim counts. */
const amountOf = (job: StockJob, plan: StockPlan): number =>
  job.aim === 'bars' ? plan.bar_count : job.aim === 'length' ? plan.total_length_mm : (plan.price ?? 0);

/** A round searches another way than the one before: a plan that stands gives way to a better one only, and takes over what it learned. */
const betterOf = (
  job: StockJob,
  stands: Outcome<StockPlan> | null,
  found: Outcome<StockPlan>,
): Outcome<StockPlan> => {
  if (stands === null || !stands.ok) return found;
  if (found.ok && amountOf(job, found.value) <= amountOf(job, stands.value)) return found;
  const lower_bound = Math.max(stands.value.lower_bound, found.ok ? found.value.lower_bound : 0);
  return good({ ...stands.value, lower_bound, proven: lower_bound >= amountOf(job, stands.value) });
};

/** The best plan known by now. One stands from the first moment; each round's answer takes its place. */
export const knownPlan = (answers: Answers, job: StockJob): Known => {
  let plan: Outcome<StockPlan> | null = null;
  for (let round = 0; round < ROUNDS.length; round++) {
    const got = answer<Outcome<StockPlan>>(answers, { topic: 'stock', input: { job, round } });
    if (got.is === 'pending') {
      const now = plan ?? heuristicPlan(job);
      return { plan: now, rounds: round, next: now.ok && !now.value.proven ? got.ask : null };
    }
    plan = betterOf(job, plan, got.value);
    if (!plan.ok || plan.value.proven) return { plan, rounds: round + 1, next: null };
  }
  return { plan: plan ?? heuristicPlan(job), rounds: ROUNDS.length, next: null };
};

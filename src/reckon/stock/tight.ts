import type { Filled } from './dive.ts';
import type { Meter } from './meter.ts';
import type { Task } from './relax.ts';
import { series } from './series.ts';
import { Sums } from './sums.ts';

/** Of so many bars at the end more than one filling is tried, so many of each. */
const LAST = 3;
const TRIES_AT_THE_END = 12;

/** Kinds from the longest to the shortest, more or less: trial 0 exactly, the others each in its own disorder. */
const orderOf = (size: Float64Array, trial: number): Int32Array => {
  const chance = series(trial * 7919 + 1);
  chance();
  const spread = trial === 0 ? 0 : 0.1 + 0.9 * chance();
  const key = size.map(s => s * (1 + spread * (chance() - 0.5) * 2));
  return Int32Array.from(size, (_, i) => i).sort((p, q) => key[q]! - key[p]!);
};

/**
 * Tries to fill given bars to the last of their room, again and again in another order: each bar as full as the pieces left can make
 * it. A table of the sums that can be made leads straight to such a filling. Good where pieces are many and small, and slack is next
 * to none.
 * @param from number of the first trial; another number gives other trials
 */
export const packTight = (task: Task, from: number, trials: number, meter: Meter): Filled[] | null => {
  const { size, room, demand, limit } = task;
  const bars: number[] = [];
  for (let t = 0; t < room.length; t++) for (let b = 0; b < limit[t]!; b++) bars.push(t);
  let slack = bars.reduce((sum, t) => sum + room[t]!, 0);
  for (let i = 0; i < size.length; i++) slack -= demand[i]! * size[i]!;
  for (let trial = from; trial < from + trials && slack >= 0 && !meter.over(); trial++) {
    const turn = trial % 2 === 0 ? [...bars].reverse() : bars;
    const plan = packOnce(task, turn, orderOf(size, trial), slack, meter);
    if (plan !== null) return plan;
  }
  return null;
};

const packOnce = (
  { size, room, demand }: Task,
  turn: readonly number[],
  order: Int32Array,
  slack: number,
  meter: Meter,
): Filled[] | null => {
  const plan: Filled[] = [];

  /** Fillings of a bar, the fullest first, each handed to `use` until that is content or `tries` are up. */
  const fillings = (
    type: number,
    left: Int32Array,
    still: number,
    tries: number,
    use: (taken: Int32Array, waste: number) => boolean,
  ): boolean => {
    const kinds = order.filter(i => left[i]! > 0);
    const s = Float64Array.from(kinds, i => size[i]!);
    const n = kinds.map(i => left[i]!);
    const sums = Sums.of(s, n, room[type]!);
    if (sums === null) return false;
    meter.spend((kinds.length * room[type]!) / 10);
    const taken = new Int32Array(size.length);
    let more = tries;
    let waste = 0;
    const visit = (j: number, rest: number): boolean => {
      if (j === kinds.length) {
        more--;
        return use(taken, waste);
      }
      const i = kinds[j]!;
      for (let k = Math.min(n[j]!, Math.floor(rest / s[j]!)); k >= 0 && more > 0; k--) {
        if (!sums.has(j + 1, rest - k * s[j]!)) continue;
        taken[i] = k;
        if (visit(j + 1, rest - k * s[j]!)) return true;
      }
      taken[i] = 0;
      return false;
    };
    for (let under = room[type]!; more > 0; under -= 1) {
      under = sums.greatest(0, under);
      waste = room[type]! - under;
      if (under < 0 || waste > still) return false;
      if (visit(0, under)) return true;
    }
    return false;
  };

  const finish = (b: number, left: Int32Array, still: number): boolean => {
    if (left.every(v => v === 0)) return true;
    if (b === turn.length || meter.over()) return false;
    const tries = b < turn.length - 1 ? TRIES_AT_THE_END : 1;
    return fillings(turn[b]!, left, still, tries, (taken, waste) => {
      plan.push({ type: turn[b]!, taken: taken.slice() });
      const found = finish(
        b + 1,
        left.map((v, i) => v - taken[i]!),
        still - waste,
      );
      if (!found) plan.pop();
      return found;
    });
  };

  const left = demand.slice();
  let still = slack;
  const last = Math.max(0, turn.length - LAST);
  for (let b = 0; b < last; b++) {
    const filled = fillings(turn[b]!, left, still, 1, (taken, waste) => {
      if (taken.some(v => v > 0)) plan.push({ type: turn[b]!, taken: taken.slice() });
      for (let i = 0; i < left.length; i++) left[i]! -= taken[i]!;
      still -= waste;
      return true;
    });
    if (!filled) return null;
  }
  return finish(last, left, still) ? plan : null;
};

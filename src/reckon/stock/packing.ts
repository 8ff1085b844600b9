import type { Filled } from './dive.ts';
import { lastBars } from './last-bars.ts';
import type { Meter } from './meter.ts';
import type { NearSums } from './near-sums.ts';
import type { Task } from './relax.ts';
import { series } from './series.ts';

/** The last bars are listed once no more pieces than this are left, or fewer where that turned out to be too many. */
const LISTABLE = 48;
const MOST_STEPS = 4000;
/** How much of the slack one bar may take: next to none first, then the more. */
const PARTS_OF_SLACK = [0, 1 / 64, 1 / 16, 1 / 4, 1];

/**
 * Tries to fill given bars to the last of their room, again and again in another disorder: bar by bar, the long pieces first, each as full as
 * the pieces left can make it, and the last bars by every way there is. A table of the sums that can be made leads straight to such a filling.
 * Good where pieces are many, and slack is next to none.
 */
export class Packing {
  readonly #task: Task;
  readonly #slack: number;
  readonly #bars: readonly number[];
  readonly #meter: Meter;
  readonly #sums: NearSums;
  #trials = 0;
  #listable = LISTABLE;

  /**
   * @param task kinds fall from the longest, and so do rooms
   * @param sums of all pieces
   */
  constructor(task: Task, sums: NearSums, meter: Meter) {
    const { size, room, demand, limit } = task;
    this.#task = task;
    this.#meter = meter;
    this.#sums = sums;
    const bars: number[] = [];
    for (let t = 0; t < room.length; t++) for (let b = 0; b < limit[t]!; b++) bars.push(t);
    this.#bars = bars;
    let slack = bars.reduce((sum, t) => sum + room[t]!, 0);
    for (let i = 0; i < size.length; i++) slack -= demand[i]! * size[i]!;
    this.#slack = slack;
  }

  /** Makes so many trials more, no two alike. */
  try(trials: number): Filled[] | 'never' | null {
    if (this.#slack < 0) return 'never';
    for (let k = 0; k < trials && !this.#meter.over(); k++) {
      const plan = this.#once(this.#trials++);
      if (plan !== null) return plan;
    }
    return null;
  }

  #once(trial: number): Filled[] | null {
    const { demand, limit } = this.#task;
    const chance = series(trial * 7919 + 1);
    chance();
    const disorder = trial < 2 ? 0 : 0.1 + 0.4 * chance();
    // Mostly the short bars first: there are few ways to fill them, and many to fill the long ones with what is left.
    const turn = trial % 4 === 1 ? this.#bars : [...this.#bars].reverse();
    const left = demand.slice();
    const bars = limit.slice();
    const plan: Filled[] = [];
    let still = this.#slack;
    let pieces = left.reduce((a, b) => a + b, 0);
    for (const type of turn) {
      if (pieces === 0) return plan;
      if (this.#meter.over()) return null;
      if (pieces <= this.#listable) {
        const rest = lastBars({ ...this.#task, demand: left, limit: bars }, still, this.#meter);
        if (rest === 'never' || rest === 'unknown') return null;
        if (rest !== 'later') return [...plan, ...rest];
        this.#listable = pieces - 1;
      }
      const filled = this.#fill(type, left, still, disorder, chance);
      if (filled === null) return null;
      for (let i = 0; i < left.length; i++) {
        left[i]! -= filled.taken[i]!;
        pieces -= filled.taken[i]!;
      }
      bars[type]!--;
      still -= filled.waste;
      if (filled.waste < this.#task.room[type]!) plan.push({ type, taken: filled.taken });
    }
    return pieces === 0 ? plan : null;
  }

  /** A filling as full as can be, the long pieces first, now and then passing one over. */
  #fill(
    type: number,
    left: Int32Array,
    still: number,
    disorder: number,
    chance: () => number,
  ): { taken: Int32Array; waste: number } | null {
    const { size, room } = this.#task;
    const sums = this.#sums;
    const kinds = size.length;
    const taken = new Int32Array(kinds);
    let steps = 0;
    let spare = 0;
    const visit = (j: number, rest: number): boolean => {
      if (j === kinds) {
        spare = rest;
        return true;
      }
      if (++steps > MOST_STEPS) return false;
      const most = Math.min(left[j]!, Math.floor(rest / size[j]!));
      // From a number on downward, then those above it.
      const from = most > 0 && disorder > 0 && chance() < disorder ? Math.floor(chance() * most) : most;
      for (let n = 0; n <= most; n++) {
        const k = n <= from ? from - n : n;
        const under = rest - k * size[j]!;
        if (!sums.any(j + 1, under - allowed, under)) continue;
        taken[j] = k;
        if (visit(j + 1, under)) return true;
      }
      taken[j] = 0;
      return false;
    };
    const full = sums.atMost(room[type]!);
    const lost = room[type]! - full;
    let allowed = 0;
    let filled = false;
    for (const part of PARTS_OF_SLACK) {
      if (filled || lost > still || (part > 0 && allowed === still - lost)) break;
      allowed = Math.floor(part * (still - lost));
      steps = 0;
      filled = visit(0, full);
    }
    this.#meter.spend(steps * 20);
    return filled ? { taken, waste: lost + spare } : null;
  }
}

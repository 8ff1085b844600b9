import type { Columns } from './columns.ts';
import type { Filler } from './filler.ts';
import type { Meter } from './meter.ts';
import { type Relaxed, relax, type Task } from './relax.ts';

/** A bar with what is cut from it. */
export type Filled = Readonly<{ type: number; taken: Int32Array }>;

type Dive = Readonly<{
  task: Task;
  columns: Columns;
  filler: Filler;
  meter: Meter;
  /** Given up as soon as what is left cannot be had for what is left of this. */
  budget: number;
  /** How often on the way down the second choice may be taken for the first (the third counts twice), and how deep. */
  turns: number;
  depth: number;
  /** Is given what is settled and what is left after every step. */
  finish: (bars: readonly Filled[], left: Int32Array, limit: Int32Array) => Finish;
}>;

/** What is left was finished some other way, which ends the dive; cannot be, which turns it back; or is for the dive to go on with. */
export type Finish = 'found' | 'dead' | 'on';

/**
 * Rounds a relaxation to a plan: whole parts are settled, or else the greatest part; what is left is relaxed again. Where that ends
 * without a plan it turns back and takes another part, as often as it may.
 * @param start the relaxation of the whole task
 * @returns the bars when the dive came to its end by itself, or null
 */
export const dive = (how: Dive, start: Relaxed): Filled[] | null => {
  const { task, columns, filler, meter } = how;
  const { cost } = task;
  const kinds = task.demand.length;
  let ended = false;

  const down = (
    bars: readonly Filled[],
    demand: Int32Array,
    bounds: Int32Array,
    budget: number,
    given: Relaxed,
    turns: number,
    depth: number,
  ): Filled[] | null => {
    const used = [...given.used].sort((p, q) => q.times - p.times);
    const whole = used.some(u => u.times > 1 - 1e-4);
    let spent = 0;
    for (let pick = 0; pick < used.length && spent <= turns; pick++, spent++) {
      const left = demand.slice();
      const limit = bounds.slice();
      const now = [...bars];
      let still = budget;
      const settle = (column: number, times: number): void => {
        const type = columns.type[column]!;
        const taken = columns.taken(column, kinds);
        for (let b = 0; b < times && limit[type]! > 0 && columns.within(column, left); b++) {
          now.push({ type, taken });
          limit[type]!--;
          still -= cost[type]!;
          for (let i = 0; i < kinds; i++) left[i]! -= taken[i]!;
        }
      };
      if (whole) for (const u of used) settle(u.column, Math.floor(u.times + 1e-4));
      else settle(used[pick]!.column, 1);
      if (now.length === bars.length) return null;
      if (left.every(v => v === 0)) return now;
      const finish = how.finish(now, left, limit);
      if (finish === 'found' || meter.over()) {
        ended = true;
        return null;
      }
      if (finish === 'dead') {
        if (whole || depth <= 0) return null;
        continue;
      }
      const next = relax(
        { ...task, demand: left, limit },
        columns,
        filler,
        given.ids,
        given.used.length,
        still + 1e-6,
        meter,
      );
      if (next.bound <= still + 1e-6) {
        const found = down(now, left, limit, still, next, turns - spent, whole ? depth : depth - 1);
        if (found || ended) return found;
      }
      if (whole || depth <= 0) return null;
    }
    return null;
  };
  return down([], task.demand, task.limit, how.budget, start, how.turns, how.depth);
};

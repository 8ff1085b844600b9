import type { Columns } from './columns.ts';
import type { Filled } from './dive.ts';
import { Master } from './master.ts';
import type { Meter } from './meter.ts';
import { LEFT_OUT, type Task } from './relax.ts';

/** So many of a long list are taken up first, spread over all of it. */
const SAMPLE = 2000;
/** As many of those that the prices ask for most are taken up at a time. */
const TAKEN_UP = 300;

/** What a list of fillings can do for what is left, in fractions. */
export type Sifted = Readonly<{
  /** Least cost, or less than what was enough. */
  value: number;
  used: readonly Readonly<{ column: number; times: number }>[];
}>;

/**
 * The linear programme over a list of fillings: begins with a sample, and takes up those the prices ask for, until it costs no more than
 * is enough or is at its least over the whole list.
 * @param active numbers of the columns
 * @returns null when it came to no end
 */
export const sift = (
  { demand, limit, cost }: Task,
  columns: Columns,
  active: Int32Array,
  enough: number,
  meter: Meter,
): Sifted | null => {
  const { start, kind, times, type } = columns;
  const kinds = demand.length;
  const many = active.length;
  const master = new Master(columns, demand, limit, cost, LEFT_OUT);
  const inside = new Uint8Array(many);
  const take = (k: number): void => {
    inside[k] = 1;
    master.add(active[k]!);
  };
  const every = Math.max(1, many / SAMPLE);
  for (let k = 0; k < many; k += every) take(Math.floor(k));
  const reduced = new Float64Array(many);
  for (;;) {
    if (!master.solve(meter)) return null;
    if (master.value <= enough || every === 1) break;
    const y = master.dual;
    const asked: number[] = [];
    for (let k = 0; k < many; k++) {
      if (inside[k] === 1) continue;
      const c = active[k]!;
      let r = cost[type[c]!]! - y[kinds + type[c]!]!;
      for (let e = start[c]!; e < start[c + 1]!; e++) r -= y[kind[e]!]! * times[e]!;
      reduced[k] = r;
      if (r < -1e-9) asked.push(k);
    }
    meter.spend(many * 8);
    if (asked.length === 0) break;
    asked.sort((p, q) => reduced[p]! - reduced[q]!);
    for (const k of asked.slice(0, TAKEN_UP)) take(k);
  }
  return { value: master.value, used: master.used() };
};

/** Columns used a whole number of times each that take just what is asked, as the bars they are; null where some are used in part. */
export const wholeBars = (columns: Columns, demand: Int32Array, { used }: Sifted): Filled[] | null => {
  const bars: Filled[] = [];
  const left = demand.slice();
  for (const { column, times } of used) {
    const whole = Math.round(times);
    if (Math.abs(times - whole) > 1e-4) return null;
    const taken = columns.taken(column, demand.length);
    for (let b = 0; b < whole; b++) {
      if (!columns.within(column, left)) return null;
      for (let i = 0; i < left.length; i++) left[i]! -= taken[i]!;
      bars.push({ type: columns.type[column]!, taken });
    }
  }
  return left.every(v => v === 0) ? bars : null;
};

import type { Columns } from './columns.ts';
import type { Filler } from './filler.ts';
import { Master } from './master.ts';
import type { Meter } from './meter.ts';
import type { Shelf } from './shelf.ts';

/** A shelf with what is to be cut from it; costs are about 1. */
export type Task = Shelf & Readonly<{ demand: Int32Array }>;

/** The answer of the linear relaxation. */
export type Relaxed = Readonly<{
  /** No plan costs less than this; true to rounding, wherever the relaxation was left. */
  bound: number;
  /** The worth of one piece of each kind, and what a bar of each type costs beyond its own (≤ 0), that prove the bound. */
  worth: Float64Array;
  toll: Float64Array;
  /** No filling of a bar of this type is worth more. */
  most: Float64Array;
  /** Columns in use, with how many bars are cut so: a fraction. */
  used: readonly Readonly<{ column: number; times: number }>[];
  /** All columns it knew, those in use first. */
  ids: readonly number[];
}>;

/** What a piece left out costs, in bars: so much that it is left out only where nothing else will do. */
export const LEFT_OUT = 1000;
const QUICK_SEARCH = 2000;
const MOST_ROUNDS = 2000;

/**
 * Least cost of bars when bars may be cut in fractions: the columns are made as they are needed (Gilmore and Gomory, A Linear Programming
 * Approach to the Cutting-Stock Problem, 1961 [memory]). The bound is taken from the prices on the way, scaled so that no bar is worth more
 * than it costs (Farley 1990 [memory]), or with a toll on the bars of which there are only so many.
 * @param known columns to start with; those that hold more than is asked for are passed over
 * @param lead as many of the known are looked at first
 * @param enough stops as soon as the bound is above this; near is good enough once the value is below it
 */
export const relax = (
  task: Task,
  columns: Columns,
  filler: Filler,
  known: readonly number[],
  lead: number,
  enough: number,
  meter: Meter,
): Relaxed => {
  const { size, demand, room, limit, cost } = task;
  const kinds = size.length;
  const types = room.length;
  const master = new Master(columns, demand, limit, cost, LEFT_OUT);
  let first = 0;
  for (let k = 0; k < known.length; k++) {
    const c = known[k]!;
    if (limit[columns.type[c]!]! > 0 && columns.within(c, demand)) master.add(c);
    if (k < lead) first = master.ids.length;
  }
  let bound = 0;
  let worth = new Float64Array(kinds);
  let toll = new Float64Array(types);
  let most = new Float64Array(types);
  const y = new Float64Array(kinds);
  const k = new Float64Array(types);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    if (!master.solve(meter, round === 0 ? first : 0)) break;
    for (let i = 0; i < kinds; i++) y[i] = demand[i]! > 0 ? Math.max(0, master.dual[i]!) : 0;
    filler.price(y, demand);
    let added = 0;
    // Looks quickly first; where that finds nothing and is not sure, it looks surely.
    for (const surely of [false, true]) {
      let doubt = false;
      for (let t = 0; t < types; t++) {
        if (limit[t]! <= 0) continue;
        const price = cost[t]! - Math.min(0, master.dual[kinds + t]!);
        const before = filler.steps;
        if (surely) filler.fillSurely(room[t]!, price, room[0]!);
        else filler.fill(room[t]!, price, QUICK_SEARCH);
        meter.spend((filler.steps - before) * 4);
        k[t] = filler.upper;
        if (filler.value > price + 1e-8) {
          let sum = 0;
          for (let i = 0; i < kinds; i++) sum += size[i]! * filler.taken[i]!;
          master.add(columns.add(filler.taken, t, sum));
          added++;
        } else if (filler.upper > price + 1e-8) doubt = true;
      }
      if (added > 0 || !doubt || master.value <= enough) break;
    }
    // Prices scaled by s: bars worth more than they cost are tolled. The bound is concave in s, and best where a type just pays.
    let total = 0;
    for (let i = 0; i < kinds; i++) total += y[i]! * demand[i]!;
    for (let b = -1; b < types; b++) {
      const s = b < 0 ? 1 : k[b]! > cost[b]! ? cost[b]! / k[b]! : 2;
      if (s > 1) continue;
      let lower = s * total;
      for (let t = 0; t < types; t++)
        if (limit[t]! > 0) lower += limit[t]! * Math.min(0, cost[t]! - s * k[t]!);
      if (lower <= bound) continue;
      bound = lower;
      worth = y.map(v => v * s);
      most = k.map(v => v * s);
      toll = k.map((v, t) => (limit[t]! > 0 ? Math.min(0, cost[t]! - v * s) : 0));
    }
    const near = master.value > enough ? 1e-6 : 1e-4 + 0.2 * (enough - master.value);
    if (bound > enough || master.value - bound < near || added === 0 || meter.over()) break;
  }
  // Those in use first: they are the best start for the relaxation of a part.
  const used = master.used();
  const inUse = new Set(used.map(u => u.column));
  return { bound, worth, toll, most, used, ids: [...inUse, ...master.ids.filter(c => !inUse.has(c))] };
};

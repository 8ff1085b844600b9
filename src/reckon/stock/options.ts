import type { Columns } from './columns.ts';
import type { Relaxed, Task } from './relax.ts';

/** How far a search goes before it gives up: nodes in all, options at a node, steps to find them. */
export type Reach = Readonly<{ nodes: number; children: number; steps: number }>;

/** A filling that may be tried next: how much the relaxation leans on it, and what it costs more than that asks. */
export type Option = Readonly<{
  type: number;
  taken: Int32Array;
  size: number;
  share: number;
  reduced: number;
}>;

/**
 * Every filling with the longest piece left that could belong to an answer: no further piece fits, the bar is the shortest at hand that
 * holds it, its waste is within the slack, its reduced cost within the gap, and it is not part of one already ruled out.
 */
export const optionsOf = (
  task: Task,
  columns: Columns,
  first: number,
  relaxed: Relaxed,
  slack: number,
  gap: number,
  barred: readonly Option[],
  reach: Reach,
): { options: Option[]; whole: boolean } => {
  const { size, demand, room, limit, cost } = task;
  const { worth } = relaxed;
  const options: Option[] = [];
  const share = new Map<string, number>();
  for (const u of relaxed.used) {
    const full = columns.taken(u.column, demand.length);
    if (full[first]! > 0) share.set(`${columns.type[u.column]}:${full.join()}`, u.times);
  }
  const order: number[] = [];
  for (let i = first; i < demand.length; i++) if (demand[i]! > 0) order.push(i);
  const n = order.length;
  // By worth per size, so that the rate of the next kind bounds what the rest of the bar can be worth.
  order.sort((p, q) => worth[q]! / size[q]! - worth[p]! / size[p]! || size[q]! - size[p]!);
  const rate = new Float64Array(n + 1);
  const least = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  const rest = new Float64Array(n + 1);
  for (let j = n - 1; j >= 0; j--) {
    const i = order[j]!;
    rate[j] = worth[i]! / size[i]!;
    least[j] = Math.min(least[j + 1]!, size[i]!);
    rest[j] = rest[j + 1]! + size[i]! * demand[i]!;
  }
  let whole = true;
  let steps = 0;
  const types: number[] = [];
  for (let t = 0; t < room.length; t++) if (limit[t]! > 0 && room[t]! >= size[first]!) types.push(t);
  const taken = new Int32Array(demand.length);
  for (let q = 0; q < types.length; q++) {
    const t = types[q]!;
    const space = room[t]!;
    const over = q + 1 < types.length ? room[types[q + 1]!]! : 0;
    const enough = space - slack;
    const needed = cost[t]! - relaxed.toll[t]! - gap;
    const keep = (rem: number, val: number): void => {
      const used = space - rem;
      if (used < enough || used <= over || val < needed - 1e-9) return;
      for (const i of order) if (taken[i]! < demand[i]! && size[i]! <= rem) return;
      for (const b of barred) if (b.type === t && order.every(i => taken[i]! <= b.taken[i]!)) return;
      const copy = taken.slice();
      options.push({
        type: t,
        taken: copy,
        size: used,
        share: share.get(`${t}:${copy.join()}`) ?? 0,
        reduced: needed + gap - val,
      });
    };
    const visit = (j: number, rem: number, val: number): void => {
      if (++steps > reach.steps || options.length > reach.children * 8) {
        whole = false;
        return;
      }
      if (val + rem * rate[j]! < needed - 1e-9) return;
      if (space - rem + rest[j]! < enough) return;
      if (j === n || rem < least[j]!) {
        keep(rem, val);
        return;
      }
      const i = order[j]!;
      const had = taken[i]!;
      for (let k = Math.min(demand[i]! - had, Math.floor(rem / size[i]!)); k >= 0; k--) {
        taken[i] = had + k;
        visit(j + 1, rem - k * size[i]!, val + k * worth[i]!);
      }
      taken[i] = had;
    };
    taken.fill(0);
    taken[first] = 1;
    visit(0, space - size[first]!, worth[first]!);
  }
  options.sort((p, q) => q.share - p.share || p.reduced - q.reduced || q.size - p.size);
  if (options.length > reach.children) {
    options.length = reach.children;
    whole = false;
  }
  return { options, whole };
};

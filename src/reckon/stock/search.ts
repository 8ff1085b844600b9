import type { Columns } from './columns.ts';
import type { Filled } from './dive.ts';
import type { Filler } from './filler.ts';
import { greedyPlan } from './greedy.ts';
import type { Meter } from './meter.ts';
import { type Relaxed, relax, type Task } from './relax.ts';

/** How far a search goes before it gives up. */
export type Reach = Readonly<{ nodes: number; children: number; steps: number }>;

type Option = Readonly<{ type: number; taken: Int32Array; size: number; share: number; reduced: number }>;

/**
 * Search that settles one bar at a time: the longest piece left has to lie in some bar, so every filling with it that could still
 * lead to a full answer is tried, those first that the relaxation leans on. A part of the search ends when the relaxation of what is
 * left asks for more than is left.
 *
 * Costs are the rooms themselves, so that the budget is what the bars hold.
 * @param refuted what is known not to do, by its text; added to
 */
export const search = (
  task: Task,
  columns: Columns,
  filler: Filler,
  start: Relaxed,
  reach: Reach,
  refuted: Set<string>,
  meter: Meter,
): Filled[] | 'never' | 'unknown' => {
  const { size, room, cost } = task;
  let nodes = 0;

  const visit = (
    demand: Int32Array,
    limit: Int32Array,
    given: Relaxed | Readonly<{ ids: readonly number[]; lead: number }>,
    barred: readonly Option[],
  ): Filled[] | 'never' | 'unknown' => {
    let first = 0;
    while (first < demand.length && demand[first] === 0) first++;
    if (first === demand.length) return [];
    let slack = 0;
    let budget = 0;
    for (let t = 0; t < room.length; t++) {
      slack += limit[t]! * room[t]!;
      budget += limit[t]! * cost[t]!;
    }
    for (let i = 0; i < demand.length; i++) slack -= demand[i]! * size[i]!;
    if (slack < 0) return 'never';
    const key = `${demand.join()};${limit.join()}`;
    if (refuted.has(key)) return 'never';
    if (++nodes > reach.nodes || meter.over()) return 'unknown';
    const quick = greedyPlan({ size, room, limit, cost: room }, demand, 200, -1);
    meter.spend(2000);
    if (quick) return quick;
    let relaxed: Relaxed;
    if ('bound' in given) relaxed = given;
    else {
      relaxed = relax(
        { ...task, demand, limit },
        columns,
        filler,
        given.ids,
        given.lead,
        budget + 1e-6,
        meter,
      );
      if (relaxed.bound > budget + 1e-6) {
        refuted.add(key);
        return 'never';
      }
    }
    const gap = budget - relaxed.bound + 1e-6;
    const { options, whole } = optionsOf(
      { ...task, demand, limit },
      columns,
      first,
      relaxed,
      slack,
      gap,
      barred,
      reach,
    );
    meter.spend(2000);
    let sure = whole;
    const { start: at, kind, times, type } = columns;
    const near = Math.max(gap, 0.05);
    const kept = relaxed.ids.filter(c => {
      let r = cost[type[c]!]! - relaxed.toll[type[c]!]!;
      for (let k = at[c]!; k < at[c + 1]!; k++) r -= relaxed.worth[kind[k]!]! * times[k]!;
      return r < near;
    });
    const passed = { ids: kept, lead: relaxed.used.length };
    const now = [...barred];
    for (const o of options) {
      const d = demand.slice();
      for (let i = 0; i < d.length; i++) d[i]! -= o.taken[i]!;
      const n = limit.slice();
      n[o.type]!--;
      const rest = visit(d, n, passed, now);
      if (rest === 'unknown') sure = false;
      else if (rest !== 'never') return [{ type: o.type, taken: o.taken }, ...rest];
      else now.push(o);
      if (nodes > reach.nodes) return 'unknown';
    }
    if (!sure) return 'unknown';
    refuted.add(key);
    return 'never';
  };
  return visit(task.demand, task.limit, start, []);
};

/**
 * Every filling with the longest piece left that could belong to an answer: no further piece fits, the bar is the shortest at hand that
 * holds it, its waste is within the slack, its reduced cost within the gap, and it is not part of one already ruled out.
 */
const optionsOf = (
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

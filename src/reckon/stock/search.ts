import type { Columns } from './columns.ts';
import type { Filled } from './dive.ts';
import type { Filler } from './filler.ts';
import { greedyPlan } from './greedy.ts';
import type { Meter } from './meter.ts';
import { type Option, optionsOf, type Reach } from './options.ts';
import { type Relaxed, relax, type Task } from './relax.ts';

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
      if (nodes > reach.nodes || meter.over()) return 'unknown';
    }
    if (!sure) return 'unknown';
    refuted.add(key);
    return 'never';
  };
  return visit(task.demand, task.limit, start, []);
};

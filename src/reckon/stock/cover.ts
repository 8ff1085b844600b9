import type { Columns } from './columns.ts';
import type { Filled } from './dive.ts';
import type { Meter } from './meter.ts';
import type { Task } from './relax.ts';
import { sift, wholeBars } from './sift.ts';

/**
 * Covers the pieces from a full list of fillings: the kind that fewest fillings hold is settled first, every filling with it in turn.
 * @param columns every filling that may belong to an answer
 */
export const cover = (
  task: Task,
  columns: Columns,
  nodes: number,
  meter: Meter,
): Filled[] | 'never' | 'unknown' => {
  const { size, room, cost } = task;
  const kinds = size.length;
  const refuted = new Set<string>();
  let visited = 0;
  const many = new Int32Array(kinds);
  const out = new Uint8Array(columns.count);

  const visit = (ids: Int32Array, left: Int32Array, limit: Int32Array): Filled[] | 'never' | 'unknown' => {
    if (++visited > nodes || meter.over()) return 'unknown';
    let slack = 0;
    let budget = 0;
    for (let t = 0; t < room.length; t++) {
      slack += limit[t]! * room[t]!;
      budget += limit[t]! * cost[t]!;
    }
    for (let i = 0; i < kinds; i++) slack -= left[i]! * size[i]!;
    if (slack < 0) return 'never';
    if (left.every(v => v === 0)) return [];
    const key = `${left.join()};${limit.join()}`;
    if (refuted.has(key)) return 'never';
    many.fill(0);
    const kept = new Int32Array(ids.length);
    let n = 0;
    for (const c of ids) {
      const t = columns.type[c]!;
      if (out[c] === 1 || limit[t]! <= 0 || room[t]! - columns.size[c]! > slack || !columns.within(c, left))
        continue;
      kept[n++] = c;
      for (let k = columns.start[c]!; k < columns.start[c + 1]!; k++) many[columns.kind[k]!]!++;
    }
    meter.spend(ids.length * 6);
    const active = kept.slice(0, n);
    let pick = -1;
    for (let i = 0; i < kinds; i++) if (left[i]! > 0 && (pick < 0 || many[i]! < many[pick]!)) pick = i;
    if (many[pick]! === 0) {
      refuted.add(key);
      return 'never';
    }
    const share = new Map<number, number>();
    if (n > 12) {
      const sifted = sift({ ...task, demand: left, limit }, columns, active, budget + 1e-5, meter);
      if (sifted === null) return 'unknown';
      // Were there an answer, it would be one of the programme's too, with no piece left out, at no more than the budget.
      if (sifted.value > budget + 1e-5) {
        refuted.add(key);
        return 'never';
      }
      const bars = wholeBars(columns, left, sifted);
      if (bars !== null) return bars;
      for (const u of sifted.used) share.set(u.column, u.times);
    }
    const options: number[] = [];
    for (const c of active) {
      let holds = false;
      for (let k = columns.start[c]!; k < columns.start[c + 1]!; k++)
        if (columns.kind[k] === pick) holds = true;
      if (!holds) continue;
      // In a shorter bar at hand it would lie as well, and a piece more would be no worse: such fillings need no turn of their own.
      const t = columns.type[c]!;
      let u = t + 1;
      while (u < room.length && limit[u]! <= 0) u++;
      if (u < room.length && columns.size[c]! <= room[u]!) continue;
      const waste = room[t]! - columns.size[c]!;
      if (waste > 0) {
        const taken = columns.taken(c, kinds);
        let more = false;
        for (let i = 0; i < kinds && !more; i++) more = size[i]! <= waste && left[i]! > taken[i]!;
        if (more) continue;
      }
      options.push(c);
    }
    options.sort((p, q) => (share.get(q) ?? 0) - (share.get(p) ?? 0) || columns.size[q]! - columns.size[p]!);
    const ruledOut: number[] = [];
    let sure = true;
    for (const c of options) {
      const now = left.slice();
      for (let k = columns.start[c]!; k < columns.start[c + 1]!; k++)
        now[columns.kind[k]!]! -= columns.times[k]!;
      const bars = limit.slice();
      bars[columns.type[c]!]!--;
      const found = visit(active, now, bars);
      if (found === 'unknown') sure = false;
      else if (found !== 'never')
        return [{ type: columns.type[c]!, taken: columns.taken(c, kinds) }, ...found];
      else {
        // No answer holds it here, nor with any of those to come.
        out[c] = 1;
        ruledOut.push(c);
      }
      if (visited > nodes || meter.over()) {
        sure = false;
        break;
      }
    }
    for (const c of ruledOut) out[c] = 0;
    if (!sure) return 'unknown';
    refuted.add(key);
    return 'never';
  };

  return visit(
    Int32Array.from({ length: columns.count }, (_, c) => c),
    task.demand,
    task.limit,
  );
};

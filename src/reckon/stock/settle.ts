import type { Filled } from './dive.ts';
import type { Shelf } from './shelf.ts';

/** What is in the bars, and which type each is cut from. */
export type Settled = Readonly<{
  bars: readonly Filled[];
  cost: number;
  /** Σ of the rooms. */
  room: number;
}>;

/**
 * The cheapest bars for given fillings, the shorter of two that cost the same. A set of bars will do when, both in order of length, each bar
 * holds the filling at its place; such sets are a matroid, so taking the cheapest bars first is right.
 * @returns null when the bars there are do not do
 */
export const settle = (shelf: Shelf, fillings: readonly Filled[]): Settled | null => {
  const { size, room, limit, cost } = shelf;
  const many = fillings.length;
  const sized = fillings.map(({ taken }) => {
    let sum = 0;
    for (let i = 0; i < taken.length; i++) sum += taken[i]! * size[i]!;
    return { taken, sum };
  });
  sized.sort((p, q) => p.sum - q.sum);
  const cheapestFirst = Array.from(room, (_, t) => t).sort(
    (p, q) => cost[p]! - cost[q]! || room[p]! - room[q]!,
  );
  /** How many of the fillings a bar of each type could hold. */
  const holds = Array.from(room, r => {
    let n = 0;
    while (n < many && sized[n]!.sum <= r) n++;
    return n;
  });
  const chosen = new Int32Array(room.length);
  let count = 0;
  for (const t of cheapestFirst) {
    // As many that for every length there are no more bars up to it than fillings that fit it.
    let most = Math.min(limit[t]!, many - count);
    for (let u = 0; u < room.length; u++) {
      if (room[u]! < room[t]!) continue;
      let upTo = 0;
      for (let v = 0; v < room.length; v++) if (room[v]! <= room[u]!) upTo += chosen[v]!;
      most = Math.min(most, holds[u]! - upTo);
    }
    if (most <= 0) continue;
    chosen[t]! += most;
    count += most;
  }
  if (count < many) return null;
  const bars: Filled[] = [];
  let money = 0;
  let length = 0;
  for (let t = room.length - 1; t >= 0; t--)
    for (let k = 0; k < chosen[t]!; k++) {
      bars.push({ type: t, taken: sized[bars.length]!.taken });
      money += cost[t]!;
      length += room[t]!;
    }
  return { bars, cost: money, room: length };
};

/** Whether one plan is better than another: cheaper, then of less length, then of fewer bars. */
export const better = (p: Settled, q: Settled | null): boolean =>
  q === null ||
  p.cost < q.cost ||
  (p.cost === q.cost && (p.room < q.room || (p.room === q.room && p.bars.length < q.bars.length)));

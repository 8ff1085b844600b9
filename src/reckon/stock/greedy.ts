import type { Filled } from './dive.ts';
import type { Shelf } from './shelf.ts';

/** The filling with piece `first` in it that wastes least, by depth-first search from the longest piece on, cut short after `most` steps. */
const fullest = (
  size: Float64Array,
  demand: Int32Array,
  first: number,
  room: number,
  most: number,
): { taken: Int32Array; waste: number } => {
  const n = demand.length;
  const taken = new Int32Array(n);
  const best = new Int32Array(n);
  let waste = Number.POSITIVE_INFINITY;
  let steps = 0;
  const visit = (from: number, rem: number): boolean => {
    steps++;
    let j = from;
    while (j < n && (demand[j]! - taken[j]! <= 0 || size[j]! > rem)) j++;
    if (j === n) {
      if (rem < waste) {
        waste = rem;
        best.set(taken);
      }
      return waste === 0 || steps > most;
    }
    const had = taken[j]!;
    for (let k = Math.min(demand[j]! - had, Math.floor(rem / size[j]!)); k >= 0; k--) {
      taken[j] = had + k;
      if (visit(j + 1, rem - k * size[j]!)) return true;
    }
    taken[j] = had;
    return false;
  };
  taken[first] = 1;
  visit(first, room - size[first]!);
  return { taken: best, waste };
};

/**
 * A plan bar by bar: the longest piece left goes into the bar whose cost per size used is least, filled as full as a short search can.
 * @param most steps of the search for one filling; with 0 it takes the longest that fits, again and again
 * @param only a type that is taken wherever it can be, or −1
 * @returns null when no bar is left for a piece
 */
export const greedyPlan = (shelf: Shelf, demand: Int32Array, most: number, only: number): Filled[] | null => {
  const { size, room, limit, cost } = shelf;
  const left = demand.slice();
  const bars = limit.slice();
  const plan: Filled[] = [];
  let first = 0;
  for (;;) {
    while (first < left.length && left[first] === 0) first++;
    if (first === left.length) return plan;
    let best: Int32Array | null = null;
    let type = -1;
    let rate = Number.POSITIVE_INFINITY;
    for (let t = 0; t < room.length; t++) {
      if (bars[t]! <= 0 || room[t]! < size[first]!) continue;
      // Of bars of one length the cheapest will do.
      if (best !== null && type >= 0 && room[t] === room[type] && cost[t]! >= cost[type]!) continue;
      const { taken, waste } = fullest(size, left, first, room[t]!, most);
      const r = t === only ? -1 : cost[t]! / (room[t]! - waste);
      if (r < rate) {
        rate = r;
        best = taken;
        type = t;
      }
    }
    if (best === null) return null;
    let times = bars[type]!;
    for (let i = 0; i < left.length; i++)
      if (best[i]! > 0) times = Math.min(times, Math.floor(left[i]! / best[i]!));
    for (let b = 0; b < times; b++) plan.push({ type, taken: best });
    bars[type]! -= times;
    for (let i = 0; i < left.length; i++) left[i]! -= times * best[i]!;
  }
};

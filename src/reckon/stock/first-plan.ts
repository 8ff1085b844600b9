import { greedyPlan } from './greedy.ts';
import { better, type Settled, settle } from './settle.ts';
import type { Shelf } from './shelf.ts';

/** So many of the types take their turn as the one that is taken wherever it can be. */
const MOST_TURNS = 3;

/** The best of a few plans made bar by bar, or null when none of them gets all pieces into the bars there are. */
export const firstPlan = (shelf: Shelf, demand: Int32Array): Settled | null => {
  const { room, limit } = shelf;
  // Turns go to the types there are most of: what is nearly used up decides little.
  const turns = Array.from(room, (_, t) => t)
    .sort((p, q) => limit[q]! - limit[p]! || p - q)
    .slice(0, room.length === 1 ? 0 : MOST_TURNS);
  let best: Settled | null = null;
  for (const most of [0, 200])
    for (const only of [-1, ...turns]) {
      const plan = greedyPlan(shelf, demand, most, only);
      const settled = plan && settle(shelf, plan);
      if (settled && better(settled, best)) best = settled;
    }
  return best;
};

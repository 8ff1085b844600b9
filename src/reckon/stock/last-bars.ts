import type { Filled } from './dive.ts';
import { allFillings, FREE } from './fillings.ts';
import type { Meter } from './meter.ts';
import { NearSums } from './near-sums.ts';
import type { Task } from './relax.ts';

/** So many ways to fill a bar are listed; more, and there are too many bars left. */
const MOST_WAYS = 2500;
const STEPS_TO_LIST = 60_000;
/** Of the table of sums, made anew each time: coarse does. */
const WORDS = 500_000;
const MOST_LOOKS = 250_000;

/**
 * Fills the last bars of a task in which next to nothing may be wasted, by every way there is: all fillings of each bar are listed, and the
 * longest piece left is given each filling in turn that holds it.
 * @param task what is left; kinds fall from the longest
 * @param slack room that all bars left have beyond the pieces left
 * @returns the bars; 'never' when there is no way; 'later' when too much is left to list; 'unknown' when it was given up
 */
export const lastBars = (
  task: Task,
  slack: number,
  meter: Meter,
): Filled[] | 'never' | 'later' | 'unknown' => {
  const { size, demand, room } = task;
  if (slack < 0) return 'never';
  const sums = new NearSums(size, demand, room[0]!, WORDS);
  meter.spend(WORDS / 16);
  const ways = allFillings(task, slack, FREE, MOST_WAYS, STEPS_TO_LIST, meter, sums);
  if (ways === null) return 'later';
  const { start, kind, times, type } = ways;
  // By the longest piece in it: a way is looked at only when that is the longest piece left.
  const led: number[][] = Array.from(size, () => []);
  for (let c = 0; c < ways.count; c++) led[kind[start[c]!]!]!.push(c);
  const left = demand.slice();
  const bars = task.limit.slice();
  const plan: Filled[] = [];
  let looks = 0;

  const close = (from: number, still: number): boolean => {
    let first = from;
    while (first < left.length && left[first] === 0) first++;
    if (first === left.length) return true;
    const tries = led[first]!;
    looks += tries.length;
    for (const c of tries) {
      if (looks > MOST_LOOKS) return false;
      const t = type[c]!;
      const waste = room[t]! - ways.size[c]!;
      if (bars[t]! <= 0 || waste > still || !ways.within(c, left)) continue;
      const end = start[c + 1]!;
      for (let k = start[c]!; k < end; k++) left[kind[k]!]! -= times[k]!;
      bars[t]!--;
      plan.push({ type: t, taken: ways.taken(c, size.length) });
      if (close(first, still - waste)) return true;
      plan.pop();
      bars[t]!++;
      for (let k = start[c]!; k < end; k++) left[kind[k]!]! += times[k]!;
    }
    return false;
  };
  const closed = close(0, slack);
  meter.spend(looks * 4);
  return closed ? plan : looks > MOST_LOOKS ? 'unknown' : 'never';
};

import type { Filled } from './dive.ts';
import type { Meter } from './meter.ts';
import { Sums } from './sums.ts';

/** A row of numbers between 0 and 1, the same on every run. */
const series = (seed: number) => {
  let s = seed >>> 0;
  return (): number => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s / 4294967296;
  };
};

/** From this many bars before the end on, more than one filling is tried. */
const LAST = 3;
const TRIES_AT_THE_END = 12;

/**
 * Tries to fill given bars to the last of their room, again and again in another order: each bar as full as the pieces left can make
 * it. A table of the sums that can be made leads straight to such a filling. Good where pieces are many and small, and slack is next
 * to none.
 * @param from number of the first trial; another number gives other trials
 */
export const packTight = (
  size: Float64Array,
  room: Float64Array,
  demand: Int32Array,
  limit: Int32Array,
  from: number,
  trials: number,
  meter: Meter,
): Filled[] | null => {
  const kinds = size.length;
  const bars: number[] = [];
  for (let t = 0; t < room.length; t++) for (let b = 0; b < limit[t]!; b++) bars.push(t);
  let slack = 0;
  for (const t of bars) slack += room[t]!;
  for (let i = 0; i < kinds; i++) slack -= demand[i]! * size[i]!;
  if (slack < 0 || bars.length === 0) return null;
  const order = new Int32Array(kinds);
  const key = new Float64Array(kinds);
  for (let trial = from; trial < from + trials && !meter.over(); trial++) {
    const chance = series(trial * 7919 + 1);
    chance();
    const spread = trial === 0 ? 0 : 0.1 + 0.9 * chance();
    for (let i = 0; i < kinds; i++) {
      order[i] = i;
      key[i] = size[i]! * (1 + spread * (chance() - 0.5) * 2);
    }
    order.sort((p, q) => key[q]! - key[p]!);
    const turn = trial % 2 === 0 ? [...bars].reverse() : bars;
    const plan: Filled[] = [];
    const fill = (b: number, left: Int32Array, still: number): boolean => {
      if (b === turn.length) return left.every(v => v === 0);
      if (meter.over()) return false;
      const t = turn[b]!;
      const list = order.filter(i => left[i]! > 0);
      if (list.length === 0) return true;
      const s = Float64Array.from(list, i => size[i]!);
      const sums = Sums.of(
        s,
        list.map(i => left[i]!),
        room[t]!,
      );
      if (sums === null) return false;
      meter.spend((list.length * room[t]!) / 10);
      let tries = b >= turn.length - LAST && b < turn.length - 1 ? TRIES_AT_THE_END : 1;
      let under = room[t]!;
      while (tries > 0) {
        const sum = sums.greatest(0, under);
        if (sum < 0 || room[t]! - sum > still) return false;
        // one filling with this sum, then others while tries are left
        const taken = new Int32Array(kinds);
        const visit = (j: number, rest: number): boolean => {
          if (j === list.length) {
            tries--;
            const now = left.slice();
            for (let i = 0; i < kinds; i++) now[i]! -= taken[i]!;
            plan.push({ type: t, taken: taken.slice() });
            if (fill(b + 1, now, still - (room[t]! - sum))) return true;
            plan.pop();
            return false;
          }
          const i = list[j]!;
          for (let k = Math.min(left[i]!, Math.floor(rest / s[j]!)); k >= 0 && tries > 0; k--) {
            if (!sums.has(j + 1, rest - k * s[j]!)) continue;
            taken[i] = k;
            if (visit(j + 1, rest - k * s[j]!)) return true;
          }
          taken[i] = 0;
          return false;
        };
        if (visit(0, sum)) return true;
        under = sum - 1;
      }
      return false;
    };
    if (fill(0, demand, slack)) return plan.filter(p => p.taken.some(v => v > 0));
  }
  return null;
};

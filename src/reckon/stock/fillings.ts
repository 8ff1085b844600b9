import { Columns } from './columns.ts';
import type { Meter } from './meter.ts';
import type { Task } from './relax.ts';
import { FINE_WORDS, Sums } from './sums.ts';

/** Prices of a relaxation, and by how much a filling of an answer may be dearer than they ask. */
export type Prices = Readonly<{ worth: Float64Array; toll: Float64Array; gap: number }>;

const STEPS_A_LOOK = 20_000;

/**
 * Lists every filling that wastes no more than the slack and is no dearer, at the relaxation's prices, than the gap allows. A table of the
 * sums that can be made leads past what cannot come out.
 * @param slack room that all bars together have beyond the pieces: no bar of an answer wastes more
 * @returns null when there are more than `most`, or it takes more than so many steps
 */
export const allFillings = (
  task: Task,
  slack: number,
  { worth, toll, gap }: Prices,
  most: number,
  steps: number,
  meter: Meter,
): Columns | null => {
  const { size, demand, room, limit, cost } = task;
  const kinds = size.length;
  const sums = Sums.of(size, demand, room[0]!, FINE_WORDS);
  const rate = new Float64Array(kinds + 1);
  const rest = new Float64Array(kinds + 1);
  for (let j = kinds - 1; j >= 0; j--) {
    rate[j] = demand[j]! > 0 ? Math.max(rate[j + 1]!, worth[j]! / size[j]!) : rate[j + 1]!;
    rest[j] = rest[j + 1]! + demand[j]! * size[j]!;
  }
  const columns = new Columns();
  const taken = new Int32Array(kinds);
  let done = 0;
  let whole = true;
  for (let t = 0; t < room.length && whole; t++) {
    if (limit[t]! <= 0) continue;
    const needed = cost[t]! - toll[t]! - gap;
    const visit = (j: number, rem: number, val: number): void => {
      if (!whole) return;
      if (++done % STEPS_A_LOOK === 0) meter.spend(6 * STEPS_A_LOOK);
      if (done > steps || columns.count > most || (done % STEPS_A_LOOK === 0 && meter.over())) {
        whole = false;
        return;
      }
      if (val + rem * rate[j]! < needed - 1e-9) return;
      if (rem - rest[j]! > slack) return;
      if (j === kinds) {
        if (rem < room[t]!) columns.add(taken, t, room[t]! - rem);
        return;
      }
      if (sums !== null && !sums.any(j, rem - slack, rem)) return;
      for (let k = Math.min(demand[j]!, Math.floor(rem / size[j]!)); k >= 0; k--) {
        taken[j] = k;
        visit(j + 1, rem - k * size[j]!, val + k * worth[j]!);
      }
      taken[j] = 0;
    };
    visit(0, room[t]!, 0);
  }
  meter.spend((done % STEPS_A_LOOK) * 6);
  return whole ? columns : null;
};

import { Columns } from './columns.ts';
import type { Meter } from './meter.ts';
import { NearSums } from './near-sums.ts';
import type { Task } from './relax.ts';
import { MOST_KINDS } from './stock-job.ts';

/** Prices of a relaxation, and by how much a filling of an answer may be dearer than they ask. */
export type Prices = Readonly<{ worth: Float64Array; toll: Float64Array; gap: number }>;

/** No prices known: every filling is as good as the other. */
export const FREE: Prices = {
  worth: new Float64Array(MOST_KINDS),
  toll: new Float64Array(0),
  gap: Number.POSITIVE_INFINITY,
};

const STEPS_A_LOOK = 2000;
/** A look into a wide table is no quick step. */
const WORK_A_STEP = 10;

/**
 * Lists every filling that wastes no more than the slack and is no dearer, at the relaxation's prices, than the gap allows. A table of the
 * sums that can be made leads past what cannot come out.
 * @param slack room that all bars together have beyond the pieces: no bar of an answer wastes more
 * @param sums of these pieces or more; made when not given
 * @returns null when there are more than `most`, or it takes more than so many steps
 */
export const allFillings = (
  task: Task,
  slack: number,
  { worth, toll, gap }: Prices,
  most: number,
  steps: number,
  meter: Meter,
  sums = new NearSums(task.size, task.demand, task.room[0]!),
): Columns | null => {
  const { size, demand, room, limit, cost } = task;
  const kinds = size.length;
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
    const needed = cost[t]! - (toll[t] ?? 0) - gap;
    const visit = (j: number, rem: number, val: number): void => {
      if (rem <= slack && rem < room[t]! && val >= needed - 1e-9) columns.add(taken, t, room[t]! - rem);
      for (let i = j; i < kinds; i++) {
        if (demand[i] === 0 || size[i]! > rem) continue;
        if (rem - rest[i]! > slack || val + rem * rate[i]! < needed - 1e-9) return;
        if (!sums.any(i, rem - slack, rem)) return;
        for (let k = Math.min(demand[i]!, Math.floor(rem / size[i]!)); k > 0; k--) {
          const under = rem - k * size[i]!;
          if (++done % STEPS_A_LOOK === 0) {
            meter.spend(WORK_A_STEP * STEPS_A_LOOK);
            if (meter.over()) whole = false;
          }
          if (done > steps || columns.count > most) whole = false;
          if (!whole) return;
          if (!sums.any(i + 1, under - slack, under)) continue;
          taken[i] = k;
          visit(i + 1, under, val + k * worth[i]!);
        }
        taken[i] = 0;
      }
    };
    visit(0, room[t]!, 0);
  }
  meter.spend((done % STEPS_A_LOOK) * WORK_A_STEP);
  return whole ? columns : null;
};

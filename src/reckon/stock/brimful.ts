import type { Columns } from './columns.ts';
import { cover } from './cover.ts';
import type { Filled } from './dive.ts';
import { allFillings, FREE } from './fillings.ts';
import type { Meter } from './meter.ts';
import { NearSums } from './near-sums.ts';
import { Packing } from './packing.ts';
import type { Task } from './relax.ts';

/** So many fillings are looked through in a tenth of a second. */
const MOST_LISTED = 120_000;
/** As many are listed at first, and kept for other choices of bars. */
const FEW_LISTED = 25_000;
const SHORT = 3000;
/** The same where it is asked at every bar of a dive. */
const LISTED_BELOW = 10_000;
const STEPS_A_FILLING = 40;
/** So many times the steps on a grid so fine that the table leads astray. */
const LONG = 5;
const NODES = 200;
const STEPS_A_TABLE = 1e6;

const keyOf = ({ limit }: Task, slack: number): string =>
  `${slack}:${limit.map(n => (n > 0 ? 1 : 0)).join('')}`;

/**
 * The same pieces in one choice of bars after another where next to nothing may be wasted: there are few ways then to fill a bar, and a
 * table of the sums that pieces can make leads to them straight.
 */
export class Brimful {
  readonly #size: Float64Array;
  readonly #demand: Int32Array;
  readonly #longest: number;
  readonly #meter: Meter;
  #sums: NearSums | undefined;
  /** By slack and types of bar; null where there are too many. */
  readonly #lists = new Map<string, Columns | null>();
  readonly #packings = new Map<string, Packing>();
  /** Of no more pieces than this the fillings could be listed on a dive. */
  #listable = Number.POSITIVE_INFINITY;

  /** @param room of every type there is, falling */
  constructor(size: Float64Array, demand: Int32Array, room: Float64Array, meter: Meter) {
    this.#size = size;
    this.#demand = demand;
    this.#longest = room[0]!;
    this.#meter = meter;
  }

  /** Of all pieces, made when first asked for. */
  #table(): NearSums {
    if (this.#sums === undefined) {
      this.#sums = new NearSums(this.#size, this.#demand, this.#longest);
      this.#meter.spend(STEPS_A_TABLE);
    }
    return this.#sums;
  }

  /** Packs all pieces, so many trials more; null where none came out. */
  pack(task: Task, trials: number): Filled[] | 'never' | null {
    const key = task.limit.join();
    const packing = this.#packings.get(key) ?? new Packing(task, this.#table(), this.#meter);
    this.#packings.set(key, packing);
    return packing.try(trials);
  }

  /**
   * Covers all pieces from the list of every filling, where that is not too long.
   * @param effort from 2 on the list may be long, from 3 on take long
   */
  cover(task: Task, slack: number, effort: number): Filled[] | 'never' | 'unknown' {
    const fillings = this.#list(task, slack, effort);
    return fillings === null ? 'unknown' : cover(task, fillings, NODES * 4 ** effort, this.#meter);
  }

  /** Whether the list is known, and so short that it is soon gone through. */
  isShort(task: Task, slack: number): boolean {
    const kept = this.#lists.get(keyOf(task, slack));
    return kept !== undefined && kept !== null && kept.count <= SHORT;
  }

  #list(task: Task, slack: number, effort: number): Columns | null {
    const far = effort > 1;
    const key = keyOf(task, slack);
    const kept = this.#lists.get(key);
    if (kept !== undefined && (kept !== null || !far)) return kept;
    const most = far ? MOST_LISTED : FEW_LISTED;
    const steps = STEPS_A_FILLING * most * (effort > 2 ? LONG : 1);
    const found = allFillings(task, slack, FREE, most, steps, this.#meter, this.#table());
    // Long ones are not kept: they would take memory.
    const keeps = found === null ? !far : found.count <= FEW_LISTED;
    if (keeps && !this.#meter.over()) this.#lists.set(key, found);
    return found;
  }

  /** Covers what is left after some bars of a dive; null while there are too many fillings to list. */
  rest(task: Task, slack: number, nodes: number): Filled[] | 'never' | 'unknown' | null {
    const pieces = task.demand.reduce((a, b) => a + b, 0);
    if (pieces > this.#listable) return null;
    const fillings = allFillings(
      task,
      slack,
      FREE,
      LISTED_BELOW,
      STEPS_A_FILLING * LISTED_BELOW,
      this.#meter,
    );
    if (fillings === null) {
      this.#listable = pieces - 1;
      return null;
    }
    return cover(task, fillings, nodes, this.#meter);
  }
}

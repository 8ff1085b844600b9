import { type Cut, Level } from './choice-at-level.ts';
import { gcd } from './grid.ts';
import type { Meter } from './meter.ts';
import { MOST_WORDS, Sums } from './sums.ts';

/** How many bars of each type, and what no choice still left costs less than. */
export type BarChoice = Readonly<{ bars: Int32Array; cost: number; atLeast: number }>;

const NODES_A_LEVEL = 20_000;
/** A call goes on through this many levels' worth of nodes. */
const LEVELS_A_CALL = 20;

/**
 * The choices of bars from the cheapest up: how many of each type to take, so that every known cut holds. Costs are gone through level by
 * level; a table of the sums of costs that can be made leads past those that cannot. Rooms fall from the first type to the last.
 */
export class BarChoices {
  /** Some level had more choices than were gone through: a cheaper one may have been passed over. */
  cutShort = false;
  readonly #cost: Float64Array;
  readonly #limit: Int32Array;
  readonly #meter: Meter;
  readonly #cuts: Cut[] = [];
  /** For each choice left out: bars of the first types together, type by type. */
  readonly #done: Int32Array[] = [];
  /** Cost in levels, rounded down where costs lie too close for a table; how much a level is; which sums can be made. */
  readonly #level: Float64Array;
  readonly #step: number;
  readonly #exact: boolean;
  readonly #sums: Sums;
  /** Every choice below this level is done with, but for those passed over from `#shortFrom` on. */
  #from = 0;
  #shortFrom = Number.POSITIVE_INFINITY;
  #nodes = NODES_A_LEVEL;

  /**
   * @param cost of a bar of each type, whole
   * @param limit bars there are
   * @param most no choice of interest costs more
   */
  constructor(cost: Float64Array, limit: Int32Array, most: number, meter: Meter) {
    this.#cost = cost;
    this.#limit = limit;
    this.#meter = meter;
    let all = 0;
    for (let t = 0; t < cost.length; t++) all += cost[t]! * limit[t]!;
    const reach = Math.min(all, most);
    const grid = cost.reduce((a, c) => gcd(c, a), 0) || 1;
    const cells = Math.floor(MOST_WORDS / (cost.length + 1) - 1) * 32;
    this.#step = grid * Math.max(1, Math.ceil(reach / grid / cells));
    this.#exact = this.#step === grid;
    this.#level = cost.map(c => Math.floor(c / this.#step));
    this.#sums = Sums.of(this.#level, limit, Math.floor(reach / this.#step))!;
  }

  add(cut: Cut): void {
    this.#cuts.push(cut);
  }

  /** Leaves out a choice, and with it all that hold no more: for every length, no more bars at least that long. */
  leaveOut(bars: Int32Array): void {
    this.#done.push(together(bars));
  }

  /** Takes back what was left out: the pieces fit, and one that holds less may do as well. */
  takeBack(bars: Int32Array): void {
    const key = together(bars).join();
    this.#done.splice(
      this.#done.findIndex(d => d.join() === key),
      1,
    );
  }

  /** Takes it that no choice of interest costs less, and gives the least that one then can cost. */
  raise(bound: number): number {
    if (this.#exact) this.#from = Math.max(this.#from, Math.ceil(bound / this.#step));
    const lowest = this.#sums.least(0, Math.max(this.#from, this.#look().lowest()));
    this.#from = lowest < 0 ? Number.POSITIVE_INFINITY : lowest;
    return Math.max(bound, this.#from * this.#step);
  }

  #passOver(): void {
    this.cutShort = true;
    this.#shortFrom = Math.min(this.#shortFrom, this.#from);
  }

  /** Goes back to the first level where something was passed over, to look longer. */
  lookLonger(): void {
    this.#from = Math.min(this.#from, this.#shortFrom);
    this.#shortFrom = Number.POSITIVE_INFINITY;
    this.cutShort = false;
    this.#nodes *= 8;
  }

  #look(): Level {
    return new Level(this.#cuts, this.#done, this.#level, this.#cost, this.#limit, this.#sums, this.#meter);
  }

  /** The cheapest choice left that costs less than `under`, or null. */
  next(under: number): BarChoice | null {
    const look = this.#look();
    let spent = 0;
    while (this.#from * this.#step < under) {
      const bars = look.at(this.#from, under, this.#nodes);
      spent += look.nodes;
      const atLeast = this.cutShort ? 0 : this.#from * this.#step;
      if (bars !== null) return { bars, cost: costOf(bars, this.#cost), atLeast };
      if (look.gaveUp) this.#passOver();
      if (spent > LEVELS_A_CALL * this.#nodes || this.#meter.over()) {
        this.#passOver();
        return null;
      }
      const further = this.#sums.least(0, this.#from + 1);
      this.#from = further < 0 ? Number.POSITIVE_INFINITY : further;
    }
    return null;
  }
}

/** Bars of the first types together, type by type. */
const together = (bars: Int32Array): Int32Array => {
  let sum = 0;
  return bars.map(n => {
    sum += n;
    return sum;
  });
};

const costOf = (bars: Int32Array, cost: Float64Array): number =>
  bars.reduce((sum, n, t) => sum + n * cost[t]!, 0);

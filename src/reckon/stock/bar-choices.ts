import { gcd } from './grid.ts';
import type { Meter } from './meter.ts';
import { MOST_WORDS, Sums } from './sums.ts';

/** What any choice of bars must hold: Σ most(t) × bars of type t ≥ needed. */
export type Cut = Readonly<{ most: Float64Array; needed: number }>;

/** How many bars of each type, and what no choice still left costs less than. */
export type BarChoice = Readonly<{ bars: Int32Array; cost: number; atLeast: number }>;

const NODES_A_LEVEL = 20_000;
/** A call goes on through this many levels' worth of nodes. */
const LEVELS_A_CALL = 20;
/** Cuts are held to a little less than they need, so that rounding shuts no choice out. */
const SLIP = 1e-9;

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

  #look(): Look {
    return new Look(this.#cuts, this.#done, this.#level, this.#cost, this.#limit, this.#sums);
  }

  /** The cheapest choice left that costs less than `under`, or null. */
  next(under: number): BarChoice | null {
    const look = this.#look();
    let spent = 0;
    while (this.#from * this.#step < under) {
      const bars = look.at(this.#from, under, this.#nodes);
      spent += look.nodes;
      this.#meter.spend(look.nodes * this.#cost.length * 4);
      const atLeast = this.cutShort ? 0 : this.#from * this.#step;
      if (bars !== null) return { bars, cost: costOf(bars, this.#cost), atLeast };
      if (look.nodes > this.#nodes) this.#passOver();
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

/** One search through a level, type by type, the most of the longest bars first. */
class Look {
  nodes = 0;
  readonly #cuts: readonly Cut[];
  readonly #done: readonly Int32Array[];
  readonly #level: Float64Array;
  readonly #cost: Float64Array;
  readonly #limit: Int32Array;
  readonly #sums: Sums;
  /** For each cut the types by what they add per level, those that cost no level first. */
  readonly #order: Int32Array[];

  constructor(
    cuts: readonly Cut[],
    done: readonly Int32Array[],
    level: Float64Array,
    cost: Float64Array,
    limit: Int32Array,
    sums: Sums,
  ) {
    this.#cuts = cuts;
    this.#done = done;
    this.#level = level;
    this.#cost = cost;
    this.#limit = limit;
    this.#sums = sums;
    this.#order = cuts.map(({ most }) =>
      Int32Array.from(level, (_, t) => t).sort((p, q) => most[q]! * level[p]! - most[p]! * level[q]!),
    );
  }

  /** No choice at a lower level holds what the cuts need. */
  lowest(): number {
    let lowest = 0;
    this.#cuts.forEach(({ most, needed }, k) => {
      let need = needed * (1 - SLIP);
      let level = 0;
      for (const t of this.#order[k]!) {
        if (need <= 0) break;
        if (most[t]! <= 0) continue;
        const whole = this.#limit[t]! * most[t]!;
        level += (whole < need ? this.#limit[t]! : need / most[t]!) * this.#level[t]!;
        need = Math.max(0, need - whole);
      }
      lowest = need > 0 ? Number.MAX_SAFE_INTEGER : Math.max(lowest, Math.ceil(level * (1 - SLIP)));
    });
    return lowest;
  }

  /** Whether types t, t + 1, … can add what a cut needs, with so much to spend: bars may be cut in fractions. */
  #adds(k: number, t: number, rest: number, need: number): boolean {
    const { most } = this.#cuts[k]!;
    let left = rest;
    let still = need;
    for (const u of this.#order[k]!) {
      if (u < t) continue;
      const l = this.#level[u]!;
      const limit = this.#limit[u]!;
      if (l * limit <= left) {
        still -= limit * most[u]!;
        left -= l * limit;
      } else return still - (left / l) * most[u]! <= 0;
      if (still <= 0) return true;
    }
    return still <= 0;
  }

  at(level: number, under: number, most: number): Int32Array | null {
    this.nodes = 0;
    const types = this.#cost.length;
    const bars = new Int32Array(types);
    const need = Float64Array.from(this.#cuts, c => c.needed * (1 - SLIP));
    const visit = (t: number, rest: number, count: number, spent: number): boolean => {
      if (++this.nodes > most) return false;
      if (!this.#sums.has(t, rest)) return false;
      for (let k = 0; k < need.length; k++)
        if (need[k]! > 0 && !this.#adds(k, t, rest, need[k]!)) return false;
      if (spent >= under || this.#allLeftOut(bars, t, rest, count)) return false;
      if (t === types) return true;
      const l = this.#level[t]!;
      const limit = this.#limit[t]!;
      const top = l === 0 ? limit : Math.min(limit, Math.floor(rest / l));
      // What costs nothing is taken whole.
      const least = this.#cost[t] === 0 ? top : 0;
      for (let n = top; n >= least; n--) {
        bars[t] = n;
        for (let k = 0; k < need.length; k++) need[k]! -= n * this.#cuts[k]!.most[t]!;
        const found = visit(t + 1, rest - n * l, count + n, spent + n * this.#cost[t]!);
        for (let k = 0; k < need.length; k++) need[k]! += n * this.#cuts[k]!.most[t]!;
        if (found) return true;
        if (this.nodes > most) break;
      }
      bars[t] = 0;
      return false;
    };
    return visit(0, level, 0, 0) ? bars : null;
  }

  /** Whether every choice that begins so holds no more than one left out. */
  #allLeftOut(bars: Int32Array, t: number, rest: number, count: number): boolean {
    const types = this.#cost.length;
    for (const done of this.#done) {
      let sum = 0;
      let less = true;
      for (let u = 0; u < t && less; u++) {
        sum += bars[u]!;
        less = sum <= done[u]!;
      }
      if (!less) continue;
      // As many more as there could be: by number, and by what is left to spend on the cheapest.
      let more = count;
      let cheapest = Number.POSITIVE_INFINITY;
      for (let u = t; u < types && less; u++) {
        more += this.#limit[u]!;
        cheapest = Math.min(cheapest, this.#level[u]!);
        const payable = cheapest > 0 ? count + Math.floor(rest / cheapest) : more;
        less = Math.min(more, payable) <= done[u]!;
      }
      if (less) return true;
    }
    return false;
  }
}

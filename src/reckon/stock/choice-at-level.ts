import type { Meter } from './meter.ts';
import type { Sums } from './sums.ts';

/** What any choice of bars must hold: Σ most(t) × bars of type t ≥ needed. */
export type Cut = Readonly<{ most: Float64Array; needed: number }>;

/** Cuts are held to a little less than they need, so that rounding shuts no choice out. */
const SLIP = 1e-9;
const NODES_BETWEEN_LOOKS = 256;

/** One search through a level, type by type, the most of the longest bars first. */
export class Level {
  nodes = 0;
  /** The last search ended before it had seen all there is. */
  gaveUp = false;
  readonly #cuts: readonly Cut[];
  readonly #done: readonly Int32Array[];
  readonly #level: Float64Array;
  readonly #cost: Float64Array;
  readonly #limit: Int32Array;
  readonly #sums: Sums;
  readonly #meter: Meter;
  /** For each cut the types by what they add per level, those that cost no level first. */
  readonly #order: Int32Array[];

  constructor(
    cuts: readonly Cut[],
    done: readonly Int32Array[],
    level: Float64Array,
    cost: Float64Array,
    limit: Int32Array,
    sums: Sums,
    meter: Meter,
  ) {
    this.#cuts = cuts;
    this.#done = done;
    this.#level = level;
    this.#cost = cost;
    this.#limit = limit;
    this.#sums = sums;
    this.#meter = meter;
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

  /** Counts a node; true once there were too many, or the meter has run out. */
  #isOver(most: number): boolean {
    if (this.gaveUp) return true;
    if (++this.nodes % NODES_BETWEEN_LOOKS === 0) {
      this.#meter.spend(NODES_BETWEEN_LOOKS * this.#cost.length * 4);
      this.gaveUp = this.#meter.over();
    }
    if (this.nodes > most) this.gaveUp = true;
    return this.gaveUp;
  }

  /** A choice that costs just this level and holds what the cuts need, of those not left out. */
  at(level: number, under: number, most: number): Int32Array | null {
    this.nodes = 0;
    this.gaveUp = false;
    const types = this.#cost.length;
    const bars = new Int32Array(types);
    const need = Float64Array.from(this.#cuts, c => c.needed * (1 - SLIP));
    const visit = (t: number, rest: number, count: number, spent: number): boolean => {
      if (this.#isOver(most)) return false;
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
        if (this.gaveUp) break;
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

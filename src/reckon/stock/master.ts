import type { Columns } from './columns.ts';
import type { Meter } from './meter.ts';
import { EPS, invert, leaving, pivot, price, SHORT_LIST, shortList } from './pivoting.ts';

const REFACTOR_AFTER = 100;
const MOST_PIVOTS = 4000;

/**
 * The linear programme over the cuttings known so far: least cost of bars so that every piece is covered and no type of bar is
 * used more often than there are. Primal simplex on a dense inverse; a piece left out has a cost too, so that there is always
 * a basis to start from.
 *
 * Rows: one a kind (Σ pieces ≥ demand), then one a type of bar (Σ bars ≤ limit).
 * Variables: 0 … m−1 the row's own (pieces left out, bars not used), m … m+kinds−1 pieces too many, then the columns.
 */
export class Master {
  /** Price of a piece of each kind, then (≤ 0) what one bar more of each type would save. */
  readonly dual: Float64Array;
  value = 0;
  /** Columns taken up, by their numbers. */
  readonly ids: number[] = [];

  readonly #columns: Columns;
  readonly #kinds: number;
  readonly #m: number;
  readonly #inverse: Float64Array;
  readonly #x: Float64Array;
  readonly #basis: Int32Array;
  readonly #rhs: Float64Array;
  readonly #cost: Float64Array;
  readonly #alpha: Float64Array;
  readonly #nonzero: Int32Array;
  readonly #leftOut: number;
  #basic: Uint8Array;
  #since = 0;
  readonly #short = new Int32Array(SHORT_LIST);
  readonly #reduced = new Float64Array(SHORT_LIST);

  constructor(columns: Columns, demand: Int32Array, limit: Int32Array, cost: Float64Array, leftOut: number) {
    const kinds = demand.length;
    const types = cost.length;
    const m = kinds + types;
    this.#columns = columns;
    this.#kinds = kinds;
    this.#m = m;
    this.#leftOut = leftOut;
    this.#cost = cost;
    this.#inverse = new Float64Array(m * m);
    this.#x = new Float64Array(m);
    this.#basis = new Int32Array(m);
    this.#rhs = new Float64Array(m);
    this.#alpha = new Float64Array(m);
    this.#nonzero = new Int32Array(m);
    this.#basic = new Uint8Array(m + kinds + 512);
    this.dual = new Float64Array(m);
    for (let i = 0; i < m; i++) {
      const asked = i < kinds ? demand[i]! : limit[i - kinds]!;
      // A little less asked, a little more to be had, differently in every row, so that no pivot stands still and what just fits
      // still does; bounds are taken on the true figures.
      const little = 1e-7 * (1 + ((i * 7919) % 101) / 101);
      this.#rhs[i] = i >= kinds ? asked + little : asked === 0 ? 0 : asked - little;
      this.#inverse[i * m + i] = 1;
      this.#x[i] = this.#rhs[i]!;
      this.#basis[i] = i;
      this.#basic[i] = 1;
      this.dual[i] = i < kinds ? leftOut : 0;
    }
  }

  add(column: number): void {
    this.ids.push(column);
    const need = this.#m + this.#kinds + this.ids.length;
    if (need > this.#basic.length) {
      const wider = new Uint8Array(need * 2);
      wider.set(this.#basic);
      this.#basic = wider;
    }
  }

  #costOf(v: number): number {
    if (v < this.#m) return v < this.#kinds ? this.#leftOut : 0;
    if (v < this.#m + this.#kinds) return 0;
    return this.#cost[this.#columns.type[this.ids[v - this.#m - this.#kinds]!]!]!;
  }

  /** α = inverse · column of variable v. */
  #direction(v: number): void {
    const m = this.#m;
    const inv = this.#inverse;
    const alpha = this.#alpha;
    if (v < m) {
      for (let i = 0; i < m; i++) alpha[i] = inv[i * m + v]!;
    } else if (v < m + this.#kinds) {
      const k = v - m;
      for (let i = 0; i < m; i++) alpha[i] = -inv[i * m + k]!;
    } else {
      const { start, kind, times, type } = this.#columns;
      const c = this.ids[v - m - this.#kinds]!;
      const bar = this.#kinds + type[c]!;
      const from = start[c]!;
      const to = start[c + 1]!;
      for (let i = 0; i < m; i++) {
        const row = i * m;
        let s = inv[row + bar]!;
        for (let k = from; k < to; k++) s += inv[row + kind[k]!]! * times[k]!;
        alpha[i] = s;
      }
    }
  }

  /** Builds the inverse afresh from the basis, so that rounding does not pile up. */
  #refactor(): boolean {
    const m = this.#m;
    const { start, kind, times, type } = this.#columns;
    const b = new Float64Array(m * m);
    for (let j = 0; j < m; j++) {
      const v = this.#basis[j]!;
      if (v < m) b[v * m + j] = 1;
      else if (v < m + this.#kinds) b[(v - m) * m + j] = -1;
      else {
        const c = this.ids[v - m - this.#kinds]!;
        for (let k = start[c]!; k < start[c + 1]!; k++) b[kind[k]! * m + j] = times[k]!;
        b[(this.#kinds + type[c]!) * m + j] = 1;
      }
    }
    const inv = this.#inverse;
    if (!invert(b, inv, m)) return false;
    for (let i = 0; i < m; i++) {
      let s = 0;
      for (let k = 0; k < m; k++) s += inv[i * m + k]! * this.#rhs[k]!;
      this.#x[i] = Math.max(0, s);
    }
    for (let k = 0; k < m; k++) {
      let s = 0;
      for (let i = 0; i < m; i++) s += this.#costOf(this.#basis[i]!) * inv[i * m + k]!;
      this.dual[k] = s;
    }
    this.#since = 0;
    return true;
  }

  /**
   * Pivots to the least cost over the columns known.
   * @param first as many of the columns, from the first on, are looked at before the rest
   * @returns false when it came to no end: prices and value are then those of an unfinished answer
   */
  solve(meter: Meter, first = 0): boolean {
    const m = this.#m;
    const kinds = this.#kinds;
    const inv = this.#inverse;
    const x = this.#x;
    const y = this.dual;
    const alpha = this.#alpha;
    const basic = this.#basic;
    const short = this.#short;
    const reduced = this.#reduced;
    const ids = Int32Array.from(this.ids);
    const all = m + kinds + ids.length;
    let reach = first > 0 ? m + kinds + first : all;
    let listed = 0;
    let work = 0;
    let finished = false;
    for (let round = 0; round < MOST_PIVOTS; round++) {
      let enter = -1;
      let least = -EPS;
      if (listed > 0) {
        price(this.#columns, this.#cost, y, kinds, ids, short, listed, reduced);
        for (let s = 0; s < listed; s++) {
          if (basic[short[s]!] === 1 || reduced[s]! >= least) continue;
          least = reduced[s]!;
          enter = short[s]!;
        }
      }
      while (enter < 0) {
        // a full look; the best few are listed
        listed = shortList(this.#columns, this.#cost, y, kinds, ids, basic, reach, short, reduced);
        work += reach * 4;
        for (let s = 0; s < listed; s++) {
          if (reduced[s]! >= least) continue;
          least = reduced[s]!;
          enter = short[s]!;
        }
        if (enter < 0 && reach === all) break;
        if (enter < 0) reach = all;
      }
      finished = enter < 0;
      if (finished) break;
      this.#direction(enter);
      const leave = leaving(x, alpha, m);
      if (leave < 0) break;
      basic[this.#basis[leave]!] = 0;
      basic[enter] = 1;
      this.#basis[leave] = enter;
      work += m * pivot(inv, x, y, alpha, this.#nonzero, m, leave, least);
      if (++this.#since >= REFACTOR_AFTER) {
        if (!this.#refactor()) return false;
        work += m * m * m;
      }
      if (work > 20_000) {
        meter.spend(work);
        work = 0;
        if (meter.over()) break;
      }
    }
    meter.spend(work);
    let value = 0;
    for (let i = 0; i < m; i++) value += this.#costOf(this.#basis[i]!) * x[i]!;
    this.value = value;
    return finished;
  }

  /** The columns used, with how often (a fraction). */
  used(): { column: number; times: number }[] {
    const list: { column: number; times: number }[] = [];
    const first = this.#m + this.#kinds;
    for (let i = 0; i < this.#m; i++)
      if (this.#basis[i]! >= first && this.#x[i]! > 1e-6)
        list.push({ column: this.ids[this.#basis[i]! - first]!, times: this.#x[i]! });
    return list;
  }
}

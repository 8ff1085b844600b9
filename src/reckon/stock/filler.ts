import { WorthTable } from './worth-table.ts';

/** Worth that counts as more: below this, rounding speaks. */
const MORE = 1e-11;

/**
 * The most valuable filling of a bar: a bounded knapsack, solved by a depth-first search over the kinds in order of worth per
 * size, cut off where filling the rest of the bar at the next kind's rate could not beat the best so far.
 */
export class Filler {
  /** The best filling found by the last call, by kind; nothing where none beat what was to be beaten. */
  readonly taken: Int32Array;
  /** Its worth. */
  value = 0;
  /** No filling is worth more than this; equal to `value`, or to what was to be beaten, unless the search was cut short. */
  upper = 0;
  /** Work done since the start. */
  steps = 0;

  readonly #size: Float64Array;
  #worth: Float64Array;
  #count: Int32Array;
  /** undefined: not made yet for these prices; null: the grid is too fine. */
  #table: WorthTable | null | undefined;
  // In order of worth per size: kind, size, worth, how many, worth per size, least size from here on.
  readonly #order: Int32Array;
  readonly #s: Float64Array;
  readonly #v: Float64Array;
  readonly #most: Int32Array;
  readonly #rate: Float64Array;
  /** Size and worth of all there are of a kind. */
  readonly #allSize: Float64Array;
  readonly #allWorth: Float64Array;
  readonly #least: Float64Array;
  readonly #a: Int32Array;
  readonly #best: Int32Array;
  #n = 0;

  constructor(size: Float64Array) {
    const kinds = size.length;
    this.#size = size;
    this.#worth = new Float64Array(kinds);
    this.#count = new Int32Array(kinds);
    this.taken = new Int32Array(kinds);
    this.#order = new Int32Array(kinds);
    this.#s = new Float64Array(kinds);
    this.#v = new Float64Array(kinds);
    this.#most = new Int32Array(kinds);
    this.#rate = new Float64Array(kinds + 1);
    this.#allSize = new Float64Array(kinds);
    this.#allWorth = new Float64Array(kinds);
    this.#least = new Float64Array(kinds + 1);
    this.#a = new Int32Array(kinds);
    this.#best = new Int32Array(kinds);
  }

  /** Takes the worth of one piece of each kind, and how many there are. */
  price(worth: Float64Array, count: Int32Array): void {
    const size = this.#size;
    this.#worth = worth;
    this.#count = count;
    this.#table = undefined;
    const list: number[] = [];
    for (let i = 0; i < size.length; i++) if (count[i]! > 0 && worth[i]! > 1e-12) list.push(i);
    list.sort((p, q) => worth[q]! / size[q]! - worth[p]! / size[p]! || size[q]! - size[p]!);
    const n = list.length;
    this.#n = n;
    for (let j = 0; j < n; j++) {
      const i = list[j]!;
      this.#order[j] = i;
      this.#s[j] = size[i]!;
      this.#v[j] = worth[i]!;
      this.#most[j] = count[i]!;
      this.#rate[j] = worth[i]! / size[i]!;
      this.#allSize[j] = size[i]! * count[i]!;
      this.#allWorth[j] = worth[i]! * count[i]!;
    }
    this.#rate[n] = 0;
    this.#least[n] = Number.POSITIVE_INFINITY;
    for (let j = n - 1; j >= 0; j--) this.#least[j] = Math.min(this.#least[j + 1]!, this.#s[j]!);
  }

  /**
   * Whether kinds from j on could be worth more than `wanted` in a room, were the last piece cut to fit: each kind as often as there are
   * pieces of it, the best worth per size first.
   */
  #couldBe(j: number, room: number, wanted: number): boolean {
    const rate = this.#rate;
    const size = this.#allSize;
    const worth = this.#allWorth;
    let rem = room;
    let still = wanted;
    for (let k = j; k < this.#n; k++) {
      if (rem * rate[k]! <= still) return false;
      if (size[k]! >= rem) return true;
      rem -= size[k]!;
      still -= worth[k]!;
      if (still < 0) return true;
    }
    return still < 0;
  }

  /** The most that kinds from j on could be worth in a room, counted so. */
  #atMost(j: number, room: number): number {
    let rem = room;
    let sum = 0;
    for (let k = j; k < this.#n; k++) {
      if (this.#allSize[k]! >= rem) return sum + rem * this.#rate[k]!;
      rem -= this.#allSize[k]!;
      sum += this.#allWorth[k]!;
    }
    return sum;
  }

  /**
   * Fills a bar by search.
   * @param room what it holds, in the unit of the sizes
   * @param beat only a filling worth more than this is looked for
   * @param most steps after which the search is cut short; `upper` stays true
   */
  fill(room: number, beat: number, most: number): void {
    const n = this.#n;
    const s = this.#s;
    const v = this.#v;
    const many = this.#most;
    const least = this.#least;
    const a = this.#a;
    const best = this.#best;
    let bestValue = beat;
    let found = false;
    let rem = room;
    let val = 0;
    let j = 0;
    let steps = 0;
    let open = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < n; i++) a[i] = 0;
    for (;;) {
      // Forward: as many as fit of each kind in turn, while that could still win.
      while (j < n && rem >= least[j]! && this.#couldBe(j, rem, bestValue + MORE - val)) {
        const take = Math.min(many[j]!, Math.floor(rem / s[j]!));
        a[j] = take;
        rem -= take * s[j]!;
        val += take * v[j]!;
        j++;
        steps++;
      }
      if (val > bestValue + MORE) {
        bestValue = val;
        found = true;
        for (let i = 0; i < n; i++) best[i] = i < j ? a[i]! : 0;
      }
      if (steps > most) {
        // What was not looked at: from every kind taken, one less of it and the rest of the bar at the next rate.
        let r = rem;
        let w = val;
        for (let i = j - 1; i >= 0; i--) {
          if (a[i] === 0) continue;
          open = Math.max(open, w - v[i]! + this.#atMost(i + 1, r + s[i]!));
          r += a[i]! * s[i]!;
          w -= a[i]! * v[i]!;
        }
        break;
      }
      // Back: one less of the last kind taken where that could win, else none of it.
      let back = j - 1;
      for (; back >= 0; back--) {
        if (a[back] === 0) continue;
        a[back]!--;
        rem += s[back]!;
        val -= v[back]!;
        if (this.#couldBe(back + 1, rem, bestValue + MORE - val)) break;
        rem += a[back]! * s[back]!;
        val -= a[back]! * v[back]!;
        a[back] = 0;
      }
      if (back < 0) break;
      j = back + 1;
      for (let i = j; i < n; i++) a[i] = 0;
    }
    this.steps += steps;
    this.taken.fill(0);
    if (found) for (let i = 0; i < n; i++) this.taken[this.#order[i]!] = best[i]!;
    this.value = found ? bestValue : 0;
    this.upper = Math.max(bestValue, open) + MORE;
  }

  /**
   * Fills a bar by a table, which is sure; by a long search where the grid is too fine for one.
   * @param longest the greatest room that will be asked for at these prices
   */
  fillSurely(room: number, beat: number, longest: number): void {
    if (this.#table === undefined) {
      this.#table = WorthTable.of(this.#size, this.#worth, this.#count, longest);
      this.steps += (this.#table?.steps ?? 0) / 4;
    }
    if (this.#table === null) {
      this.fill(room, beat, LONG_SEARCH);
      return;
    }
    this.#table.take(room, this.taken);
    this.value = this.#table.worth(room);
    this.upper = this.value + MORE;
  }
}

const LONG_SEARCH = 40_000;

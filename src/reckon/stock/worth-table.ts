/** Rooms beyond this, in steps of the grid, are not tabled. */
const MOST_CELLS = 40_000;

/**
 * The most worth in any room up to the longest: the bounded knapsack by a table, each kind's copies in parts of 1, 2, 4 … Slower than a
 * search on an easy bar, but never at a loss, and one table serves every type of bar.
 */
export class WorthTable {
  readonly #best: Float64Array;
  readonly #marks: Uint8Array;
  readonly #parts: readonly { kind: number; times: number }[];
  readonly #size: Float64Array;
  readonly #cells: number;

  private constructor(
    size: Float64Array,
    parts: readonly { kind: number; times: number }[],
    best: Float64Array,
    marks: Uint8Array,
  ) {
    this.#size = size;
    this.#parts = parts;
    this.#best = best;
    this.#marks = marks;
    this.#cells = best.length;
  }

  /**
   * @param size whole steps of the grid
   * @param longest the greatest room that will be asked for
   * @returns null when the grid is too fine
   */
  static of(size: Float64Array, worth: Float64Array, count: Int32Array, longest: number): WorthTable | null {
    if (longest > MOST_CELLS) return null;
    const parts: { kind: number; times: number }[] = [];
    for (let i = 0; i < size.length; i++) {
      if (worth[i]! <= 0) continue;
      let many = Math.min(count[i]!, Math.floor(longest / size[i]!));
      for (let p = 1; many > 0; p *= 2) {
        const times = Math.min(p, many);
        parts.push({ kind: i, times });
        many -= times;
      }
    }
    const best = new Float64Array(longest + 1);
    const marks = new Uint8Array(parts.length * best.length);
    for (const [p, { kind, times }] of parts.entries())
      layIn(best, marks, p * best.length, size[kind]! * times, worth[kind]! * times);
    return new WorthTable(size, parts, best, marks);
  }

  /** The most worth in a room. */
  worth(room: number): number {
    return this.#best[room]!;
  }

  /** Writes what is taken for it, by kind. */
  take(room: number, taken: Int32Array): void {
    taken.fill(0);
    let c = room;
    for (let p = this.#parts.length - 1; p >= 0; p--) {
      if (this.#marks[p * this.#cells + c] === 0) continue;
      const { kind, times } = this.#parts[p]!;
      taken[kind]! += times;
      c -= this.#size[kind]! * times;
    }
  }

  /** Work that went into it. */
  get steps(): number {
    return this.#marks.length;
  }
}

const layIn = (best: Float64Array, marks: Uint8Array, row: number, size: number, worth: number): void => {
  for (let c = best.length - 1; c >= size; c--) {
    const w = best[c - size]! + worth;
    if (w > best[c]! + 1e-12) {
      best[c] = w;
      marks[row + c] = 1;
    }
  }
};

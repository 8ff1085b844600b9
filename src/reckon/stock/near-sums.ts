import { FINE_WORDS, Sums } from './sums.ts';

/**
 * Which sums pieces can make, to within what rounding to coarser cells leaves open: where the grid is too fine for a table of its own, it says
 * that a sum may be there, never wrongly that it is not.
 */
export class NearSums {
  readonly #sums: Sums;
  /** Steps of the grid in a cell; 1 when the table is exact. */
  readonly #cell: number;
  /** A sum of sizes rounded down lies too low by less than a cell a piece: as many at most as go in of the shortest. */
  readonly #shortest: number;

  /**
   * @param size whole numbers
   * @param top no sum above this is asked for
   * @param mostWords what the table may take of memory
   */
  constructor(size: Float64Array, count: Int32Array, top: number, mostWords = FINE_WORDS) {
    const most = Math.floor(mostWords / (size.length + 1) - 1) * 32;
    const cell = Math.max(1, Math.ceil(top / most));
    this.#cell = cell;
    this.#shortest = size.reduce((a, s, i) => (count[i]! > 0 ? Math.min(a, s) : a), Number.POSITIVE_INFINITY);
    const sizes = cell === 1 ? size : size.map(s => Math.floor(s / cell));
    // It fits: cells were made for that.
    this.#sums = Sums.of(sizes, count, Math.floor(top / cell), mostWords)!;
  }

  /** Whether kinds j, j+1, … may make a sum from `least` to `most`. */
  any(j: number, least: number, most: number): boolean {
    if (most < 0) return false;
    if (this.#cell === 1) return this.#sums.any(j, least, most);
    const slip = Math.max(0, Math.floor(most / this.#shortest) - 1);
    return this.#sums.any(j, Math.floor(least / this.#cell) - slip, Math.floor(most / this.#cell));
  }

  /** All kinds together make no greater sum up to `most` than this. */
  atMost(most: number): number {
    return this.#cell === 1 ? this.#sums.greatest(0, most) : most;
  }
}

/** More words than this and the table is not worth its time where it is made again and again. */
export const MOST_WORDS = 400_000;
/** The same where one table serves a long search: 12 m in steps of 0.01 mm for fifty kinds, with room to spare. */
export const FINE_WORDS = 2_500_000;

/**
 * Which sums pieces can make: row j holds the sums that kinds j, j+1, … can, one bit a cell of the grid.
 */
export class Sums {
  readonly #bits: Uint32Array;
  readonly #words: number;
  readonly #top: number;

  private constructor(bits: Uint32Array, words: number, top: number) {
    this.#bits = bits;
    this.#words = words;
    this.#top = top;
  }

  /**
   * The table for pieces up to a sum, or null when the grid is too fine for one.
   * @param size whole numbers
   * @param mostWords what it may take of memory
   */
  static of(
    size: ArrayLike<number>,
    count: ArrayLike<number>,
    top: number,
    mostWords = MOST_WORDS,
  ): Sums | null {
    const kinds = size.length;
    const words = Math.floor(top / 32) + 1;
    if (words * (kinds + 1) > mostWords) return null;
    const bits = new Uint32Array((kinds + 1) * words);
    bits[kinds * words] = 1;
    for (let j = kinds - 1; j >= 0; j--) {
      const row = j * words;
      bits.copyWithin(row, row + words, row + 2 * words);
      // counts in parts 1, 2, 4 …: every number of copies is a sum of some of them
      let many = Math.min(count[j]!, Math.floor(top / size[j]!));
      for (let p = 1; many > 0; p *= 2) {
        const k = Math.min(p, many);
        shiftOr(bits, row, words, k * size[j]!);
        many -= k;
      }
    }
    return new Sums(bits, words, top);
  }

  /** Whether kinds j, j+1, … can make a sum. */
  has(j: number, sum: number): boolean {
    if (sum > this.#top) return false;
    return ((this.#bits[j * this.#words + (sum >>> 5)]! >>> (sum & 31)) & 1) === 1;
  }

  /** The greatest sum of kinds j, j+1, … that is no more than `under`, or −1. */
  greatest(j: number, under: number): number {
    let s = Math.min(under, this.#top);
    const row = j * this.#words;
    while (s >= 0) {
      const word = this.#bits[row + (s >>> 5)]! & (0xffffffff >>> (31 - (s & 31)));
      if (word !== 0) return (s & ~31) + 31 - Math.clz32(word);
      s = (s & ~31) - 1;
    }
    return -1;
  }

  /** The least sum of kinds j, j+1, … that is no less than `from`, or −1. */
  least(j: number, from: number): number {
    const row = j * this.#words;
    let s = Math.max(0, from);
    while (s <= this.#top) {
      const word = this.#bits[row + (s >>> 5)]! & (0xffffffff << (s & 31));
      if (word !== 0) {
        const found = (s & ~31) + 31 - Math.clz32(word & -word);
        return found <= this.#top ? found : -1;
      }
      s = (s & ~31) + 32;
    }
    return -1;
  }

  /** Whether kinds j, j+1, … can make a sum from `least` to `most`. */
  any(j: number, least: number, most: number): boolean {
    let s = Math.min(most, this.#top);
    const from = Math.max(0, least);
    const row = j * this.#words;
    while (s >= from) {
      const word = this.#bits[row + (s >>> 5)]! & (0xffffffff >>> (31 - (s & 31)));
      // The highest of the word: it counts only where it is not below what was asked.
      if (word !== 0) return (s & ~31) + 31 - Math.clz32(word) >= from;
      s = (s & ~31) - 1;
    }
    return false;
  }
}

/** row |= row << by */
const shiftOr = (bits: Uint32Array, row: number, words: number, by: number): void => {
  const w = Math.floor(by / 32);
  const b = by & 31;
  if (b === 0) for (let i = words - 1; i >= w; i--) bits[row + i]! |= bits[row + i - w]!;
  else {
    for (let i = words - 1; i > w; i--)
      bits[row + i]! |= (bits[row + i - w]! << b) | (bits[row + i - w - 1]! >>> (32 - b));
    if (w < words) bits[row + w]! |= bits[row]! << b;
  }
};

/** A factored symmetric band, ready to answer any right-hand side. */
export type BandFactor = Readonly<{ solve: (right: Float64Array) => Float64Array }>;

/** A pivot smaller than this share of its diagonal has lost too many digits to build on: seven are left at the edge. */
const LEAST_PIVOT = 1e-9;

/** A symmetric matrix of which only a band beside the diagonal is kept; row by row, the diagonal last. */
export class Band {
  readonly size: number;
  readonly half: number;
  readonly #values: Float64Array;

  /** @param half how far from the diagonal the farthest entry stands */
  constructor(size: number, half: number) {
    this.size = size;
    this.half = half;
    this.#values = new Float64Array(size * (half + 1));
  }

  /** Adds to row and column, in either order: both halves are one. */
  add(row: number, column: number, value: number): void {
    const [low, high] = row < column ? [row, column] : [column, row];
    this.#values[high * (this.half + 1) + low - high + this.half]! += value;
  }

  /** Cholesky within the band; null when a pivot is lost. The band itself is used up. */
  factor(): BandFactor | null {
    const { size, half } = this;
    const width = half + 1;
    const values = this.#values;
    for (let i = 0; i < size; i++) {
      const row = i * width - i + half;
      const first = Math.max(0, i - half);
      const whole = values[row + i]!;
      for (let j = first; j <= i; j++) {
        const other = j * width - j + half;
        let sum = values[row + j]!;
        for (let k = Math.max(first, j - half); k < j; k++) sum -= values[row + k]! * values[other + k]!;
        if (j < i) values[row + j] = sum / values[other + j]!;
        else if (sum > whole * LEAST_PIVOT) values[row + i] = Math.sqrt(sum);
        else return null;
      }
    }
    return { solve: right => this.#solve(right) };
  }

  #solve(right: Float64Array): Float64Array {
    const { size, half } = this;
    const width = half + 1;
    const values = this.#values;
    const answer = Float64Array.from(right);
    // A load on one node leaves everything before it at nothing.
    let loaded = 0;
    while (loaded < size && answer[loaded] === 0) loaded++;
    for (let i = loaded; i < size; i++) {
      const row = i * width - i + half;
      let sum = answer[i]!;
      for (let k = Math.max(loaded, i - half); k < i; k++) sum -= values[row + k]! * answer[k]!;
      answer[i] = sum / values[row + i]!;
    }
    for (let i = size - 1; i >= 0; i--) {
      const row = i * width - i + half;
      const value = answer[i]! / values[row + i]!;
      answer[i] = value;
      for (let k = Math.max(0, i - half); k < i; k++) answer[k]! -= values[row + k]! * value;
    }
    return answer;
  }
}

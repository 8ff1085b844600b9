/** One way to cut one bar, spelled out. */

/** Ways to cut a bar, kept end to end in flat rows so that the pricing loop stays in one place. */
export class Columns {
  /** Place of a column's first kind; its last is before the next column's first. */
  // Wide from the start: rows that are replaced while the simplex runs cost its compiled code.
  start = new Int32Array(4097);
  kind = new Int32Array(32_768);
  times = new Int32Array(32_768);
  type = new Int32Array(4096);
  size = new Float64Array(4096);
  count = 0;

  /** Adds what is taken from a bar of a type; gives the column's number. */
  add(taken: Int32Array, type: number, size: number): number {
    const c = this.count;
    let at = this.start[c]!;
    if (c === this.type.length) {
      const starts = new Int32Array(this.type.length * 2 + 1);
      starts.set(this.start);
      this.start = starts;
      this.type = grown(this.type);
      const wider = new Float64Array(this.size.length * 2);
      wider.set(this.size);
      this.size = wider;
    }
    for (let i = 0; i < taken.length; i++) {
      if (taken[i]! === 0) continue;
      if (at === this.kind.length) {
        this.kind = grown(this.kind);
        this.times = grown(this.times);
      }
      this.kind[at] = i;
      this.times[at++] = taken[i]!;
    }
    this.type[c] = type;
    this.size[c] = size;
    this.count = c + 1;
    this.start[c + 1] = at;
    return c;
  }

  /** Whether a column takes no more than what is left. */
  within(c: number, left: Int32Array): boolean {
    for (let k = this.start[c]!; k < this.start[c + 1]!; k++)
      if (this.times[k]! > left[this.kind[k]!]!) return false;
    return true;
  }

  /** What a column takes, by kind. */
  taken(c: number, kinds: number): Int32Array {
    const t = new Int32Array(kinds);
    for (let k = this.start[c]!; k < this.start[c + 1]!; k++) t[this.kind[k]!] = this.times[k]!;
    return t;
  }
}

const grown = (a: Int32Array): Int32Array<ArrayBuffer> => {
  const b = new Int32Array(a.length * 2);
  b.set(a);
  return b;
};

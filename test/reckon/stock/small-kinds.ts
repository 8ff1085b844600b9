import fc from 'fast-check';

/** Kinds with falling sizes, and how many of each. */
export const kinds = fc
  .uniqueArray(fc.record({ size: fc.integer({ min: 2, max: 15 }), count: fc.integer({ min: 1, max: 3 }) }), {
    minLength: 1,
    maxLength: 5,
    selector: k => k.size,
  })
  .map(list => list.sort((a, b) => b.size - a.size))
  .map(list => ({
    size: Float64Array.from(list, k => k.size),
    demand: Int32Array.from(list, k => k.count),
  }));

/** Every way to take pieces that fit in a room. */
export const takings = (size: Float64Array, demand: Int32Array, room: number): Int32Array[] => {
  const list: Int32Array[] = [];
  const taken = new Int32Array(size.length);
  const visit = (i: number, rest: number): void => {
    if (i === size.length) {
      list.push(taken.slice());
      return;
    }
    for (let k = 0; k <= demand[i]! && k * size[i]! <= rest; k++) {
      taken[i] = k;
      visit(i + 1, rest - k * size[i]!);
    }
    taken[i] = 0;
  };
  visit(0, room);
  return list;
};

export const dot = (a: ArrayLike<number>, b: ArrayLike<number>): number =>
  Array.from(a).reduce((sum, v, i) => sum + v * b[i]!, 0);

import type { Columns } from './columns.ts';

// The inner loops of the simplex. They stand alone, so that each is compiled early and for itself.

export const EPS = 1e-9;
/** Columns that priced well in the last full look, tried again before the next one. */
export const SHORT_LIST = 24;

/** The row where the basis gives way to a direction, or −1. */
export const leaving = (x: Float64Array, alpha: Float64Array, m: number): number => {
  let leave = -1;
  let step = Number.POSITIVE_INFINITY;
  let firm = 0;
  for (let i = 0; i < m; i++) {
    const a = alpha[i]!;
    if (a <= 1e-9) continue;
    const t = x[i]! / a;
    if (t < step - 1e-12 || (t < step + 1e-12 && a > firm)) {
      step = t;
      leave = i;
      firm = a;
    }
  }
  return leave;
};

/** Takes the direction into the basis at a row: inverse, values and prices. Gives how many places of the row are not zero. */
export const pivot = (
  inv: Float64Array,
  x: Float64Array,
  y: Float64Array,
  alpha: Float64Array,
  nonzero: Int32Array,
  m: number,
  leave: number,
  reduced: number,
): number => {
  const p = 1 / alpha[leave]!;
  const step = x[leave]! * p;
  const lr = leave * m;
  let n = 0;
  for (let k = 0; k < m; k++) {
    const v = inv[lr + k]!;
    if (v === 0) continue;
    inv[lr + k] = v * p;
    y[k] = y[k]! + reduced * v * p;
    nonzero[n++] = k;
  }
  for (let i = 0; i < m; i++) {
    const f = alpha[i]!;
    if (i === leave || f === 0) continue;
    const row = i * m;
    for (let q = 0; q < n; q++) {
      const k = nonzero[q]!;
      inv[row + k] = inv[row + k]! - f * inv[lr + k]!;
    }
    x[i] = Math.max(0, x[i]! - f * step);
  }
  x[leave] = step;
  return n;
};

/** Reduced costs of listed variables. A piece once covered is not left out again: such a variable counts as 0. */
export const price = (
  columns: Columns,
  cost: Float64Array,
  y: Float64Array,
  kinds: number,
  ids: Int32Array,
  list: Int32Array,
  listed: number,
  reduced: Float64Array,
): void => {
  const { start, kind, times, type } = columns;
  const m = y.length;
  for (let s = 0; s < listed; s++) {
    const v = list[s]!;
    if (v < kinds) reduced[s] = 0;
    else if (v < m) reduced[s] = -y[v]!;
    else if (v < m + kinds) reduced[s] = y[v - m]!;
    else {
      const c = ids[v - m - kinds]!;
      const t = type[c]!;
      let r = cost[t]! - y[kinds + t]!;
      const end = start[c + 1]!;
      for (let k = start[c]!; k < end; k++) r -= y[kind[k]!]! * times[k]!;
      reduced[s] = r;
    }
  }
};

/** Looks at all variables before `reach` and lists the few that price best; gives how many. */
export const shortList = (
  columns: Columns,
  cost: Float64Array,
  y: Float64Array,
  kinds: number,
  ids: Int32Array,
  basic: Uint8Array,
  reach: number,
  list: Int32Array,
  reduced: Float64Array,
): number => {
  const { start, kind, times, type } = columns;
  const m = y.length;
  let listed = 0;
  let bar = -EPS;
  let worst = 0;
  for (let v = kinds; v < reach; v++) {
    let r = 0;
    if (v < m) r = -y[v]!;
    else if (v < m + kinds) r = y[v - m]!;
    else {
      const c = ids[v - m - kinds]!;
      const t = type[c]!;
      r = cost[t]! - y[kinds + t]!;
      const end = start[c + 1]!;
      for (let k = start[c]!; k < end; k++) r -= y[kind[k]!]! * times[k]!;
    }
    if (r >= bar || basic[v] === 1) continue;
    if (listed < SHORT_LIST) {
      list[listed] = v;
      reduced[listed] = r;
      listed++;
      if (listed < SHORT_LIST) continue;
    } else {
      list[worst] = v;
      reduced[worst] = r;
    }
    worst = 0;
    for (let s = 1; s < SHORT_LIST; s++) if (reduced[s]! > reduced[worst]!) worst = s;
    bar = reduced[worst]!;
  }
  return listed;
};

/** A pivot smaller than this is none. */
const SINGULAR = 1e-11;

/** Writes the inverse of a matrix, which is used up; false where it has none. */
export const invert = (b: Float64Array, inv: Float64Array, m: number): boolean => {
  inv.fill(0);
  for (let i = 0; i < m; i++) inv[i * m + i] = 1;
  for (let j = 0; j < m; j++) {
    let p = j;
    for (let i = j + 1; i < m; i++) if (Math.abs(b[i * m + j]!) > Math.abs(b[p * m + j]!)) p = i;
    if (p !== j) {
      for (let k = 0; k < m; k++) {
        const t = b[p * m + k]!;
        b[p * m + k] = b[j * m + k]!;
        b[j * m + k] = t;
        const u = inv[p * m + k]!;
        inv[p * m + k] = inv[j * m + k]!;
        inv[j * m + k] = u;
      }
    }
    if (Math.abs(b[j * m + j]!) < SINGULAR) return false;
    const d = 1 / b[j * m + j]!;
    for (let k = 0; k < m; k++) {
      b[j * m + k]! *= d;
      inv[j * m + k]! *= d;
    }
    for (let i = 0; i < m; i++) {
      if (i === j) continue;
      const f = b[i * m + j]!;
      if (f === 0) continue;
      for (let k = 0; k < m; k++) {
        b[i * m + k]! -= f * b[j * m + k]!;
        inv[i * m + k]! -= f * inv[j * m + k]!;
      }
    }
  }
  return true;
};

/**
 * Small dense linear algebra for the diagnosis: symmetric matrices up to about 200 rows, kept row after row in one flat
 * array. Plain loops: at this size they are faster than a library and allocate nothing in the inner rounds.
 */

/** Lower Cholesky factor of a symmetric positive definite n × n matrix, in place (upper half left as it was). False when it is not. */
export function cholesky(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    const rowJ = j * n;
    let d = a[rowJ + j]!;
    for (let k = 0; k < j; k++) d -= a[rowJ + k]! ** 2;
    if (!(d > 0)) return false;
    const root = Math.sqrt(d);
    a[rowJ + j] = root;
    for (let i = j + 1; i < n; i++) {
      const rowI = i * n;
      let v = a[rowI + j]!;
      for (let k = 0; k < j; k++) v -= a[rowI + k]! * a[rowJ + k]!;
      a[rowI + j] = v / root;
    }
  }
  return true;
}

/** Solves L x = b in place, from a factor of {@link cholesky}; b begins at `at`. Leading zeros cost nothing. */
export function forwardSolve(l: Float64Array, n: number, b: Float64Array, at = 0): void {
  let first = 0;
  while (first < n && b[at + first] === 0) first++;
  for (let i = first; i < n; i++) {
    const row = i * n;
    let v = b[at + i]!;
    for (let k = first; k < i; k++) v -= l[row + k]! * b[at + k]!;
    b[at + i] = v / l[row + i]!;
  }
}

/** Solves Lᵀ x = b in place. */
export function backSolve(l: Float64Array, n: number, b: Float64Array, at = 0): void {
  for (let i = n - 1; i >= 0; i--) {
    let v = b[at + i]!;
    for (let k = i + 1; k < n; k++) v -= l[k * n + i]! * b[at + k]!;
    b[at + i] = v / l[i * n + i]!;
  }
}

/** Σ log of the factor's diagonal: half the log of the determinant. */
export function halfLogDet(l: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += Math.log(l[i * n + i]!);
  return sum;
}

/** Product of two stretches of n numbers. */
export function dot(a: Float64Array, fromA: number, b: Float64Array, fromB: number, n: number): number {
  let sum = 0;
  for (let k = 0; k < n; k++) sum += a[fromA + k]! * b[fromB + k]!;
  return sum;
}

/** Solves the symmetric positive definite system A x = b of a few unknowns; null when it is singular. */
export function solveSmall(a: Float64Array, b: Float64Array): Float64Array | null {
  const n = b.length;
  const l = Float64Array.from(a);
  if (!cholesky(l, n)) return null;
  const x = Float64Array.from(b);
  forwardSolve(l, n, x);
  backSolve(l, n, x);
  return x;
}

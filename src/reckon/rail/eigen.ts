/**
 * Eigenvalues and eigenvectors of a symmetric matrix: Householder's reduction to three diagonals, then implicit QL with
 * Wilkinson's shift (Golub and Van Loan, Matrix Computations, symmetric QR algorithm [memory]).
 */
export type Eigen = Readonly<{
  /** Eigenvalues, in no promised order. */
  values: Float64Array;
  /** Eigenvectors one after the other: vector k begins at `k * n`. */
  vectors: Float64Array;
}>;

/** Rounds of QL for one eigenvalue; two or three do. */
const ROUNDS = 60;

/** @param matrix n × n, row after row; the lower half is read */
export function symmetricEigen(matrix: Float64Array, n: number): Eigen {
  const a = Float64Array.from(matrix);
  for (let i = 0; i < n; i++) for (let j = i + 1; j < n; j++) a[i * n + j] = a[j * n + i]!;
  // Rows of q become the eigenvectors: q starts as the identity and takes every step that a takes.
  const q = new Float64Array(n * n);
  for (let i = 0; i < n; i++) q[i * n + i] = 1;
  threeDiagonals(a, q, n);
  const d = Float64Array.from({ length: n }, (_, i) => a[i * n + i]!);
  const e = Float64Array.from({ length: n }, (_, i) => (i + 1 < n ? a[(i + 1) * n + i]! : 0));
  implicitQl(d, e, q, n);
  return { values: d, vectors: q };
}

/** A ← H A H for one mirror after the other, until only the three middle diagonals are left; Q ← H Q. */
function threeDiagonals(a: Float64Array, q: Float64Array, n: number): void {
  const v = new Float64Array(n);
  const p = new Float64Array(n);
  for (let k = 0; k + 2 < n; k++) {
    let below = 0;
    for (let i = k + 1; i < n; i++) below += a[i * n + k]! ** 2;
    const head = a[(k + 1) * n + k]!;
    if (below - head * head === 0) continue;
    const alpha = head > 0 ? -Math.sqrt(below) : Math.sqrt(below);
    let vv = 0;
    for (let i = k + 1; i < n; i++) {
      v[i] = a[i * n + k]! - (i === k + 1 ? alpha : 0);
      vv += v[i]! ** 2;
    }
    if (vv === 0) continue;
    const beta = 2 / vv;
    let vp = 0;
    for (let i = k; i < n; i++) {
      let sum = 0;
      for (let j = k + 1; j < n; j++) sum += a[i * n + j]! * v[j]!;
      p[i] = beta * sum;
      if (i > k) vp += p[i]! * v[i]!;
    }
    v[k] = 0;
    const half = 0.5 * beta * vp;
    for (let i = k; i < n; i++) p[i]! -= half * v[i]!;
    for (let i = k; i < n; i++) for (let j = k; j < n; j++) a[i * n + j]! -= v[i]! * p[j]! + p[i]! * v[j]!;
    for (let j = 0; j < n; j++) {
      let sum = 0;
      for (let i = k + 1; i < n; i++) sum += v[i]! * q[i * n + j]!;
      sum *= beta;
      for (let i = k + 1; i < n; i++) q[i * n + j]! -= v[i]! * sum;
    }
  }
}

function implicitQl(d: Float64Array, e: Float64Array, q: Float64Array, n: number): void {
  for (let l = 0; l < n; l++) {
    for (let round = 0; round < ROUNDS; round++) {
      let m = l;
      while (m + 1 < n && Math.abs(e[m]!) > Number.EPSILON * (Math.abs(d[m]!) + Math.abs(d[m + 1]!))) m++;
      if (m === l) break;
      let g = (d[l + 1]! - d[l]!) / (2 * e[l]!);
      let r = Math.hypot(g, 1);
      g = d[m]! - d[l]! + e[l]! / (g + (g < 0 ? -r : r));
      let s = 1;
      let c = 1;
      let p = 0;
      let i = m - 1;
      for (; i >= l; i--) {
        let f = s * e[i]!;
        const b = c * e[i]!;
        r = Math.hypot(f, g);
        e[i + 1] = r;
        if (r === 0) {
          d[i + 1]! -= p;
          e[m] = 0;
          break;
        }
        s = f / r;
        c = g / r;
        g = d[i + 1]! - p;
        r = (d[i]! - g) * s + 2 * c * b;
        p = s * r;
        d[i + 1] = g + p;
        g = c * r - b;
        for (let k = 0; k < n; k++) {
          f = q[(i + 1) * n + k]!;
          const h = q[i * n + k]!;
          q[(i + 1) * n + k] = s * h + c * f;
          q[i * n + k] = c * h - s * f;
        }
      }
      if (r === 0 && i >= l) continue;
      d[l]! -= p;
      e[l] = g;
      e[m] = 0;
    }
  }
}

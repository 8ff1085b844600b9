import type { EnergyRow, Square } from './stiffness.ts';

/** A lower triangle L with L·Lᵀ the matrix factored, ready to answer any right-hand side. */
export type Factor = Readonly<{
  solve: (right: Float64Array) => Float64Array;
  /** The least square on the diagonal: with a unit diagonal before, how much of the weakest unknown's stiffness is its own. */
  leastPivot: number;
}>;

/** Cholesky factors, or null when the matrix is not positive definite. The matrix must be symmetric to the bit. */
export const factorSquare = async (square: Square): Promise<Factor | null> => {
  if (square.length === 0) return { solve: right => right, leastPivot: 1 };
  const { CholeskyDecomposition, Matrix } = await import('ml-matrix');
  const cholesky = new CholeskyDecomposition(new Matrix(square.map(row => [...row])));
  if (!cholesky.isPositiveDefinite()) return null;
  const lower = cholesky.lowerTriangularMatrix;
  return factorOf(square.map((_, j) => Float64Array.from(lower.getRow(j))));
};

/**
 * The same factors by QR of the energy rows, which never forms their squares: it keeps its digits where the stiffest
 * and the softest member differ by more than a Cholesky bears, at about five times the time.
 */
export const factorRows = async (rows: readonly EnergyRow[], scale: Float64Array): Promise<Factor | null> => {
  const { Matrix, QrDecomposition } = await import('ml-matrix');
  const tall = new Matrix(Math.max(rows.length, scale.length), scale.length);
  for (const [j, { at, values }] of rows.entries()) {
    for (const [k, unknown] of at.entries()) tall.set(j, unknown, values[k]! * scale[unknown]!);
  }
  const upper = new QrDecomposition(tall).upperTriangularMatrix;
  const factor = factorOf(Array.from(scale, (_, j) => Float64Array.from(upper.getColumn(j))));
  return factor.leastPivot > 0 ? factor : null;
};

const factorOf = (lower: readonly Float64Array[]): Factor => {
  const leastPivot = lower.reduce((least, row, k) => Math.min(least, row[k]! ** 2), Infinity);
  return { solve: right => solveTriangles(lower, right), leastPivot };
};

const solveTriangles = (lower: readonly Float64Array[], right: Float64Array): Float64Array => {
  const answer = Float64Array.from(right);
  for (const [j, row] of lower.entries()) {
    let sum = answer[j]!;
    for (let k = 0; k < j; k++) sum -= row[k]! * answer[k]!;
    answer[j] = sum / row[j]!;
  }
  for (let j = lower.length - 1; j >= 0; j--) {
    const row = lower[j]!;
    const value = answer[j]! / row[j]!;
    answer[j] = value;
    for (let k = 0; k < j; k++) answer[k]! -= row[k]! * value;
  }
  return answer;
};

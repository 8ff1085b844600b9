/** Rows kept above the lit one: it stands third, so that what was done last and what comes next are both in sight. */
const ROWS_BEFORE = 2;

/**
 * Which part of a list is shown in a number of rows, `from` included, `to` not: the lit row third, at the ends of the list
 * wherever it falls, and never an empty row while there is more to show.
 */
export const listWindow = (count: number, lit: number, rows: number): { from: number; to: number } => {
  const height = Math.max(0, Math.min(rows, count));
  const before = Math.min(ROWS_BEFORE, Math.max(0, height - 1));
  const from = Math.max(0, Math.min(lit - before, count - height));
  return { from, to: from + height };
};

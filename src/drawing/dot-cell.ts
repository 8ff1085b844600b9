/**
 * One cell of a drawing: two columns by four rows of dots. The eight dots are kept as the bits of a braille sign
 * (U+2800 + bits), as the Unicode standard numbers them: 1 2 3 down the left, 4 5 6 down the right, 7 and 8 below.
 */
export const CELL_COLUMNS = 2;
export const CELL_ROWS = 4;

const BITS: readonly (readonly number[])[] = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
];

const BRAILLE_START = 0x2800;

/** The bit of the dot at a column (0 left, 1 right) and a row (0 top to 3 bottom) of a cell. */
export const dotBit = (column: number, dotRow: number): number => BITS[column]?.[dotRow] ?? 0;

/** The sign for a set of dots; no dots is a plain space, so that a copied page holds no odd blanks. */
export const brailleSign = (dots: number): string =>
  dots === 0 ? ' ' : String.fromCharCode(BRAILLE_START + dots);

/** The dots of a braille sign, or null for any other. */
export const brailleDots = (sign: string): number | null => {
  const dots = (sign.codePointAt(0) ?? 0) - BRAILLE_START;
  return dots >= 0 && dots <= 0xff ? dots : null;
};

const rowsOf = (dots: number, column: number): number[] =>
  [0, 1, 2, 3].filter(dotRow => (dots & dotBit(column, dotRow)) !== 0);

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * The 7-bit sign whose ink lies where the dots lie: `_` low, `-` middle, `'` high, `|` upright, `/` rising, `\` falling,
 * `.` a lone low dot. A crossing shows the upright.
 */
export const asciiSign = (dots: number): string => {
  const left = rowsOf(dots, 0);
  const right = rowsOf(dots, 1);
  if (left.length === 0 && right.length === 0) return ' ';
  if (left.length === 0 || right.length === 0) return oneColumn([...left, ...right]);
  if (Math.max(left.length, right.length) >= 3 && Math.min(left.length, right.length) <= 1) return '|';
  const rise = mean(left) - mean(right);
  if (rise >= 1.5) return '/';
  if (rise <= -1.5) return '\\';
  return level(mean([...left, ...right]), '_');
};

const oneColumn = (rows: readonly number[]): string => (rows.length >= 3 ? '|' : level(mean(rows), '.'));

const level = (height: number, low: string): string => {
  if (height < 1) return "'";
  return height < 2.25 ? '-' : low;
};

/** The 7-bit sign of a dotted stroke: a dot high or low in its cell, never a stroke, so that a line laid out is not taken for steel. */
export const asciiDot = (dots: number): string => {
  const rows = [...rowsOf(dots, 0), ...rowsOf(dots, 1)];
  if (rows.length === 0) return ' ';
  return mean(rows) < 1.5 ? "'" : '.';
};

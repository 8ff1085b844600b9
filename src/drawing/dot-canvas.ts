import { asciiDot, asciiSign, brailleSign, CELL_COLUMNS, CELL_ROWS, dotBit } from './dot-cell.ts';
import type { Role } from './row.ts';

/** A dot of the canvas, counted from the top left. */
export type Dot = Readonly<{ column: number; row: number }>;

/** How a stroke is set down: `dotted` sets every third dot, and reads as dots in ASCII too. */
export type Ink = Readonly<{ role: Role; rank: number; dotted: boolean }>;

const DOTTED_EVERY = 3;

type CanvasCell = { solid: number; dotted: number; role: Role; rank: number };

/** A field of dots that becomes text cells; a cell takes the role of the stroke with the highest rank in it. */
export type DotCanvas = Readonly<{
  stroke: (dots: readonly Dot[], ink: Ink) => void;
  cell: (column: number, row: number, ascii: boolean) => { text: string; role: Role } | null;
}>;

/** The dots on the straight way between two dots, both ends included (Bresenham's line in whole numbers). */
const dotsBetween = (from: Dot, to: Dot): Dot[] => {
  const across = Math.abs(to.column - from.column);
  const down = -Math.abs(to.row - from.row);
  const stepColumn = from.column < to.column ? 1 : -1;
  const stepRow = from.row < to.row ? 1 : -1;
  const dots: Dot[] = [];
  let { column, row } = from;
  let error = across + down;
  for (;;) {
    dots.push({ column, row });
    if (column === to.column && row === to.row) return dots;
    const doubled = 2 * error;
    if (doubled >= down) {
      error += down;
      column += stepColumn;
    }
    if (doubled <= across) {
      error += across;
      row += stepRow;
    }
  }
};

/** The dots of a line through several dots. A dot is given once where two parts meet, so that a dotted stroke keeps its step along a curve of many parts. */
export const dotsAlong = (corners: readonly Dot[]): Dot[] => {
  const [first, ...rest] = corners;
  if (first === undefined) return [];
  const dots: Dot[] = [first];
  let from = first;
  for (const to of rest) {
    dots.push(...dotsBetween(from, to).slice(1));
    from = to;
  }
  return dots;
};

/** An empty canvas of text cells. Dots outside it are left out. */
export const dotCanvas = (columns: number, rows: number): DotCanvas => {
  const cells: (CanvasCell | undefined)[] = new Array(columns * rows);

  const set = (dot: Dot, ink: Ink): void => {
    const column = Math.floor(dot.column / CELL_COLUMNS);
    const row = Math.floor(dot.row / CELL_ROWS);
    if (column < 0 || column >= columns || row < 0 || row >= rows) return;
    const index = row * columns + column;
    const cell = cells[index] ?? { solid: 0, dotted: 0, role: ink.role, rank: ink.rank };
    cells[index] = cell;
    const bit = dotBit(dot.column % CELL_COLUMNS, dot.row % CELL_ROWS);
    if (ink.dotted) cell.dotted |= bit;
    else cell.solid |= bit;
    if (ink.rank > cell.rank) {
      cell.rank = ink.rank;
      cell.role = ink.role;
    }
  };

  return {
    stroke: (dots, ink) => {
      dots.forEach((dot, index) => {
        if (!ink.dotted || index % DOTTED_EVERY === 0) set(dot, ink);
      });
    },
    cell: (column, row, ascii) => {
      const cell = cells[row * columns + column];
      if (cell === undefined) return null;
      if (!ascii) return { text: brailleSign(cell.solid | cell.dotted), role: cell.role };
      return { text: cell.solid === 0 ? asciiDot(cell.dotted) : asciiSign(cell.solid), role: cell.role };
    },
  };
};

import { cellWidth, graphemes } from './cells.ts';
import type { Role } from './row.ts';

/** Words laid over a drawing, cell by cell; words never run into each other. */
export type TextLayer = Readonly<{
  /** Whether a text fits here with a free cell before and after it. */
  fits: (text: string, column: number, row: number) => boolean;
  put: (text: string, column: number, row: number, role: Role) => void;
  /** What stands in a cell; an empty text is the second half of a wide sign. */
  cell: (column: number, row: number) => { text: string; role: Role } | null;
}>;

/** An empty layer of text cells. */
export const textLayer = (columns: number, rows: number): TextLayer => {
  const cells: ({ text: string; role: Role } | undefined)[] = new Array(columns * rows);
  const taken = (column: number, row: number): boolean =>
    column >= 0 && column < columns && cells[row * columns + column] !== undefined;

  return {
    fits: (text, column, row) => {
      const width = cellWidth(text);
      if (row < 0 || row >= rows || column < 0 || column + width > columns) return false;
      for (let at = column - 1; at <= column + width; at += 1) if (taken(at, row)) return false;
      return true;
    },
    put: (text, column, row, role) => {
      let at = row * columns + column;
      for (const sign of graphemes(text)) {
        const width = cellWidth(sign);
        for (let part = 0; part < width; part += 1) cells[at + part] = { text: part === 0 ? sign : '', role };
        at += width;
      }
    },
    cell: (column, row) => cells[row * columns + column] ?? null,
  };
};

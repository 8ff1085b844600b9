import { cellWidth, graphemes } from './cells.ts';
import { pixelsOf, setTall } from './pixel-digits.ts';

/** A large figure is ten text rows high: each pixel is two rows. */
export const LARGE_ROWS = 10;
const ROWS_A_PIXEL = 2;
/** Cells a pixel is wide, from the square one down to the narrowest that still reads; a long US figure takes a narrower one. */
const PIXEL_WIDTHS = [4, 3, 2] as const;
const GAP_CELLS = 2;

const drawn = (text: string, pixelWidth: number, ink: string): string[] => {
  const signs = graphemes(setTall(text));
  return Array.from({ length: LARGE_ROWS }, (_, line) => {
    const pixelRow = Math.floor(line / ROWS_A_PIXEL);
    return signs
      .map(sign => {
        const pixels = pixelsOf(sign)?.[pixelRow];
        // A sign without pixels (a letter) stands once, small, on the last row.
        if (pixels === undefined) return line === LARGE_ROWS - 1 ? sign : ' '.repeat(cellWidth(sign));
        return Array.from(pixels, pixel => (pixel === '#' ? ink : ' ').repeat(pixelWidth)).join('');
      })
      .join(' '.repeat(GAP_CELLS));
  });
};

/**
 * A figure readable from across the garage: ten rows, all of the same width, at most `columns` cells where that can be
 * had by narrower digits. A digit is 12, 9 or 6 cells wide.
 */
export const largeDigits = (text: string, ascii = false, columns = Number.POSITIVE_INFINITY): string[] => {
  const ink = ascii ? '#' : '█';
  const widths = PIXEL_WIDTHS.map(pixelWidth => drawn(text, pixelWidth, ink));
  return widths.find(rows => cellWidth(rows[0] ?? '') <= columns) ?? widths.at(-1)!;
};

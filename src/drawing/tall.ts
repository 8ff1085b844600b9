import { cellWidth, graphemes, padTo } from './cells.ts';
import { type Pixels, pixelsOf, setTall } from './pixel-digits.ts';

/** A figure three text rows high: the three rows, all of the same width in cells. */
export type TallFigure = [string, string, string];

/** Seven-stroke signs of `_` and `|` for terminals without half blocks, in the same cells as the half-block ones. */
const STROKES: Readonly<Record<string, TallFigure>> = {
  '0': [' _ ', '| |', '|_|'],
  '1': ['   ', '  |', '  |'],
  '2': [' _ ', ' _|', '|_ '],
  '3': [' _ ', ' _|', ' _|'],
  '4': ['   ', '|_|', '  |'],
  '5': [' _ ', '|_ ', ' _|'],
  '6': [' _ ', '|_ ', '|_|'],
  '7': [' _ ', '  |', '  |'],
  '8': [' _ ', '|_|', '|_|'],
  '9': [' _ ', '|_|', ' _|'],
  '.': [' ', ' ', '.'],
  '+': ['   ', '_|_', ' | '],
  '-': ['   ', '___', '   '],
  "'": ["'", ' ', ' '],
  '"': ['"  ', '   ', '   '],
  '/': ['  /', ' / ', '/  '],
  ' ': ['  ', '  ', '  '],
};

const HALF_BLOCKS: Readonly<Record<string, string>> = { '  ': ' ', '# ': '▀', ' #': '▄', '##': '█' };

/** Two rows of pixels in one row of half blocks. */
const fold = (upper: string, lower: string): string =>
  Array.from(upper, (pixel, index) => HALF_BLOCKS[pixel + (lower[index] ?? ' ')] ?? ' ').join('');

const blocks = ([first, second, third, fourth, fifth]: Pixels): TallFigure => [
  fold(first, second),
  fold(third, fourth),
  fold(fifth, ' '.repeat(fifth.length)),
];

/** A sign without a tall form (a letter, a question mark) stands as it is on the bottom row, where plain text beside the figure has its unit. */
const small = (sign: string): TallFigure => {
  const blank = ' '.repeat(cellWidth(sign));
  return [blank, blank, sign];
};

const glyph = (sign: string, ascii: boolean): TallFigure => {
  const pixels = pixelsOf(sign);
  if (pixels === null) return small(sign);
  return ascii ? (STROKES[sign] ?? small(sign)) : blocks(pixels);
};

const isSmall = (sign: string | undefined): boolean => sign !== undefined && pixelsOf(sign) === null;

/**
 * A figure readable from standing: three rows of half blocks, or of strokes in ASCII. Digits are three cells with one
 * between; a fraction ("15 3/4") stands whole, in full-size digits; a feet-and-inches hyphen is left out.
 */
export const tallDigits = (text: string, ascii = false): TallFigure => {
  const rows: TallFigure = ['', '', ''];
  let before: string | undefined;
  for (const sign of graphemes(setTall(text))) {
    // No gap inside a run of plain letters.
    const gap = before === undefined || (isSmall(before) && isSmall(sign)) ? '' : ' ';
    const drawn = glyph(sign, ascii);
    for (const index of [0, 1, 2] as const) rows[index] += gap + drawn[index];
    before = sign;
  }
  const width = cellWidth(rows[0]);
  return [padTo(rows[0], width), padTo(rows[1], width), padTo(rows[2], width)];
};

/** How many cells wide a tall figure is. */
export const tallWidth = (text: string, ascii = false): number => cellWidth(tallDigits(text, ascii)[0]);

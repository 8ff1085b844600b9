import stringWidth from 'fast-string-width';
import { cleanText } from './clean-text.ts';
import type { Role, Row, Span } from './row.ts';

/** What a row is written from: bare text, a span, or a role and its text. */
export type Part = string | Span | readonly [Role, string];

/** Made when a text needs it: its tables take longer to load than a page to draw. */
let segmenter: Intl.Segmenter | null = null;
const segments = (text: string): string[] => {
  segmenter ??= new Intl.Segmenter();
  return Array.from(segmenter.segment(text), piece => piece.segment);
};

/**
 * Texts of signs that are one cell each and never join: letters of Latin scripts, quotes and dashes, arrows, strokes, blocks,
 * braille and our own state signs. Nearly all rows are; the library takes a hundred times as long over them.
 */
const PLAIN =
  /^[\u0020-\u007E\u00A1-\u00AC\u00AE-\u024F\u2010-\u2015\u2018-\u201D\u2022\u2026\u2032\u2033\u2190-\u2193\u2212\u2260\u2264\u2265\u2500-\u259F\u25A0-\u25CF\u2713\u2800-\u28FF]*$/;

/** How many cells a text takes in a terminal. */
export const cellWidth = (text: string): number => (PLAIN.test(text) ? text.length : stringWidth(text));

/** The signs of a text as the eye counts them, so that a cut never falls inside one. */
export const graphemes = (text: string): string[] => (PLAIN.test(text) ? text.split('') : segments(text));

const span = (part: Part): Span => {
  if (typeof part === 'string') return { text: cleanText(part) };
  if (isPair(part)) return { text: cleanText(part[1]), role: part[0] };
  return { ...part, text: cleanText(part.text) };
};

const isPair = (part: Span | readonly [Role, string]): part is readonly [Role, string] => Array.isArray(part);

/** A row from its parts; empty parts vanish, control characters become spaces. */
export const row = (...parts: readonly Part[]): Row => parts.map(span).filter(piece => piece.text !== '');

/** What a row says, without its roles. */
export const rowText = (line: Row): string => line.map(piece => piece.text).join('');

/** How many cells a row takes. */
export const rowWidth = (line: Row): number => cellWidth(rowText(line));

/** A text filled with spaces to a width in cells, on its right (`left`, the default) or on its left; longer ones are returned as they are. */
export const padTo = (text: string, columns: number, align: 'left' | 'right' = 'left'): string => {
  const gap = ' '.repeat(Math.max(0, columns - cellWidth(text)));
  return align === 'left' ? text + gap : gap + text;
};

/** The mark of a text that goes on: one cell, or two in ASCII. */
const ellipsis = (ascii: boolean): string => (ascii ? '..' : '…');

/** As many whole signs from the start as fit into a number of cells. */
const head = (text: string, columns: number): string => {
  let taken = '';
  let width = 0;
  for (const sign of graphemes(text)) {
    const next = width + cellWidth(sign);
    if (next > columns) break;
    taken += sign;
    width = next;
  }
  return taken;
};

/** A text of at most `columns` cells; what is cut off is marked with `…` (`..` in ASCII), where there is room for the mark. */
export const cutTo = (text: string, columns: number, ascii = false): string => {
  if (columns <= 0) return '';
  if (cellWidth(text) <= columns) return text;
  const mark = ellipsis(ascii);
  if (columns <= mark.length) return head(text, columns);
  return head(text, columns - mark.length).trimEnd() + mark;
};

/** As many whole words of a text as fit, and the mark that it goes on; a first word that is too long is cut itself. */
export const cutAtWord = (text: string, columns: number): string => {
  if (cellWidth(text) <= columns) return text;
  const words = text.split(' ');
  while (words.length > 1 && cellWidth(words.join(' ')) > columns - 2) words.pop();
  return cutTo(`${words.join(' ').replace(/[,;:]$/, '')} …`, columns);
};

/** A row of at most `columns` cells, cut as `cutTo` cuts a text; roles stay with their signs. */
export const cutRow = (line: Row, columns: number, ascii = false): Row => {
  if (columns <= 0) return [];
  if (rowWidth(line) <= columns) return line;
  const mark = ellipsis(ascii);
  const room = columns > mark.length ? columns - mark.length : columns;
  const kept: Span[] = [];
  let width = 0;
  for (const piece of line) {
    const text = head(piece.text, room - width);
    if (text !== '') kept.push({ ...piece, text });
    width += cellWidth(text);
    if (text !== piece.text) break;
  }
  const last = kept.at(-1);
  if (last === undefined || room === columns) return kept;
  const trimmed = last.text.trimEnd();
  return [...kept.slice(0, -1), { ...last, text: (trimmed === '' ? last.text : trimmed) + mark }];
};

/** A row filled with spaces to a width in cells; a longer one is returned as it is. */
export const padRow = (line: Row, columns: number): Row => {
  const gap = columns - rowWidth(line);
  return gap > 0 ? [...line, { text: ' '.repeat(gap) }] : line;
};

const asRow = (side: string | Row): Row => (typeof side === 'string' ? row(side) : side);

/**
 * One row with a left part and a right part that ends at the last cell. Where both do not fit with one cell between them,
 * the left one is cut; a right part wider than the row is cut itself.
 */
export const joinSides = (left: string | Row, right: string | Row, columns: number, ascii = false): Row => {
  const end = cutRow(asRow(right), columns, ascii);
  if (end.length === 0) return cutRow(asRow(left), columns, ascii);
  const room = columns - rowWidth(end);
  const start = cutRow(asRow(left), Math.max(0, room - 1), ascii);
  return [...padRow(start, room), ...end];
};

/**
 * Rows side by side: the right ones begin at cell `at`, as long as either side goes on. A left row that reaches past
 * `at - 1` is cut there.
 */
export const besideRows = (left: readonly Row[], right: readonly Row[], at: number, ascii = false): Row[] =>
  Array.from({ length: Math.max(left.length, right.length) }, (_, index) => {
    const start = left[index] ?? [];
    const end = right[index] ?? [];
    if (end.length === 0) return start;
    return [...padRow(cutRow(start, at - 1, ascii), at), ...end];
  });

/**
 * The rule that parts a page: `── label ───────── right label ──`. Labels may be empty. Where the labels do not both fit,
 * the right one goes first, then the left one is cut.
 */
export const rule = (label: string, rightLabel: string, columns: number, ascii = false): Row => {
  const stroke = ascii ? '-' : '─';
  const end = rightLabel === '' ? '' : ` ${cleanText(rightLabel)} ${stroke.repeat(2)}`;
  const start = label === '' ? stroke : `${stroke.repeat(2)} ${cleanText(label)} `;
  const gap = columns - cellWidth(start) - cellWidth(end);
  if (gap >= 1) return row(['quiet', start + stroke.repeat(gap) + end]);
  if (rightLabel !== '') return rule(label, '', columns, ascii);
  return row(['quiet', cutTo(start, columns, ascii)]);
};

/** A space where a line may end: not inside a measure such as 15 25/32 in, whose halves are two wrong numbers. */
const GAP = / (?!(?<=\d )(?:\d+\/\d+|(?:in|ft|mm|m|lb|kg|h|min)(?![\w/])))/;

/**
 * A text in lines of at most `columns` cells, broken at spaces outside of measures; a single word that is longer than a line is
 * broken where it must be. Line ends in the text are kept. Always at least one line.
 */
export const wrap = (text: string, columns: number): string[] =>
  text.split('\n').flatMap(part => wrapLine(part, Math.max(1, columns)));

const wrapLine = (text: string, columns: number): string[] => {
  const lines: string[] = [];
  let line = '';
  const words = text.split(GAP).flatMap(word => (cellWidth(word) > columns ? word.split(' ') : [word]));
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (cellWidth(longer) <= columns) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = breakWord(word, columns);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  return [...lines, line];
};

const breakWord = (word: string, columns: number): string[] => {
  const pieces: string[] = [];
  let rest = word;
  while (cellWidth(rest) > columns) {
    // A sign wider than the line (two cells in a line of one) must still be taken, or this would never end.
    const piece = head(rest, columns) || (graphemes(rest)[0] ?? rest);
    pieces.push(piece);
    rest = rest.slice(piece.length);
  }
  return [...pieces, rest].filter((piece, index, all) => piece !== '' || all.length === 1 || index === 0);
};

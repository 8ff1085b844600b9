import { cellWidth, graphemes, rowWidth } from './cells.ts';
import { asciiSign, brailleDots } from './dot-cell.ts';
import type { Role, Row, Span } from './row.ts';
import { SIGNS } from './signs.ts';

/** Signs of rules, bands, arrows and blocks, each by one 7-bit sign. The state signs come from their own table. */
const ONE_CELL: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.values(SIGNS).map(({ sign, ascii }) => [sign, ascii])),
  '◂': '<',
  '▾': 'v',
  '▴': '^',
  '•': 'o',
  '●': 'o',
  '○': 'o',
  '─': '-',
  '━': '=',
  '│': '|',
  '┃': '|',
  '├': '|',
  '┤': '|',
  '┼': '+',
  '╋': '+',
  '┴': '+',
  '┬': '+',
  '┿': '+',
  '╂': '+',
  '┌': '+',
  '┐': '+',
  '└': '+',
  '┘': '+',
  '╱': '/',
  '╲': '\\',
  '█': '#',
  '▀': "'",
  '▄': '_',
  '▌': '|',
  '▐': '|',
  '░': '.',
  '▒': ':',
  '▓': '#',
  '←': '<',
  '↑': '^',
  '↓': 'v',
  '↔': '-',
  '↕': '|',
  '—': '-',
  '−': '-',
  '‘': "'",
  '’': "'",
  '“': '"',
  '”': '"',
  '′': "'",
  '″': '"',
  '²': '2',
  '³': '3',
  '¹': '1',
  µ: 'u',
  μ: 'u',
  '\u00A0': ' ',
  '\u202F': ' ',
  '\u2007': ' ',
  ß: 's',
  Ø: 'O',
  ø: 'o',
  Æ: 'A',
  æ: 'a',
  Œ: 'O',
  œ: 'o',
  Ł: 'L',
  ł: 'l',
  Đ: 'D',
  đ: 'd',
  ð: 'd',
  þ: 't',
};

/** Signs that read better as more than one 7-bit sign; `tight` is what stands where the row has no room to give. */
const WIDER: Readonly<Record<string, { full: string; tight: string }>> = {
  '°': { full: ' deg', tight: 'd' },
  '→': { full: '->', tight: '>' },
  '±': { full: '+-', tight: '~' },
  '≤': { full: '<=', tight: '<' },
  '≥': { full: '>=', tight: '>' },
  '…': { full: '..', tight: '.' },
};

type Cell = { text: string; role: Role | undefined };

/** One sign as 7-bit signs of the same width; what the table does not know is its bare letter, or `?` for each cell. */
const plainSign = (sign: string): string => {
  if (/^[\x20-\x7E]*$/.test(sign)) return sign;
  const known = ONE_CELL[sign];
  if (known !== undefined) return known;
  const dots = brailleDots(sign);
  if (dots !== null) return asciiSign(dots);
  const bare = sign.normalize('NFD').replace(/\p{Mn}/gu, '');
  if (/^[\x20-\x7E]$/.test(bare)) return bare;
  const control = /^[\u0000-\u001F\u007F]$/.test(sign);
  return control ? ' ' : '?'.repeat(cellWidth(sign));
};

/** A bare text in 7-bit signs, where its width is free: "45.6°" gives "45.6 deg", "→" gives "->". */
export const asciiText = (text: string): string =>
  graphemes(text)
    .map(sign => WIDER[sign]?.full ?? plainSign(sign))
    .join('')
    .replace(/ {2}deg/g, ' deg')
    .replace(/ deg([CF])\b/g, ' deg $1');

/** What may give way to a longer word: a run of spaces down to one, a rule down to three strokes. */
const spare = (cells: readonly Cell[], start: number, step: 1 | -1): { at: number; room: number } | null => {
  for (let index = start; index >= 0 && index < cells.length; index += step) {
    const text = cells[index]?.text;
    if (text !== ' ' && text !== '-') continue;
    let end = index;
    while (cells[end + step]?.text === text) end += step;
    const length = Math.abs(end - index) + 1;
    const room = length - (text === ' ' ? 1 : 3);
    if (room > 0) return { at: Math.min(index, end) + 1, room };
    index = end;
  }
  return null;
};

/** Makes one cell the full word, taking the room from the next run on its right, then on its left, then from the end of the row. */
const widen = (cells: readonly Cell[], at: number, full: string, tight: string, columns: number): Cell[] => {
  const role = cells[at]?.role;
  const word = full.startsWith(' ') && cells[at - 1]?.text === ' ' ? full.slice(1) : full;
  const next = cells[at + 1]?.text;
  const spelled = word.endsWith('deg') && next !== undefined && /[A-Z]/.test(next) ? `${word} ` : word;
  const letters = Array.from(spelled, text => ({ text, role }));
  const grown = letters.length - 1;
  const put = (from: readonly Cell[], where: number): Cell[] => [
    ...from.slice(0, where),
    ...letters,
    ...from.slice(where + 1),
  ];
  if (grown === 0) return put(cells, at);

  const width = cells.reduce((sum, cell) => sum + cellWidth(cell.text), 0);
  const after = spare(cells, at + 1, 1);
  const taken = Math.min(grown, after?.room ?? 0);
  if (width + grown - taken <= Math.max(width, columns)) {
    const from = after?.at ?? 0;
    return put([...cells.slice(0, from), ...cells.slice(from + taken)], at);
  }
  const before = spare(cells, at - 1, -1);
  if (before !== null && before.room >= grown) {
    const less = [...cells.slice(0, before.at), ...cells.slice(before.at + grown)];
    return put(less, at - grown);
  }
  return cells.map((cell, index) => (index === at ? { text: tight, role } : cell));
};

const asciiRow = (line: Row, columns: number): Row => {
  // Longer words first have to be found in the unchanged row, then the cells are worked through from the left.
  let cells: Cell[] = line.flatMap(piece =>
    graphemes(piece.text).flatMap(sign => {
      if (WIDER[sign] !== undefined) return [{ text: sign, role: piece.role }];
      return Array.from(plainSign(sign), text => ({ text, role: piece.role }));
    }),
  );
  for (;;) {
    const at = cells.findIndex(cell => WIDER[cell.text] !== undefined);
    if (at === -1) return spans(cells);
    const { full, tight } = WIDER[cells[at]!.text]!;
    cells = widen(cells, at, full, tight, columns);
  }
};

const spans = (cells: readonly Cell[]): Span[] => {
  const joined: { text: string; role: Role | undefined }[] = [];
  for (const cell of cells) {
    const last = joined.at(-1);
    if (last !== undefined && last.role === cell.role) last.text += cell.text;
    else joined.push({ ...cell });
  }
  return joined.map(({ text, role }) => (role === undefined ? { text } : { text, role }));
};

/**
 * The ASCII twin of a page: pure 7-bit, each row as wide as it was wherever it can be. Where a sign needs a longer word
 * (` deg`, `->`), the room is taken from spaces or a rule beside it, or from the free end of the row up to `columns`;
 * where there is none, one sign stands for it.
 */
export const toAscii = (rows: readonly Row[], columns = 80): Row[] =>
  rows.map(line => asciiRow(line, Math.max(columns, rowWidth(line))));

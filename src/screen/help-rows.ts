import { besideRows, cutRow, padTo, row, rule, wrap } from '../drawing/cells.ts';
import type { Look, Row } from '../drawing/row.ts';
import { SIGNS, type State, signOf } from '../drawing/signs.ts';
import { KEY_TABLE, type KeyRow } from './key-table.ts';
import { itemText, keyFor, type LineItem, type PageKey } from './keys.ts';

const KEY_COLUMNS = 11;
/** Below this the columns stand under each other. */
const TWO_ABREAST_FROM = 72;

const entry = (shown: string, help: string): Row => row(' ', padTo(shown, KEY_COLUMNS - 2), ' ', help);

const SENTENCES = [
  'In a number w tells why, q leaves; in a note letters are letters, Esc first.',
  'A key leaned on counts once. Everything you enter can be taken back.',
  'Nothing here can lose work. Words you do not know: w, then g.',
] as const;

const signRows = (look: Look): Row[] => {
  const said = (Object.keys(SIGNS) as State[]).map(
    state => `${signOf(state, look.ascii)} ${SIGNS[state].word}`,
  );
  const lines: string[] = [];
  for (const text of said) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 3 + text.length > look.columns - 2) lines.push(text);
    else lines[lines.length - 1] = `${last}   ${text}`;
  }
  const strip = '! in the stage strip: something there wants a look';
  const tail = lines.at(-1) ?? '';
  if (tail.length + 3 + strip.length <= look.columns - 2) lines[lines.length - 1] = `${tail}   ${strip}`;
  else lines.push(strip);
  return lines.map(line => row(` ${line}`));
};

const tableRow = (act: string): KeyRow | undefined => KEY_TABLE.find(k => k.act === act);

/**
 * What a key of the page does, in words: the page's own, then the table's in full, then the word of its bottom row. Keys that mean
 * one thing everywhere (w, f, h) keep the table's sentence; Space, Enter and Esc say what they do here.
 */
const helpOf = (item: LineItem, own: readonly PageKey[]): string => {
  const mine = own.find(({ act }) => act === item.act);
  return mine?.help ?? item.words ?? tableRow(item.act)?.help ?? tableRow(item.act)?.word ?? '';
};

const inColumns = (rows: readonly Row[], look: Look): Row[] => {
  if (look.columns < TWO_ABREAST_FROM) return [...rows];
  const half = Math.ceil(rows.length / 2);
  return besideRows(rows.slice(0, half), rows.slice(half), Math.floor(look.columns / 2), look.ascii);
};

/**
 * The help page below the stage strip: the keys of the page it was opened from, those that its bottom row has no room for among
 * them; then the other keys, made from the one table; then the signs, and sentences where there is room for them.
 * @param items the keys of that page as they act now
 * @param own its own letters
 */
export const helpRows = (look: Look, items: readonly LineItem[], own: readonly PageKey[] = []): Row[] => {
  const { columns, ascii } = look;
  const mine = [
    ...items.map(item => entry(itemText(item, own, ascii)[0], helpOf(item, own))),
    ...own
      .filter(({ act }) => items.every(item => item.act !== act))
      .map(({ char, help }) => entry(char, help)),
  ];
  const taken = new Set(items.map(({ act }) => act));
  const letters = new Set(own.map(({ char }) => char));
  // In a field no key of a page acts: there the others are those of every field.
  const inField = taken.has('keep');
  const others = KEY_TABLE.filter(
    ({ act, help, group, keys }) =>
      help !== null && (group === 'IN A FIELD') === inField && !taken.has(act) && !letters.has(keys[0] ?? ''),
  ).map(({ act, help, onHelp }) =>
    entry(onHelp?.[ascii ? 'ascii' : 'shown'] ?? keyFor(act, ascii), help ?? ''),
  );
  const needed = [
    rule('keys of the page you came from', 'Esc goes back to it', columns, ascii),
    ...inColumns(mine, look),
    rule(inField ? 'keys of every field' : 'keys of every page, where they have a use', '', columns, ascii),
    ...inColumns(others, look),
    rule('signs', '', columns, ascii),
    ...signRows(look),
  ];
  const text = SENTENCES.flatMap(sentence => wrap(sentence, columns - 2)).map(line => row(` ${line}`));
  const room = Math.max(0, look.rows - needed.length);
  return [...needed, ...text.slice(Math.max(0, text.length - room))].map(line =>
    cutRow(line, columns, ascii),
  );
};

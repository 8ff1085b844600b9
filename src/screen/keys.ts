import { row, rowWidth } from '../drawing/cells.ts';
import type { Row } from '../drawing/row.ts';
import { type Act, KEY_TABLE, type KeyPlace, type KeyRow } from './key-table.ts';
import type { Key } from './terminal/split-keys.ts';

/** A letter that one page adds to the table; at most two a page. */
export type PageKey<Own extends string = string> = Readonly<{
  char: string;
  act: Own;
  /** The word after it on the bottom row. */
  word: string;
  help: string;
  /** Writes an entry: guarded against a leaning glove. */
  writes: boolean;
}>;

/** Where a key is pressed: on a page with its own letters, in a number field or in a text field. */
export type KeyContext<Own extends string = string> = Readonly<{
  in: KeyPlace;
  own?: readonly PageKey<Own>[];
}>;

/** One key with its word on the bottom row. */
export type LineItem = Readonly<{
  act: Act | string;
  /** Instead of the table's word: "measure", "it is hand-warm". */
  words?: string;
  /** Instead of the table's key: "↑ ↓". */
  shown?: string;
}>;

/** The name of a key in the table: its sign, or the key's own name. */
export const keyId = (key: Key): string => (key.name === 'char' ? (key.char ?? '') : key.name);

const rowFor = (act: string): KeyRow | undefined => KEY_TABLE.find(candidate => candidate.act === act);

/** How the key of an act is written, as the terminal can show it. */
export const keyFor = (act: Act, ascii = false): string => {
  const found = rowFor(act);
  return found === undefined ? '' : ascii ? (found.ascii ?? found.shown) : found.shown;
};

const ownFor = <Own extends string>(key: Key, context: KeyContext<Own>): PageKey<Own> | undefined =>
  context.in === 'page' && key.name === 'char'
    ? context.own?.find(({ char }) => char === key.char)
    : undefined;

const tableRowFor = (key: Key, context: KeyContext): KeyRow | undefined =>
  KEY_TABLE.find(({ keys, places }) => places.includes(context.in) && keys.includes(keyId(key)));

/**
 * What a key asks for where it is pressed, or null when it means nothing there. A page's own letters come before the
 * table's. What was pasted is text, never an act.
 */
export const actFor = <Own extends string = never>(key: Key, context: KeyContext<Own>): Act | Own | null => {
  if (key.pasted === true) return null;
  return ownFor(key, context)?.act ?? tableRowFor(key, context)?.act ?? null;
};

/** Whether a press has to go past the leaning-glove guard: it writes, or opens what the next press would write into. */
export const writes = (key: Key, context: KeyContext): boolean =>
  (ownFor(key, context) ?? tableRowFor(key, context))?.writes ?? false;

const NAMES: Partial<Record<Key['name'], string>> = {
  space: 'Space',
  enter: 'Enter',
  esc: 'Esc',
  tab: 'Tab',
  up: '↑',
  down: '↓',
  left: '←',
  right: '→',
  back: 'Backspace',
  home: 'Home',
  end: 'End',
  'page-up': 'Page Up',
  'page-down': 'Page Down',
};

/** How a pressed key is named when something is said about it. */
export const keyName = (key: Key): string =>
  NAMES[key.name] ?? (key.name === 'char' ? (key.char ?? '') : key.name);

/**
 * What row 22 says to a key that has nothing to do here: "m: nothing to measure in this step".
 * @param because instead of the table's words, where the page knows better.
 */
export const notHere = (key: Key, context: KeyContext, because?: string): string => {
  if (key.pasted === true) return 'a paste does nothing here: open a field first';
  const found = tableRowFor(key, context);
  return `${keyName(key)}: ${because ?? found?.nothing ?? 'nothing to do here. h shows the keys'}`;
};

/** At most so many keys on the bottom row; more from the width on where a page is laid out wide. */
const MOST_KEYS = 7;
const MOST_KEYS_WIDE = 10;
const WIDE_FROM = 110;

/** How a key of the bottom row is written, and the word after it. */
export const itemText = (item: LineItem, own: readonly PageKey[], ascii: boolean): [string, string] => {
  const mine = own.find(({ act }) => act === item.act);
  const table = rowFor(item.act);
  const key = item.shown ?? mine?.char ?? (table === undefined ? '' : keyFor(table.act, ascii));
  return [
    ascii ? key.replaceAll('↑', 'Up').replaceAll('↓', 'Down') : key,
    item.words ?? mine?.word ?? table?.word ?? '',
  ];
};

/**
 * The bottom row: the keys that act now, in the order given, first the most used ones. Where they do not all fit, those
 * before the last are left out, for the last is the way to the others (help) or out; w stays, for a page says so where it has
 * shortened its words.
 */
export const bottomLine = (
  items: readonly LineItem[],
  columns: number,
  ascii = false,
  own: readonly PageKey[] = [],
): Row => {
  const most = columns >= WIDE_FROM ? MOST_KEYS_WIDE : MOST_KEYS;
  let shown = items;
  while (shown.length > most) shown = oneLess(shown);
  for (const gap of ['   ', '  ']) {
    const line = laidOut(shown, gap, own, ascii);
    if (rowWidth(line) <= columns) return line;
  }
  while (shown.length > 1) {
    shown = oneLess(shown);
    const line = laidOut(shown, '  ', own, ascii);
    if (rowWidth(line) <= columns) return line;
  }
  return [];
};

/** Without the last that can go: not the way out at the end, nor the way to the words that a page has shortened, while others can. */
const oneLess = (items: readonly LineItem[]): readonly LineItem[] => {
  const before = items.slice(0, -1);
  const out = before.findLastIndex(({ act }) => act !== 'why');
  return items.toSpliced(out < 0 ? Math.max(0, items.length - 2) : out, 1);
};

const laidOut = (items: readonly LineItem[], gap: string, own: readonly PageKey[], ascii: boolean): Row =>
  row(
    ...items.flatMap((item, index) => {
      const [key, words] = itemText(item, own, ascii);
      return [index === 0 ? ' ' : gap, key, ...(words === '' ? [] : [['quiet', ` ${words}`] as const])];
    }),
  );

import { besideRows, cutRow, padTo, row, rule, wrap } from '../drawing/cells.ts';
import type { Look, Row } from '../drawing/row.ts';
import { SIGNS, type State, signOf } from '../drawing/signs.ts';
import { KEY_TABLE, type KeyGroup } from './key-table.ts';
import { keyFor, type PageKey } from './keys.ts';

const KEY_COLUMNS = 11;
/** Below this the groups stand under each other. */
const TWO_ABREAST_FROM = 72;

const entry = (shown: string, help: string): Row => row(' ', padTo(shown, KEY_COLUMNS - 2), ' ', help);

const group = (name: KeyGroup, ascii: boolean): Row[] => [
  row(' ', ['lead', name]),
  ...KEY_TABLE.filter(({ group: itsGroup, help }) => itsGroup === name && help !== null).map(
    ({ act, help, onHelp }) => entry(onHelp?.[ascii ? 'ascii' : 'shown'] ?? keyFor(act, ascii), help ?? ''),
  ),
];

const SENTENCES = [
  'In a number w tells why and q leaves; in a note letters are letters, Esc first.',
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

/**
 * The help page below the stage strip, made from the key table and the table of signs: DO beside LOOK, GO beside LEAVE,
 * this page's own letters and the keys of a field where there is room for them.
 */
export const helpRows = (look: Look, own: readonly PageKey[] = []): Row[] => {
  const { columns, ascii } = look;
  const middle = Math.floor(columns / 2);
  const mine =
    own.length > 0
      ? [row(' ', ['lead', 'THIS PAGE']), ...own.map(({ char, help }) => entry(char, help))]
      : [];
  const pair = (left: Row[], right: Row[]): Row[] =>
    columns >= TWO_ABREAST_FROM ? besideRows(left, right, middle, ascii) : [...left, ...right];
  const text = SENTENCES.flatMap(sentence => wrap(sentence, columns - 2)).map(line => row(` ${line}`));
  const keys = [
    rule('keys that work on this page', 'Esc goes back', columns, ascii),
    ...pair(group('DO', ascii), group('LOOK', ascii)),
    ...pair(group('GO', ascii), group('LEAVE', ascii)),
  ];
  const signs = [rule('signs', '', columns, ascii), ...signRows(look)];
  const whole = [...keys, ...pair(group('IN A FIELD', ascii), mine), ...signs, ...text];
  const fitted = (rows: readonly Row[]): Row[] => rows.map(line => cutRow(line, columns, ascii));
  if (whole.length <= look.rows) return fitted(whole);
  // A field shows its own keys, so they go first on a short page; then the sentences, first to last.
  const needed = [...keys, ...mine, ...signs];
  const room = Math.max(0, look.rows - needed.length);
  return fitted([...needed, ...text.slice(Math.max(0, text.length - room))]);
};

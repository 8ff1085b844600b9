import { describe, expect, test } from 'vitest';
import { rowText, rowWidth } from '../../src/drawing/cells.ts';
import { helpRows } from '../../src/screen/help-rows.ts';
import { KEY_TABLE } from '../../src/screen/key-table.ts';
import {
  actFor,
  bottomLine,
  type KeyContext,
  keyFor,
  notHere,
  type PageKey,
  writes,
} from '../../src/screen/keys.ts';
import { type Key, splitKeys } from '../../src/screen/terminal/split-keys.ts';

const PAGE: KeyContext = { in: 'page' };
const NUMBER: KeyContext = { in: 'number' };
const TEXT: KeyContext = { in: 'text' };

const key = (sent: string): Key => splitKeys(sent).keys[0]!;

const brace: readonly PageKey<'base-held'>[] = [
  { char: 'b', act: 'base-held', word: 'base is held', help: 'the base is held to the floor', writes: true },
];

describe('the key table', () => {
  test('no key means two things in one place', () => {
    for (const place of ['page', 'number', 'text'] as const) {
      const keys = KEY_TABLE.filter(({ places }) => places.includes(place)).flatMap(({ keys: its }) => its);
      expect(new Set(keys).size, place).toBe(keys.length);
    }
  });

  test('no capital letter and no function key is asked for', () => {
    expect(KEY_TABLE.flatMap(({ keys }) => keys).filter(name => /[A-Z]|^f\d/.test(name))).toEqual([]);
  });

  test('each key on a page has words on the help page, but for the ones everybody knows', () => {
    const silent = KEY_TABLE.filter(({ help }) => help === null).map(({ act }) => act);
    expect(silent.sort()).toEqual(['erase', 'interrupt', 'previous', 'suspend']);
  });
});

describe('what a key asks for', () => {
  test('on a page letters are acts, digits are stages, the big keys do the most frequent acts', () => {
    expect(
      ['w', 'z', '4', '0', ' ', '\r', '\u001B', '\u001B[A', 'n', '?', 'i'].map(sent =>
        actFor(key(sent), PAGE),
      ),
    ).toEqual([
      'why',
      'take-back',
      'stage',
      'now',
      'tick',
      'open',
      'back',
      'previous',
      'next',
      'help',
      'hurt',
    ]);
  });

  test('in a number field digits are no acts, and of the letters only those that no number has', () => {
    expect(
      ['w', 'q', 'f', '4', '\r', '-', '\t', '\u001B', '\u0003', '\u001A'].map(sent =>
        actFor(key(sent), NUMBER),
      ),
    ).toEqual(['why', 'leave', null, null, 'keep', 'flip', 'other-way', 'close', 'close', 'suspend']);
  });

  test('in a text field only the ways out are acts', () => {
    expect(['q', ' ', '\u001B', '\u0003', '\u001A'].map(sent => actFor(key(sent), TEXT))).toEqual([
      null,
      null,
      'close',
      'close',
      'suspend',
    ]);
  });

  test("a page's own letter comes before the table's", () => {
    expect(actFor(key('b'), { in: 'page', own: brace })).toBe('base-held');
    expect(actFor(key('b'), PAGE)).toBe('builds');
    expect(actFor(key('b'), { in: 'number', own: brace })).toBe(null);
  });

  test('a paste never acts on a page', () => {
    const { keys } = splitKeys('\u001B[200~q \u001B[201~');
    expect(keys.map(each => actFor(each, PAGE))).toEqual([null, null]);
    expect(notHere(keys[0]!, PAGE)).toBe('a paste does nothing here: open a field first');
  });

  test('keys that write are guarded against a leaning glove, keys that look or move are not', () => {
    const guarded = [' ', '\r', 's', 'z', 'm', 'r', 'u'];
    const free = ['n', 'w', '\u001B[B', '4', 'q', 'h'];
    expect(guarded.map(sent => writes(key(sent), PAGE))).toEqual(guarded.map(() => true));
    expect(free.map(sent => writes(key(sent), PAGE))).toEqual(free.map(() => false));
    expect(writes(key('b'), { in: 'page', own: brace })).toBe(true);
    expect(writes(key('1'), NUMBER)).toBe(false);
    expect(writes(key('\r'), NUMBER)).toBe(true);
  });

  test('a key without a use here is answered in words', () => {
    expect(notHere(key('m'), PAGE)).toBe('m: nothing to measure in this step');
    expect(notHere(key('\u001B'), PAGE)).toBe('Esc: q leaves');
    expect(notHere(key('l'), PAGE, 'only figures can be large')).toBe('l: only figures can be large');
    expect(notHere(key('x'), PAGE)).toBe('x: nothing to do here. h shows the keys');
  });
});

describe('the bottom row', () => {
  const stage = [
    { act: 'tick' },
    { act: 'open', words: 'measure' },
    { act: 'skip' },
    { act: 'next' },
    { act: 'why' },
    { act: 'findings' },
    { act: 'help' },
  ];

  test('is made from the table, with words of the page where it has better ones', () => {
    expect(rowText(bottomLine(stage, 80))).toBe(
      ' Space tick   Enter measure   s skip   n p move   w more   f findings   h keys',
    );
  });

  test('arrows are words in ASCII', () => {
    const line = bottomLine(
      [{ act: 'keep' }, { act: 'flip' }, { act: 'reopen' }, { act: 'next', shown: '↑ ↓' }],
      80,
      true,
    );
    expect(rowText(line)).toBe(' Enter keep   - away   Up back one   Up Down move');
    expect(keyFor('reopen', true)).toBe('Up');
  });

  test("a page's own letter stands in it", () => {
    expect(rowText(bottomLine([{ act: 'base-held' }, { act: 'help' }], 80, false, brace))).toBe(
      ' b base is held   h keys',
    );
  });

  test('holds at most seven keys, and never loses the last one', () => {
    const many = [...stage.slice(0, 6), { act: 'drawing' }, { act: 'journal' }, { act: 'help' }];
    const line = rowText(bottomLine(many, 80));
    expect(line.trim().split(/ {3}/)).toHaveLength(7);
    expect(line.endsWith('h keys')).toBe(true);
    expect(rowText(bottomLine(many, 120)).trim().split(/ {3}/)).toHaveLength(9);
  });

  test('fits whatever the width', () => {
    for (let columns = 10; columns <= 130; columns += 1) {
      const line = bottomLine(stage, columns);
      expect(rowWidth(line)).toBeLessThanOrEqual(columns);
      expect(rowText(line)).toContain('h keys');
    }
  });
});

describe('the help page', () => {
  const look = { columns: 80, rows: 20, ascii: false };

  const stage = [
    { act: 'tick', words: 'set' },
    { act: 'skip' },
    { act: 'next', shown: 'n p', words: 'move' },
    { act: 'why' },
    { act: 'help' },
  ] as const;

  test('says what the keys of the page it was opened from do there, its own letters among them', () => {
    const text = helpRows({ ...look, rows: 60 }, stage, brace)
      .map(rowText)
      .join('\n');
    const [page = '', others = ''] = text.split('keys of every page');
    for (const words of [/Space {5}set/, /s {9}skip, say why/, /n p {7}move/, /b {9}the base is held/])
      expect(page).toMatch(words);
    expect(others).not.toMatch(/Space|b {9}other builds/);
    expect(text).toContain('≠ stale');
  });

  test('names every other key of the table', () => {
    const text = helpRows({ ...look, rows: 60 }, stage)
      .map(rowText)
      .join('\n');
    const named = new Set<string>(stage.map(({ act }) => act));
    for (const { act, help, group } of KEY_TABLE)
      if (help !== null && group !== 'IN A FIELD' && !named.has(act)) expect(text).toContain(help);
  });

  test('of a field has the keys of the field', () => {
    const text = helpRows(look, [{ act: 'keep' }, { act: 'flip' }, { act: 'close' }])
      .map(rowText)
      .join('\n');
    expect(text).toContain('keep the number');
    expect(text).toContain('the other side: toward or away');
  });

  test('fits the 20 rows it has below the stage strip, in 7-bit signs too', () => {
    for (const ascii of [false, true]) {
      const rows = helpRows({ ...look, ascii }, stage, brace);
      expect(rows.length).toBeLessThanOrEqual(20);
      for (const line of rows) expect(rowWidth(line)).toBeLessThanOrEqual(80);
      if (ascii) expect(rows.map(rowText).join('')).toMatch(/^[\x20-\x7E]*$/);
    }
  });
});

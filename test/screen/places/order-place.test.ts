import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compileContent } from '../../../src/making/compile-content.ts';
import { goNow } from '../../../src/screen/places/common.ts';
import type { Content } from '../../../src/words/schema.ts';
import { deskFor, type TestDesk } from '../desk-for.ts';

const content = JSON.parse(compileContent(process.cwd())) as Content;
const DOWN = '\x1b[B';
const ESC = '\x1b';

/** A desk with a metric build agreed as it comes, its order sheet open. */
const atOrder = (): TestDesk => {
  const t = deskFor(content);
  const keeper = t.desk.around.newBuild('Yard kicker', 'metric');
  if (typeof keeper === 'string') throw new Error(keeper);
  t.desk.open(keeper);
  t.desk.act({ do: 'agree' });
  goNow(t.desk);
  t.press('o');
  return t;
};
const typed = (t: TestDesk, number: string): void => t.press(...number, '\r');

describe('the order sheet at the bench', () => {
  test('Page Down skips no row', () => {
    const t = atOrder();
    const rows = (): [number, number] => {
      const [, from, to] = /rows (\d+) to (\d+)/.exec(t.text()) ?? [];
      return [Number(from), Number(to)];
    };
    const [, seen] = rows();
    expect(seen).toBeGreaterThan(0);
    t.press('\x1b[6~');
    expect(rows()[0]).toBeGreaterThan(1);
    expect(rows()[0]).toBeLessThanOrEqual(seen + 1);
  });

  test('c: a price typed once stands in the sheet, and z takes it back', () => {
    const t = atOrder();
    expect(t.text()).toContain('order sheet');
    t.press('c', '\r');
    typed(t, '38.5');
    expect(t.text()).toContain('38.50');
    t.press('z');
    expect(t.text()).toContain('Taken back in the shop.');
    expect(t.text()).not.toContain('38.50');
  });

  test('c: a wood saw is refused, with why', () => {
    const t = atOrder();
    t.press('c');
    for (let i = 0; i < 40 && !/▸ saw that cuts/.test(t.text()); i++) t.press(DOWN);
    for (let i = 0; i < 6; i++) t.press('\r');
    expect(t.text()).toContain('A wood saw: no.');
    expect(t.text()).toMatch(/▸ saw that cuts the bars +grinder/);
  });

  test('c: minutes are asked for what was done, and the hours left stand there', () => {
    const t = atOrder();
    t.press('c');
    for (let i = 0; i < 40 && !/▸ minutes of one slit/.test(t.text()); i++) t.press(DOWN);
    expect(t.text()).toMatch(/minutes of one slit.* 3 to 9 min, usual/);
    t.press('\r');
    expect(t.text()).toContain('None was done since minutes were last typed.');
    for (let i = 0; i < 4; i++) t.press(DOWN);
    expect(t.text()).toMatch(/left to do in the whole build +\d+ to \d+ h/);
  });

  test('x: an offcut is typed, used, and said to be gone', () => {
    const t = atOrder();
    t.press('x', '\r');
    typed(t, '5000');
    expect(t.text()).toContain('5000 mm');
    t.press(ESC);
    expect(t.text()).toContain('offcut, 5000 mm');
    t.press('x', DOWN, ' ', ESC);
    expect(t.text()).not.toContain('offcut, 5000 mm');
  });

  test('Space: bars are noted as bought, and nothing is left to buy; z undoes it', () => {
    const t = atOrder();
    expect(t.text()).toContain('Take this to the steel yard');
    t.press(' ');
    expect(t.text()).toContain('noted as bought');
    expect(t.text()).toContain('Nothing is left to buy');
    t.press('z');
    expect(t.text()).toContain('Take this to the steel yard');
  });

  test('e: a text and a CSV file beside the build, never over another', () => {
    const t = atOrder();
    t.press('e', 'e');
    const folder = t.folder;
    for (const name of ['order.txt', 'order.csv', 'order-2.txt', 'order-2.csv'])
      expect(existsSync(join(folder, `yard-kicker-${name}`))).toBe(true);
    expect(readFileSync(join(folder, 'yard-kicker-order.txt'), 'utf8')).toContain('curved rail');
  });

  test('Enter: cutting bar by bar, the first piece lit; Esc goes back', () => {
    const t = atOrder();
    t.press('\r');
    expect(t.text()).toMatch(/◌ WAITS {2}Cut curved rail A/);
    t.press(DOWN);
    expect(t.text()).toMatch(/◌ WAITS {2}Cut curved rail B/);
    t.press(ESC);
    expect(t.text()).toContain('order sheet');
  });

  test('Enter on a piece that waits says what comes first before anybody has typed', () => {
    const t = atOrder();
    t.press('\r', '\r');
    expect(t.text()).toContain('waits for another step');
    expect(t.text()).not.toContain('typed');
    // A length typed all the same leads nowhere.
    t.press('6', '5');
    expect(t.text()).toContain('Enter first, then the length.');
    expect(t.text()).toContain('its pieces, in the order of the saw');
  });

  test('a strip of the deck is cut like any piece: its sheet keeps what is left', () => {
    const t = atOrder();
    t.press('\r');
    for (let i = 0; i < 80 && !/Cut deck strip 1\.1/.test(t.text()); i++) t.press(DOWN);
    const left = /deck strip 1\.1 +([\d.]+)/i.exec(t.text())?.[1] ?? '';
    t.press('\r');
    typed(t, left);
    expect(t.text()).not.toMatch(/NEXT {2}Cut deck strip 1\.1/);
    t.press(ESC);
    expect(t.text()).toContain('order sheet');
    t.press('\r');
    for (let i = 0; i < 80; i++) t.press(DOWN);
    expect(t.text()).not.toMatch(/DECK STRIP 1\.1/);
  });

  test('s ends the search, and the plan that stands stays', () => {
    const bars = (t: TestDesk): string[] =>
      t
        .text()
        .split('\n')
        .filter(l => /^ \d/.test(l));
    const t = atOrder();
    // With an offcut that costs nothing the plan at once proves nothing.
    t.press('x', '\r');
    typed(t, '2400');
    t.press(ESC);
    // The desk of this test thinks nothing through: the search waits, and s ends it.
    const before = bars(t);
    t.press('s');
    expect(t.text()).toContain('The search is ended.');
    expect(bars(t)).toEqual(before);
    t.press('s');
    expect(t.text()).toContain('no search is running');
  });
});

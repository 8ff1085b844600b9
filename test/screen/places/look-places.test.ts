import { describe, expect, test } from 'vitest';
import { WORDS } from '../../stages/word-gaps.ts';
import { deskFor, openDemo } from '../desk-for.ts';

const atDemo = () => {
  const t = deskFor(WORDS);
  openDemo(t, 'mill-lane-launch');
  t.press('\r');
  return t;
};

describe('the words of the trade', () => {
  test('are counted by the word: as many as are seen, of as many as there are', () => {
    const t = atDemo();
    t.press('w', 'g');
    const page = t.text();
    const [, first, last, all] = /words ─+ (\d+) to (\d+) of (\d+)/.exec(page)?.map(Number) ?? [];
    const seen = page.split('\n').filter(line => /^ [a-z]/i.test(line) && /^ .{19} /.test(line));
    const words = Object.keys(WORDS.glossary);
    expect(all).toBe(words.length);
    expect(first).toBe(1);
    expect(seen.filter(line => words.includes(line.slice(1, 21).trim()))).toHaveLength(last ?? 0);
  });

  test('end with the last word', () => {
    const t = atDemo();
    t.press('w', 'g', ...Array.from({ length: 60 }, () => '\u001B[B'));
    const count = Object.keys(WORDS.glossary).length;
    expect(t.text()).toMatch(new RegExp(` to ${count} of ${count} `));
  });
});

describe('help', () => {
  test('from the design has the keys of the design, and from a stage page the key to it', () => {
    const t = atDemo();
    t.press('h');
    expect(t.text().split('keys of every page')[0]).toMatch(/c {9}change the design/);
    t.press('\u001B', 'c', 'h');
    expect(t.text().split('keys of every page')[0]).toMatch(/Enter {5}change the lit one/);
  });

  test('from the cutting of a bar has the letters of that page', () => {
    const t = atDemo();
    t.press('o', '\r', 'h');
    expect(t.text().split('keys of every page')[0]).toMatch(/k {9}keep the ends/);
  });
});

test('a step that can be done before its turn is no NEXT', () => {
  const t = atDemo();
  t.press('7');
  expect(t.desk.view.next?.stage).toBe('plan');
  expect(t.text()).not.toMatch(/▸ (?:NEXT|MEASURE)|▸ next/);
  expect(t.desk.message).toContain('7 is the stage assemble. 0 goes back');
  t.press('0');
  expect(t.text()).toContain('▸ MEASURE');
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { asciiText, toAscii } from '../../src/drawing/ascii-twin.ts';
import { joinSides, row, rowText, rowWidth } from '../../src/drawing/cells.ts';
import type { Row } from '../../src/drawing/row.ts';
import { SIGNS } from '../../src/drawing/signs.ts';

const twin = (line: Row, columns?: number): string => rowText(toAscii([line], columns)[0]!);

const any = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.string({ unit: 'binary' }),
  fc.constantFrom('45.6°', '→', '±0.3', '⣠⠞⠂', '日本', '══', '\u{1F600}'),
);

describe('the ASCII twin', () => {
  test('each state sign has its own letter', () => {
    const letters = Object.values(SIGNS).map(({ ascii }) => ascii);
    expect(new Set(letters).size).toBe(letters.length);
    expect(twin(row(...Object.values(SIGNS).map(({ sign }) => sign)))).toBe(letters.join(''));
  });

  test('a page row of signs and strokes stays as wide as it was', () => {
    expect(twin(row(' 1 plan ━ 2 cut ─ 3 prep ▸ ◂ ⣠⠞⠂'))).toBe(' 1 plan = 2 cut - 3 prep > < _--');
  });

  test('roles stay with their signs', () => {
    expect(toAscii([row(['settled', '✓ done'], ' ', ['quiet', '· to do'])])[0]).toEqual([
      { text: 'x done', role: 'settled' },
      { text: ' ' },
      { text: '. to do', role: 'quiet' },
    ]);
  });

  test('"°" is spelled out, and the spaces after it keep the columns where they were', () => {
    expect(twin(row('exit 45.6°      run 2142'))).toBe('exit 45.6 deg   run 2142');
    expect(twin(row('45.6°'), 80)).toBe('45.6 deg');
    expect(twin(row('14.0 °C   x'))).toBe('14.0 deg C x');
  });

  test('a right-aligned degree takes its room from the spaces before it', () => {
    const line = joinSides(' exit angle', '45.6°', 40);
    expect(twin(line, 40)).toBe(' exit angle                     45.6 deg');
  });

  test('a rule gives way before its label is cut', () => {
    expect(twin(row('── to 45° ────────── lip ──'), 27)).toBe('-- to 45 deg ------- lip --');
  });

  test('without room one sign stands for the word', () => {
    expect(twin(row('45°'), 3)).toBe('45d');
    expect(twin(row('a→b'), 3)).toBe('a>b');
  });

  test('letters of other languages lose their marks, what has no letter is a question mark for each cell', () => {
    expect(twin(row('Bäckström Ølé 日'))).toBe('Backstrom Ole ??');
  });

  test('whatever is on a page, its twin is 7-bit and no wider than the terminal', () => {
    fc.assert(
      fc.property(fc.array(any, { maxLength: 5 }), fc.integer({ min: 10, max: 100 }), (parts, columns) => {
        const line = row(...parts);
        const written = twin(line, columns);
        expect(written).toMatch(/^[\x20-\x7E]*$/);
        expect(written.length).toBeLessThanOrEqual(Math.max(columns, rowWidth(line)));
      }),
    );
  });

  test('a row without long words keeps its width exactly', () => {
    fc.assert(
      fc.property(fc.array(any, { maxLength: 5 }), parts => {
        const line = row(...parts.map(part => part.replace(/[°→±≤≥…]/g, '')));
        expect(twin(line).length).toBe(rowWidth(line));
      }),
    );
  });

  test('a bare text is free to grow', () => {
    expect(asciiText('45.6° → 30 °C, ≤ 2')).toBe('45.6 deg -> 30 deg C, <= 2');
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { plainText } from '../../src/build/plain-text.ts';

describe('text from outside', () => {
  test.each([
    ['colour', '\x1b[31mred\x1b[0m kicker', 'red kicker'],
    ['an 8-bit colour', '\x9b1;31mred', 'red'],
    ['a window title', '\x1b]0;owned\x07kicker', 'kicker'],
    ['a title closed the other way', '\x1b]2;owned\x1b\\kicker', 'kicker'],
    ['an 8-bit title', '\x9d0;owned\x9ckicker', 'kicker'],
    ['a clipboard write', '\x1b]52;c;cm0gLXJm\x07kicker', 'kicker'],
    ['a device string', '\x1bP1$tx\x1b\\kicker', 'kicker'],
    ['cursor moves and clears', 'a\x1b[2J\x1b[Hb\x1bcd\x1b7e\x1b(Bf', 'abdef'],
    ['bell, backspace, nul, del', 'a\x07b\bc\0d\x7fe', 'abcde'],
    ['a lone escape at the end', 'kicker\x1b', 'kicker'],
    ['a bracketed paste', '\x1b[200~63 1/2\x1b[201~', '63 1/2'],
  ])('loses %s', (_, typed, kept) => expect(plainText(typed)).toBe(kept));

  test('a title that never ends costs the opening, not the rest', () => {
    expect(plainText('\x1b]0;the note goes on')).toBe('0;the note goes on');
  });

  test('loses marks that turn or hide writing', () => {
    expect(plainText('ab\u202egnp.exe\u202c \u2066x\u2069\u200b\ufeffy\u00adz\u{e0041}')).toBe(
      'abgnp.exe xyz',
    );
  });

  test('keeps letters, signs and the joiners of other scripts', () => {
    for (const kept of ['Größe ½ “ok” — 63°', 'রাস্তা', 'کتاب‌ها', '日本', '“é”'])
      expect(plainText(kept)).toBe(kept.normalize('NFC'));
  });

  test('is one line', () =>
    expect(plainText('first\r\n\r\nsecond\tthird\u2028fourth')).toBe('first second third fourth'));

  test('is the same when done twice, and holds no control or turning mark, whatever came in', () => {
    const wild = fc.array(
      fc.oneof(
        fc.constantFrom(
          '\x1b',
          '\x1b[',
          '\x1b]',
          '\x07',
          '\x9b',
          '\x9c',
          '[',
          ';',
          'm',
          '0',
          '\\',
          '\u202e',
          '\ud800',
          '\n',
          '\u0301',
        ),
        fc.string({ unit: 'binary', maxLength: 3 }),
      ),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(wild, parts => {
        const plain = plainText(parts.join(''));
        expect(plain).not.toMatch(/[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\u2028\u2029\p{Cs}]/u);
        expect(plainText(plain)).toBe(plain);
      }),
      { numRuns: 500 },
    );
  });
});

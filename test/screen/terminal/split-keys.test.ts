import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Key, splitKeys } from '../../../src/screen/terminal/split-keys.ts';

const names = (chunk: string): string[] =>
  splitKeys(chunk).keys.map(({ name, char }) => (name === 'char' ? char! : name));

describe('one chunk, several keys', () => {
  test('quick typing and Enter in one chunk', () => {
    expect(names('12.5\r')).toEqual(['1', '2', '.', '5', 'enter']);
  });

  test('carriage return, line feed and both are one Enter each', () => {
    expect(names('\r')).toEqual(['enter']);
    expect(names('\n')).toEqual(['enter']);
    expect(names('a\r\nb\r\r')).toEqual(['a', 'enter', 'b', 'enter', 'enter']);
  });

  test('Backspace, Delete and Ctrl-H are one key', () => {
    expect(names('\u007F\b\u001B[3~')).toEqual(['back', 'back', 'back']);
  });

  test('arrows in both their forms, Home, End, Page Up, Page Down', () => {
    expect(names('\u001B[A\u001BOA\u001B[B\u001B[C\u001B[D')).toEqual(['up', 'up', 'down', 'right', 'left']);
    expect(names('\u001B[H\u001B[4~\u001B[5~\u001B[6~')).toEqual(['home', 'end', 'page-up', 'page-down']);
  });

  test('Escape alone, and Escape before a letter, is a key of its own', () => {
    expect(names('\u001B')).toEqual(['esc']);
    expect(names('\u001Bw')).toEqual(['esc', 'w']);
    expect(names('\u001B\u001B')).toEqual(['esc', 'esc']);
  });

  test('Space is a key and a sign', () => {
    expect(splitKeys(' ').keys).toEqual([{ name: 'space', char: ' ' }]);
  });

  test('Ctrl-C, Ctrl-Z and Tab; other control characters, F-keys and mouse reports are dropped', () => {
    expect(names('\u0003\u001A\t')).toEqual(['ctrl-c', 'ctrl-z', 'tab']);
    expect(names('\u0001\u0007\u001B[15~\u001BOP\u001B[M\u001B[<0;3;4M')).toEqual([]);
  });

  test('signs outside the basic plane stay whole', () => {
    expect(names('é\u{1F527}½')).toEqual(['é', '\u{1F527}', '½']);
  });
});

describe('a paste the terminal announces', () => {
  test('its marks are dropped, its line ends are signs, and no key of it acts', () => {
    const { keys, pasting } = splitKeys('a\u001B[200~1\r\n2\t3\u0003\u001B[201~b');
    expect(pasting).toBe(false);
    expect(keys.map(({ name, char, pasted }) => [name, char, pasted === true])).toEqual([
      ['char', 'a', false],
      ['char', '1', true],
      ['char', '\n', true],
      ['char', '2', true],
      ['space', '\t', true],
      ['char', '3', true],
      ['char', 'b', false],
    ]);
  });

  test('it may go over several chunks, and arrive without the escape sign, as Ink hands it on', () => {
    const first = splitKeys('[200~');
    expect(first).toEqual({ keys: [], pasting: true });
    const second = splitKeys('12', first.pasting);
    expect(second.keys.every(({ pasted }) => pasted === true)).toBe(true);
    expect(splitKeys('[201~', second.pasting)).toEqual({ keys: [], pasting: false });
  });

  test('a bracket typed is a bracket', () => {
    expect(names('[2')).toEqual(['[', '2']);
  });
});

test('no chunk of anything gives a key with a control character, or takes for ever', () => {
  const sent = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.constantFrom('\u001B[', '\u001B[200~', '\u001B[201~', '\u001BO', '\u001B[1;5A', '\r\n'),
  );
  fc.assert(
    fc.property(fc.array(sent, { maxLength: 8 }), fc.boolean(), (chunks, pasting) => {
      const { keys } = splitKeys(chunks.join(''), pasting);
      const bad = (key: Key): boolean =>
        key.char !== undefined &&
        key.char !== '\n' &&
        key.char !== '\t' &&
        /[\u0000-\u001F\u007F-\u009F]/.test(key.char);
      expect(keys.filter(bad)).toEqual([]);
    }),
  );
});

import fc from 'fast-check';
import { render } from 'ink-testing-library';
import { describe, expect, test } from 'vitest';
import { TextField } from '../../../src/screen/fields/text-field.tsx';
import { parts, type TypedLine, typedLine, typeInto } from '../../../src/screen/fields/typed-line.ts';
import { splitKeys } from '../../../src/screen/terminal/split-keys.ts';

/** The line after a chunk as a terminal sends it; keys that are not the line's own end it. */
const typing = (sent: string, before: TypedLine = typedLine()): TypedLine =>
  splitKeys(sent).keys.reduce((line, key) => typeInto(line, key) ?? line, before);

describe('one line of text', () => {
  test('takes every key of a chunk', () => {
    expect(typing('The quick brown fox').text).toBe('The quick brown fox');
    expect(typing('ab\u007F\u007Fbattery flat').text).toBe('battery flat');
  });

  test('the cursor goes back, to either end, and writes and rubs out where it stands', () => {
    expect(typing('hose 2\u001B[D\u001B[D\u001B[D\u001B[Dr').text).toBe('horse 2');
    expect(typing('bc\u001B[Ha\u001B[Fd')).toEqual({ text: 'abcd', at: 4 });
    expect(typing('abc\u001B[D\u007F').text).toBe('ac');
  });

  test('a paste keeps its words and loses its marks, line ends and control characters', () => {
    expect(typing('\u001B[200~two\r\nlines\u0007\u001B[201~').text).toBe('two lines');
  });

  test('Enter, Esc, Ctrl-C and Ctrl-Z are not its own', () => {
    for (const name of ['enter', 'esc', 'ctrl-c', 'ctrl-z'] as const)
      expect(typeInto(typedLine('x'), { name })).toBeNull();
  });

  test('a sign of several code points is one, and the cursor never falls inside it', () => {
    const flag = typing('a👩‍🔧b');
    expect(typeInto(typeInto(flag, { name: 'left' }) ?? flag, { name: 'back' })?.text).toBe('ab');
  });

  test('whatever is typed, the cursor stands in the text and the parts make it up', () => {
    const key = fc.oneof(
      fc.constantFrom('left', 'right', 'home', 'end', 'back', 'space', 'tab', 'up').map(name => ({ name })),
      fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }).map(char => ({ name: 'char', char })),
    );
    fc.assert(
      fc.property(fc.array(key, { maxLength: 30 }), keys => {
        const line = keys.reduce((l, k) => typeInto(l, k as never) ?? l, typedLine());
        expect(parts(line).join('')).toBe(line.text);
        expect(line.at).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('a text field', () => {
  test('shows its title, the text and the end of a long one', () => {
    const shown = (text: string): string =>
      render(<TextField title="Why:" line={typedLine(text)} columns={40} />).lastFrame() ?? '';
    expect(shown('battery flat').trimEnd()).toBe(' Why: battery flat');
    const long = shown(`${'x'.repeat(60)} the end`);
    expect(long).toContain('the end');
    expect(long.length).toBeLessThanOrEqual(40);
  });
});

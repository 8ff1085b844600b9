import { describe, expect, test } from 'vitest';
import { asciiOnly, canPaint, colourFor, type Surroundings } from '../../../src/screen/terminal/can-paint.ts';

const at = (env: Record<string, string>, more: Partial<Surroundings> = {}): Surroundings => ({
  env,
  stdinIsTerminal: true,
  stdoutIsTerminal: true,
  ...more,
});

describe('whether pages can be painted', () => {
  test('on a terminal, yes', () => {
    expect(canPaint(at({ TERM: 'xterm' }))).toEqual({ paint: true });
  });

  test.each([
    ['output to a pipe', at({}, { stdoutIsTerminal: false })],
    ['keys from a pipe', at({}, { stdinIsTerminal: false })],
    ['a terminal that cannot place text', at({ TERM: 'dumb' })],
    ['CI', at({ CI: 'true' })],
    ['an empty CI, as the Ink library takes it', at({ CI: '' })],
  ])('%s: no, with a reason', (_, surroundings) => {
    expect(canPaint(surroundings)).toEqual({ paint: false, because: expect.stringMatching(/\w/) });
  });

  test('CI set to false is no CI', () => {
    expect(canPaint(at({ CI: 'false', CONTINUOUS_INTEGRATION: '0' }))).toEqual({ paint: true });
  });
});

describe('whether only 7-bit signs may be used', () => {
  test.each([
    [{ LANG: 'en_GB.UTF-8' }, false],
    [{ LANG: 'C.utf8' }, false],
    [{ LANG: 'C' }, true],
    [{ LANG: 'en_GB.UTF-8', LC_ALL: 'C' }, true],
    [{ LANG: 'C', LC_CTYPE: 'en_GB.UTF-8' }, false],
    [{ LC_ALL: '', LANG: 'en_GB.UTF-8' }, false],
    [{}, true],
    [{ LANG: 'en_GB.UTF-8', TERM: 'linux' }, true],
  ])('%j: %s', (env, ascii) => {
    expect(asciiOnly(at(env), false)).toBe(ascii);
  });

  test('asked for, always', () => {
    expect(asciiOnly(at({ LANG: 'en_GB.UTF-8' }), true)).toBe(true);
  });

  test('Windows has no locale variables; its newer terminal shows all signs', () => {
    expect(asciiOnly(at({ WT_SESSION: 'x' }, { windows: true }), false)).toBe(false);
    expect(asciiOnly(at({}, { windows: true }), false)).toBe(true);
  });
});

describe('how many colours', () => {
  test.each([
    [{ TERM: 'xterm-256color' }, '256'],
    [{ TERM: 'xterm', COLORTERM: 'truecolor' }, '256'],
    [{ TERM: 'xterm' }, '16'],
    [{ TERM: 'xterm-256color', NO_COLOR: '1' }, 'none'],
    [{ TERM: 'xterm', NO_COLOR: '' }, '16'],
    [{ TERM: 'xterm-256color', NO_COLOR: '1', FORCE_COLOR: '3' }, 'none'],
    [{ TERM: 'xterm-256color', FORCE_COLOR: '0' }, 'none'],
    [{ TERM: 'dumb' }, 'none'],
  ])('%j: %s', (env, colour) => {
    expect(colourFor(at(env))).toBe(colour);
  });

  test('none into a pipe, unless asked for', () => {
    expect(colourFor(at({ TERM: 'xterm-256color' }, { stdoutIsTerminal: false }))).toBe('none');
    expect(colourFor(at({ TERM: 'xterm', FORCE_COLOR: '1' }, { stdoutIsTerminal: false }))).toBe('16');
  });
});

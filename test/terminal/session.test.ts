import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTerminal, type RealTerminal } from './real-terminal.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

let folder = '';
let bench = '';

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'curvewright-session-'));
  bench = join(folder, 'bench.mjs');
  await build({
    entryPoints: [here('fixtures/session-bench.tsx')],
    outfile: bench,
    bundle: true,
    platform: 'node',
    format: 'esm',
    jsx: 'automatic',
    define: { 'process.env.NODE_ENV': '"production"' },
    alias: { 'react-devtools-core': here('../../src/screen/terminal/no-devtools.ts') },
    banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
    logLevel: 'error',
  });
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

const start = (env: Record<string, string> = {}): RealTerminal =>
  openTerminal({ command: process.execPath, args: [bench], env });

/** A terminal with a bench that listens. */
const started = async (env: Record<string, string> = {}): Promise<RealTerminal> => {
  const terminal = start(env);
  await terminal.until(/bench 80 x 24/);
  return terminal;
};

const cursorIsShown = (terminal: RealTerminal): boolean => {
  const bytes = terminal.rawBytes();
  return bytes.lastIndexOf('\u001B[?25h') > bytes.lastIndexOf('\u001B[?25l');
};

describe('the terminal is given back', () => {
  test('after leaving: ordinary screen, cursor, code 0', async () => {
    const terminal = await started();
    expect(terminal.isAlternate()).toBe(true);
    terminal.press('q');
    expect(await terminal.exit).toBe(0);
    expect(terminal.isAlternate()).toBe(false);
    expect(cursorIsShown(terminal)).toBe(true);
    expect(terminal.text().join('\n')).toContain('left with 0');
    expect(terminal.text().join('\n')).not.toContain('bench');
  });

  test('after Ctrl-C: code 130', async () => {
    const terminal = await started();
    terminal.press('ctrl-c');
    expect(await terminal.exit).toBe(130);
    expect(terminal.text().join('\n')).toContain('left with 130');
    expect(terminal.isAlternate()).toBe(false);
  });

  test.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ])('after %s: code %i, alternate screen left once', async (signal, code) => {
    const terminal = await started();
    terminal.kill(signal);
    expect(await terminal.exit).toBe(code);
    // The program ended in its own time and was not ended by the signal: it could still say its last words.
    expect(terminal.text().join('\n')).toContain(`left with ${code}`);
    expect(terminal.isAlternate()).toBe(false);
    expect(cursorIsShown(terminal)).toBe(true);
    expect(terminal.rawBytes().split('\u001B[?1049l')).toHaveLength(2);
    expect(terminal.rawBytes().split('\u001B[?2004l')).toHaveLength(2);
  });

  test.each([
    ['t', 'while drawing'],
    ['x', 'from a timer'],
  ])('after a fault (%s): code 70, and the ordinary screen says where the data is', async (key, fault) => {
    const terminal = await started();
    terminal.press(key);
    expect(await terminal.exit).toBe(70);
    expect(terminal.isAlternate()).toBe(false);
    const screen = terminal.text().join('\n');
    expect(screen).toContain('a fault of the program, not of your work');
    expect(screen).toContain('Your build is in ~/builds.');
    expect(screen).toContain(fault);
  });

  test('after the window was closed: an orderly end, no abort on the lost terminal', async () => {
    const lastWords = join(folder, 'last-words');
    const terminal = await started({ LAST_WORDS: lastWords });
    terminal.hangUp();
    expect(await terminal.exit).toBe(129);
    expect(readFileSync(lastWords, 'utf8')).toBe('left with 129');
  });

  test('a screen reader keeps the ordinary screen all the time', async () => {
    const terminal = await started({ INK_SCREEN_READER: 'true' });
    expect(terminal.isAlternate()).toBe(false);
    terminal.press('q');
    expect(await terminal.exit).toBe(0);
    expect(terminal.rawBytes()).not.toContain('\u001B[?1049');
  });
});

describe('Ctrl-Z', () => {
  test('gives the shell its screen, and the whole page is drawn again after fg', async () => {
    const terminal = openTerminal({
      command: 'bash',
      args: ['--norc', '--noprofile', '-i'],
      env: { PS1: 'shell> ', BENCH: bench, NODE: process.execPath },
    });
    await terminal.until(/shell> /);
    terminal.type('"$NODE" "$BENCH"\r');
    await terminal.until(/bench 80 x 24/);
    terminal.press('a');
    await terminal.until(/keys "a"/);

    terminal.press('ctrl-z');
    await terminal.until(
      screen => /Stopped/.test(screen) && /shell> $/.test(screen.trimEnd().concat(' ')),
      'the prompt of the shell',
    );
    expect(terminal.isAlternate()).toBe(false);
    expect(terminal.text().join('\n')).not.toContain('bench 80 x 24');

    terminal.resize(90, 30);
    terminal.type('fg\r');
    await terminal.until(
      screen => terminal.isAlternate() && /bench 90 x 30/.test(screen) && /keys "a"/.test(screen),
      'the page in its new size',
    );
    terminal.press('b');
    await terminal.until(/keys "a" ctrl-z "b"/);
    terminal.press('q');
    await terminal.until(/left with 0/);
    expect(terminal.isAlternate()).toBe(false);
    terminal.type('exit\r');
    await terminal.exit;
  });

  test('where no shell could continue it, the bench stays instead of freezing', async () => {
    const terminal = await started();
    terminal.press('ctrl-z');
    await terminal.until(
      screen =>
        terminal.isAlternate() &&
        /keys ctrl-z/.test(screen) &&
        terminal.rawBytes().split('\u001B[?1049h').length === 3,
      'the bench again',
    );
    terminal.press('b');
    await terminal.until(/keys ctrl-z "b"/);
    terminal.press('q');
    expect(await terminal.exit).toBe(0);
  });
});

describe('keys from a real terminal', () => {
  test('a chunk of several keys is several keys', async () => {
    const terminal = await started();
    terminal.type('12.5\r');
    await terminal.until(/keys "1" "2" "\." "5" enter/);
    // Row by row: a frame painted a row too low would leave the row above it standing.
    expect(terminal.text().slice(0, 3)).toEqual(['bench 80 x 24', 'keys "1" "2" "." "5" enter', '']);
    terminal.press('q');
    await terminal.exit;
  });

  test('arrows, space, Backspace and Delete, Escape', async () => {
    const terminal = await started();
    terminal.type('\u001B[A');
    await terminal.until(/keys up/);
    terminal.press('space', 'back', 'delete', 'tab');
    await terminal.until(/keys up space back back tab/);
    terminal.press('esc');
    await terminal.until(/tab esc/);
    terminal.press('q');
    await terminal.exit;
  });

  test('a paste is announced, and is text', async () => {
    const terminal = await started();
    terminal.type('\u001B[200~1\r2\u001B[201~3');
    await terminal.until(/keys p:"1" p:"\\n" p:"2" "3"/);
    terminal.press('q');
    await terminal.exit;
  });

  test('the page follows the size of the window', async () => {
    const terminal = await started();
    terminal.resize(100, 30);
    await terminal.until(/bench 100 x 30/);
    terminal.resize(60, 15);
    await terminal.until(/bench 60 x 15/);
    expect(terminal.text().slice(0, 3)).toEqual(['bench 60 x 15', 'keys', '']);
    terminal.press('q');
    await terminal.exit;
  });
});

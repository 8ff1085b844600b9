import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { existsSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { openTerminal, type RealTerminal } from './real-terminal.ts';

export const ROOT = resolve(import.meta.dirname, '../..');
const MAIN = join(ROOT, 'dist', 'main.js');

/** A new empty folder for builds. */
export const newFolder = (): string => mkdtempSync(join(tmpdir(), 'curvewright-test-'));

export type Ran = Readonly<{ code: number | null; out: string; err: string }>;

const environment = (folder: string, more: Record<string, string> = {}): Record<string, string> => {
  const env: Record<string, string> = {
    ...(process.env as Record<string, string>),
    XDG_CONFIG_HOME: join(folder, 'config'),
    XDG_CACHE_HOME: join(folder, 'cache'),
    TZ: 'UTC',
    ...more,
  };
  // Under CI the program would print instead of paint.
  delete env.CI;
  delete env.CONTINUOUS_INTEGRATION;
  return env;
};

/** Starts the built program as a command, for whoever does something to its pipes. */
export const start = (folder: string, args: readonly string[]): ChildProcessWithoutNullStreams =>
  spawn(process.execPath, [MAIN, '--sessions', folder, ...args], { env: environment(folder) });

/** Runs the built program as a command. */
export const run = (folder: string, args: readonly string[], input = ''): Promise<Ran> => {
  if (!existsSync(MAIN)) throw new Error('dist/main.js is missing: npm run build');
  return new Promise(done => {
    const child = start(folder, args);
    let out = '';
    let err = '';
    child.stdout.on('data', d => {
      out += d;
    });
    child.stderr.on('data', d => {
      err += d;
    });
    child.on('close', code => done({ code, out, err }));
    child.stdin.on('error', () => {});
    child.stdin.end(input);
  });
};

/** Opens the bench in a real pseudo-terminal. */
export const openBench = (
  folder: string,
  size: { cols?: number; rows?: number } = {},
  args: readonly string[] = [],
  env: Record<string, string> = {},
): RealTerminal =>
  openTerminal({
    command: process.execPath,
    args: [MAIN, '--sessions', folder, ...args],
    cols: size.cols ?? 80,
    rows: size.rows ?? 24,
    env: environment(folder, { TERM: 'xterm-256color', LANG: 'C.UTF-8', CURVEWRIGHT_GLOVE: 'off', ...env }),
    cwd: ROOT,
  });

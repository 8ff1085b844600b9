import { readFileSync } from 'node:fs';
import { spawn } from '@lydell/node-pty';

/** The value in the middle, and the one that 95 of 100 are below. */
export const median = (list: readonly number[]): number =>
  [...list].sort((a, b) => a - b)[Math.floor(list.length / 2)] ?? 0;
export const p95 = (list: readonly number[]): number =>
  [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(list.length * 0.95))] ?? 0;

const environment = (own: string): Record<string, string> => {
  const env: Record<string, string> = {
    ...(process.env as Record<string, string>),
    XDG_CONFIG_HOME: own,
    XDG_CACHE_HOME: own,
    TERM: 'xterm-256color',
    LANG: 'C.UTF-8',
    CURVEWRIGHT_GLOVE: 'off',
  };
  delete env.CI;
  return env;
};

/** Resident memory of a process, MB (Linux; null elsewhere). */
const memory = (pid: number): number | null => {
  try {
    const line = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'));
    return line === null ? null : Number(line[1]) / 1024;
  } catch {
    return null;
  }
};

export type Run = Readonly<{
  start_ms: number;
  keys_ms: readonly number[];
  bytes: readonly number[];
  memory_MB: number | null;
}>;

/** Starts the bench and leaves it as a person does, so that later starts find what a first one keeps; `own` is a folder for that. */
export const startAndLeave = (args: readonly string[], first: RegExp, own: string): Promise<void> =>
  new Promise((done, failed) => {
    const term = spawn(process.execPath, [...args], { cols: 80, rows: 24, env: environment(own) });
    let seen = '';
    const giveUp = setTimeout(() => failed(new Error(`no frame: ${seen.slice(-400)}`)), 30_000);
    let asked = false;
    term.onData(data => {
      seen += data;
      if (asked || !first.test(seen)) return;
      asked = true;
      term.write('q');
    });
    term.onExit(() => {
      clearTimeout(giveUp);
      done();
    });
  });

/** Starts a program in a pseudo-terminal, waits for its first frame, presses keys one by one, each after the last one's frame. */
export const runOnce = (
  args: readonly string[],
  first: RegExp,
  keys: readonly string[],
  own: string,
): Promise<Run> =>
  new Promise((done, failed) => {
    const started = performance.now();
    const term = spawn(process.execPath, [...args], { cols: 80, rows: 24, env: environment(own) });
    let seen = '';
    let start_ms = 0;
    let at = -1;
    let pressed = 0;
    let bytes = 0;
    let quiet: NodeJS.Timeout | null = null;
    let answered = 0;
    const keys_ms: number[] = [];
    const size: number[] = [];
    const giveUp = setTimeout(() => failed(new Error(`no frame: ${seen.slice(-400)}`)), 30_000);
    const next = (): void => {
      if (at >= 0) {
        keys_ms.push(answered - pressed);
        size.push(bytes);
      }
      at++;
      const key = keys[at];
      if (key === undefined) {
        const memory_MB = memory(term.pid);
        clearTimeout(giveUp);
        term.onExit(() => done({ start_ms, keys_ms, bytes: size, memory_MB }));
        term.kill('SIGKILL');
        return;
      }
      bytes = 0;
      answered = 0;
      pressed = performance.now();
      term.write(key);
    };
    term.onData(data => {
      if (start_ms === 0) {
        seen += data;
        if (!first.test(seen)) return;
        start_ms = performance.now() - started;
      } else {
        bytes += data.length;
        // The first bytes after a key are its frame; the rest of it comes in the same moment.
        if (answered === 0) answered = performance.now();
      }
      if (quiet !== null) clearTimeout(quiet);
      quiet = setTimeout(next, 40);
    });
  });

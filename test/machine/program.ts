import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';

/** One of the small programs beside this file, bundled into a folder so that plain node can run it. Gives its path. */
export const bundled = (name: string, folder: string): string => {
  const outfile = join(folder, `${name}.mjs`);
  buildSync({
    entryPoints: [fileURLToPath(new URL(`./programs/${name}.ts`, import.meta.url))],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
  return outfile;
};

export type Program = Readonly<{
  child: ChildProcessWithoutNullStreams;
  /** Every whole line it has said, or will have said when `until` is content. */
  lines(until: (lines: readonly string[]) => boolean): Promise<readonly string[]>;
  /** All it said, when it has ended. */
  ended: Promise<readonly string[]>;
  say(word: string): void;
}>;

/** Starts a program. Waiting is always for something it says or for its end, never for a time. */
export const start = (file: string, ...args: readonly string[]): Program => {
  const child = spawn(process.execPath, [file, ...args]);
  let said = '';
  let errors = '';
  const waiting = new Set<() => void>();
  const whole = (): string[] => said.split('\n').slice(0, -1);
  child.stdout.setEncoding('utf8').on('data', (more: string) => {
    said += more;
    for (const look of waiting) look();
  });
  child.stderr.setEncoding('utf8').on('data', (more: string) => {
    errors += more;
  });
  const ended = new Promise<readonly string[]>(resolve => {
    child.on('close', () => resolve(whole()));
  });
  const lines: Program['lines'] = until =>
    new Promise((resolve, reject) => {
      const look = (): void => {
        if (!until(whole())) return;
        waiting.delete(look);
        resolve(whole());
      };
      waiting.add(look);
      void ended.then(() => reject(new Error(`it ended first: ${said} ${errors}`)));
      look();
    });
  return { child, lines, ended, say: word => void child.stdin.write(word) };
};

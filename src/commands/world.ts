import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import process from 'node:process';
import { text } from 'node:stream/consumers';
import { readContent } from '../machine/content-file.ts';
import { folders } from '../machine/folders.ts';
import { asciiOnly } from '../screen/terminal/can-paint.ts';
import type { Options, World } from './command.ts';

/** Whoever reads may have seen enough (`| head`): a pipe that is closed is no fault of anybody. */
const notWhenClosed = (error: NodeJS.ErrnoException): void => {
  if (error.code !== 'EPIPE') throw error;
};

/** The world as it is. The one place where commands meet the process. */
export const realWorld = (options: Options): World => ({
  out: written => {
    if (process.stdout.listenerCount('error') === 0) process.stdout.on('error', notWhenClosed);
    process.stdout.write(written);
  },
  err: written => void process.stderr.write(written),
  readStdin: () => text(process.stdin),
  readFile: path => readFile(path, 'utf8'),
  folders: folders({ sessions: typeof options.sessions === 'string' ? options.sessions : undefined }),
  content: readContent,
  now: () => new Date(),
  columns: process.stdout.columns || 80,
  ascii: asciiOnly(
    {
      env: process.env,
      stdinIsTerminal: process.stdin.isTTY === true,
      stdoutIsTerminal: process.stdout.isTTY === true,
    },
    options.ascii === true,
  ),
});

/** The version in package.json, found beside dist/ and beside src/. */
export const version = (): string => {
  for (const place of ['../package.json', '../../package.json']) {
    try {
      const found = JSON.parse(readFileSync(new URL(place, import.meta.url), 'utf8')) as {
        name?: string;
        version?: string;
      };
      if (found.name === 'curvewright' && found.version !== undefined) return found.version;
    } catch {
      // Looked in the other place next.
    }
  }
  return 'unknown';
};

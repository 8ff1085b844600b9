import { basename, dirname, join } from 'node:path';
import type { Outcome } from '../quantity/outcome.ts';
import { BUILD_ENDING } from './builds.ts';
import { type FileFault, fileFault } from './file-fault.ts';
import { writeNewFile } from './new-file.ts';

const TRIES = 99;

/**
 * Writes a sheet of a build beside it, under the first free name: `kicker-order.txt`, `kicker-order-2.txt` …, never over
 * another.
 * @param what names the sheet
 * @param ending with its dot
 * @returns the name of the file, without its folder, or why it could not be written
 */
export const writeSheet = (
  buildPath: string,
  what: string,
  ending: string,
  text: string,
): Outcome<string, FileFault> => {
  const stem = `${basename(buildPath, BUILD_ENDING)}-${what}`;
  const folder = dirname(buildPath);
  for (let i = 1; i <= TRIES; i++) {
    const name = `${stem}${i === 1 ? '' : `-${i}`}${ending}`;
    const made = writeNewFile(join(folder, name), text);
    if (made.ok) return { ok: true, value: name };
    if (made.fault.code !== 'exists') return made;
  }
  return { ok: false, fault: fileFault('exists', join(folder, `${stem}${ending}`)) };
};

import fs from 'node:fs';
import { dirname } from 'node:path';
import type { Outcome } from '../quantity/outcome.ts';
import { good } from '../quantity/outcome.ts';
import { flushFolder, removeQuietly } from './disk.ts';
import { errorCode, type FileFault, faultFrom } from './file-fault.ts';
import { newId } from './ids.ts';
import { makeFolder } from './make-folder.ts';

/**
 * Writes a file that is not there yet, whole or not at all, and never over another: to a name of its own first, flushed,
 * then linked to its place, which fails where something stands. Folders on the way are made.
 * @returns the path, or a fault (`exists`, `no-permission`, `disk-full` …), and then nothing is left behind
 */
export const writeNewFile = (path: string, text: string): Outcome<string, FileFault> => {
  const aside = `${path}.${newId()}.new`;
  try {
    makeFolder(dirname(path));
    const fd = fs.openSync(aside, 'wx', 0o644);
    try {
      fs.writeFileSync(fd, text);
      fs.fsyncSync(fd);
    } finally {
      fs.closeSync(fd);
    }
    place(aside, path);
    flushFolder(dirname(path));
    return good(path);
  } catch (error) {
    const fault = faultFrom(error, path);
    const message =
      fault.code === 'missing' ? 'there is no such folder, and none can be made' : fault.message;
    return { ok: false, fault: { ...fault, message } };
  } finally {
    removeQuietly(aside);
  }
};

/** Memory sticks (FAT, exFAT) know no links: there the file is copied, which also refuses a taken name. */
const place = (from: string, to: string): void => {
  try {
    fs.linkSync(from, to);
  } catch (error) {
    if (errorCode(error) === 'EEXIST') throw error;
    fs.copyFileSync(from, to, fs.constants.COPYFILE_EXCL);
    const fd = fs.openSync(to, 'r+');
    try {
      fs.fsyncSync(fd);
    } finally {
      fs.closeSync(fd);
    }
  }
};

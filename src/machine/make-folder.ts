import fs from 'node:fs';
import { dirname } from 'node:path';
import { errorCode } from './file-fault.ts';

/**
 * Makes a folder and those on the way to it; one that is there already is fine. Throws the system's error.
 * The library's own way of making a whole path turns in a circle for ever below a folder that answers "no such file"
 * to whatever is made in it, as /proc does; here each folder is tried once on the way up and once on the way down.
 */
export const makeFolder = (folder: string): void => {
  try {
    makeOne(folder);
  } catch (error) {
    if (errorCode(error) !== 'ENOENT' || dirname(folder) === folder) throw error;
    makeFolder(dirname(folder));
    makeOne(folder);
  }
};

const makeOne = (folder: string): void => {
  try {
    fs.mkdirSync(folder);
  } catch (error) {
    if (fs.statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return;
    // A file stands there: that is no folder, and must not read as "a build of that name is there already".
    throw errorCode(error) === 'EEXIST'
      ? Object.assign(new Error('not a folder', { cause: error }), { code: 'ENOTDIR' })
      : error;
  }
};

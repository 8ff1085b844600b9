import fs from 'node:fs';

/** The calls by which a journal is written. An argument, so that a test can fill the disk or pull it out. */
export type Disk = Pick<
  typeof fs,
  'openSync' | 'closeSync' | 'writeSync' | 'fsyncSync' | 'fstatSync' | 'ftruncateSync'
>;

export const disk: Disk = fs;

/** Which file it is, whatever its name: two handles with the same mark are the same file. */
export const fileMark = (stat: fs.BigIntStats): string => `${stat.dev}:${stat.ino}`;

/** Writes all the bytes: one call may take only a part of them. Throws the system's error. */
export const writeAll = (to: Disk, fd: number, bytes: Uint8Array): void => {
  for (let done = 0; done < bytes.length; ) done += to.writeSync(fd, bytes, done, bytes.length - done);
};

/** Makes a new name in a folder outlast a power cut. Not every system lets a folder be flushed; then it is as it is. */
export const flushFolder = (folder: string): void => {
  try {
    const fd = fs.openSync(folder, 'r');
    try {
      fs.fsyncSync(fd);
    } finally {
      fs.closeSync(fd);
    }
  } catch {
    // The file itself is flushed; only its name is younger than the disk's own habit.
  }
};

/** Removes a file if it can be removed. What stays behind is rubbish beside the file, never a part of it. */
export const removeQuietly = (path: string): void => {
  try {
    fs.rmSync(path, { force: true });
  } catch {
    // It stays.
  }
};

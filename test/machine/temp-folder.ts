import fs from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Folders for a test file, and their removal after each test. */
export const tempFolder = (): { make: () => string; remove: () => void } => {
  let made: string[] = [];
  return {
    make: () => {
      const folder = fs.mkdtempSync(join(tmpdir(), 'curvewright-test-'));
      made.push(folder);
      return folder;
    },
    remove: () => {
      for (const folder of made) fs.rmSync(folder, { recursive: true, force: true });
      made = [];
    },
  };
};

import fs from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { createBuild } from '../../src/machine/builds.ts';
import { makeFolder } from '../../src/machine/make-folder.ts';
import { tempFolder } from './temp-folder.ts';

const temp = tempFolder();
afterEach(temp.remove);

const now = (): Date => new Date('2026-05-01T18:00:00.000Z');

describe('a folder for builds', () => {
  test('is made with those on the way to it, and may be there already', () => {
    const folder = join(temp.make(), 'stick', 'builds', 'mine');
    makeFolder(folder);
    makeFolder(folder);
    expect(fs.statSync(folder).isDirectory()).toBe(true);
  });

  test('where a file stands is refused as that, not as a name taken 999 times', () => {
    const file = join(temp.make(), 'notes.txt');
    fs.writeFileSync(file, 'kept');
    for (const folder of [file, join(file, 'builds')]) {
      const made = createBuild(folder, 'Kicker', [], now);
      expect(made).toMatchObject({
        ok: false,
        fault: { code: 'missing', message: 'there is no such folder, and none can be made' },
      });
    }
    expect(fs.readFileSync(file, 'utf8')).toBe('kept');
  });

  test.runIf(process.platform === 'linux')('below a folder that takes none is refused, and ends', () => {
    expect(createBuild('/proc/no-such-place/builds', 'Kicker', [], now).ok).toBe(false);
  });
});

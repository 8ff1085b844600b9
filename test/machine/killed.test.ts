import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { createJournal } from '../../src/machine/journal-file.ts';
import { lockPath } from '../../src/machine/lock.ts';
import { openBuild } from '../../src/machine/open-build.ts';
import { act, HEADER, ids, opened, understand } from './journals.ts';
import { bundled, start } from './program.ts';
import { tempFolder } from './temp-folder.ts';

const temp = tempFolder();
afterEach(temp.remove);

describe('a program killed in the middle of writing', () => {
  test('has on disk every entry it said was on disk, and leaves a build that the next one takes without a word', async () => {
    const folder = temp.make();
    const path = join(folder, 'kicker.jsonl');
    createJournal(path, HEADER);
    const file = bundled('write-on', folder);
    const acknowledged: string[] = [];

    for (const count of [1, 40, 150]) {
      const program = start(file, path, String(acknowledged.length + 1));
      await program.lines(lines => lines.length >= count);
      program.child.kill('SIGKILL');
      acknowledged.push(...(await program.ended));

      const next = openBuild(path, { understand, now: () => new Date() });
      if (!next.ok) throw new Error(next.fault.message);
      expect(next.value.barred()).toBeNull();
      const { entries, setAside } = next.value.journal.reading();
      // It may have written one more than it came to say, and have been cut off in one.
      expect(ids(entries).slice(0, acknowledged.length)).toEqual(acknowledged);
      expect(entries.length - acknowledged.length).toBeLessThanOrEqual(1);
      expect(setAside.length).toBeLessThanOrEqual(3);
      acknowledged.splice(0, acknowledged.length, ...ids(entries));

      const n = acknowledged.length + 1;
      expect(next.value.journal.append(act(`e${n}`, n)).ok).toBe(true);
      acknowledged.push(`e${n}`);
      expect(ids(opened(path).reading().entries)).toEqual(acknowledged);
      next.value.release();
      expect(fs.existsSync(lockPath(path))).toBe(false);
    }
  }, 60_000);
});

// A true refusal by the system, not one of ours: the shell's limit on the size of a file (EFBIG), in the middle of a line.
test.skipIf(process.platform === 'win32')(
  'a file that may not grow further keeps whole lines, and what was told is true',
  () => {
    const folder = temp.make();
    const path = join(folder, 'kicker.jsonl');
    createJournal(path, HEADER);
    const file = bundled('fill-up', folder);
    const limit_kB = 20;
    const ran = spawnSync(
      'bash',
      ['-c', `ulimit -f ${limit_kB} && exec "$0" "$1" "$2"`, process.execPath, file, path],
      {
        encoding: 'utf8',
      },
    );
    const said = JSON.parse(ran.stdout) as {
      onDisk: string[];
      fault: unknown;
      waiting: number;
      size: number;
    };
    expect(said.fault).toMatchObject({ code: 'disk-full', waits: true });
    expect(said.waiting).toBe(1);
    expect(said.onDisk.length).toBeGreaterThan(10);
    expect(said.size).toBeLessThan(limit_kB * 1024);
    expect(fs.readFileSync(path, 'utf8').endsWith('}\n')).toBe(true);
    expect(ids(opened(path).reading().entries)).toEqual(said.onDisk);
    expect(opened(path).reading().setAside).toEqual([]);
  },
  60_000,
);

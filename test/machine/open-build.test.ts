import fs from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { StoredEntry } from '../../src/build/journal-line.ts';
import { createJournal } from '../../src/machine/journal-file.ts';
import { lockPath } from '../../src/machine/lock.ts';
import { type OpenBuild, openBuild } from '../../src/machine/open-build.ts';
import { self } from '../../src/machine/process-probe.ts';
import { act, HEADER, ids, opened, understand } from './journals.ts';
import { tempFolder } from './temp-folder.ts';

const temp = tempFolder();
let path: string;
beforeEach(() => {
  path = join(temp.make(), 'kicker.jsonl');
  createJournal(path, HEADER, [act('a', 1)]);
});
afterEach(temp.remove);

const open = (takeOver = false): OpenBuild<StoredEntry> => {
  const done = openBuild(path, { understand, now: () => new Date(), takeOver });
  if (!done.ok) throw new Error(done.fault.message);
  return done.value;
};
const lockFromElsewhere = (): void =>
  fs.writeFileSync(
    lockPath(path),
    JSON.stringify({
      ...self(),
      host: 'garage-laptop',
      token: '0b6f0f3e-51ce-4a0a-9d5c-0d6c1a5f1f00',
      since: '2026-05-01T18:00:00.000Z',
    }),
  );

describe('a build opened', () => {
  test('is ours to write, and free again after release', () => {
    const build = open();
    expect(build.barred()).toBeNull();
    expect(build.heldBy()).toBeNull();
    expect(build.journal.append(act('b', 2)).ok).toBe(true);
    build.release();
    build.release();
    expect(fs.existsSync(lockPath(path))).toBe(false);
    expect(build.journal.append(act('c', 3))).toMatchObject({ ok: false, fault: { code: 'read-only' } });
  });

  test('a second time can be looked at, follows what is entered, and is had when the first lets go', () => {
    const first = open();
    const second = open();
    expect(second.barred()).toMatch(/another program/);
    expect(second.heldBy()).toMatchObject({ code: 'held', verdict: 'alive', holder: { pid: process.pid } });
    expect(second.journal.append(act('x', 2))).toMatchObject({ ok: false, fault: { code: 'read-only' } });

    first.journal.append(act('b', 2));
    expect(second.journal.changed()).toBe(true);
    second.journal.reload();
    expect(ids(second.journal.reading().entries)).toEqual(['a', 'b']);

    expect(second.tryAgain()).toBe(false);
    first.journal.append(act('c', 3));
    first.release();
    expect(second.tryAgain()).toBe(true);
    expect(second.heldBy()).toBeNull();
    expect(ids(second.journal.reading().entries)).toEqual(['a', 'b', 'c']);
    expect(second.journal.append(act('d', 4)).ok).toBe(true);
    expect(ids(opened(path).reading().entries)).toEqual(['a', 'b', 'c', 'd']);
  });

  test('that another machine holds is had only by the key press that says so', () => {
    lockFromElsewhere();
    const build = open();
    expect(build.heldBy()).toMatchObject({ verdict: 'elsewhere', mayTakeOver: true });
    expect(build.tryAgain()).toBe(false);
    expect(build.tryAgain(true)).toBe(true);
    expect(build.journal.append(act('b', 2)).ok).toBe(true);
  });

  test('that another machine takes from us is not written to any more', () => {
    const build = open();
    lockFromElsewhere();
    expect(build.barred()).toMatch(/taken this build over/);
    expect(build.journal.append(act('b', 2))).toMatchObject({ ok: false, fault: { code: 'read-only' } });
    build.release();
    expect(fs.existsSync(lockPath(path))).toBe(true);
    expect(ids(opened(path).reading().entries)).toEqual(['a']);
  });

  test('that is none leaves no lock behind', () => {
    fs.writeFileSync(path, 'dear diary');
    expect(openBuild(path, { understand, now: () => new Date() })).toMatchObject({
      ok: false,
      fault: { code: 'not-a-journal' },
    });
    expect(fs.existsSync(lockPath(path))).toBe(false);
  });

  test('of a newer program can be looked at and says why', () => {
    fs.rmSync(path);
    createJournal(path, HEADER, [act('a', 1, { v: 2 })]);
    expect(open().barred()).toMatch(/newer Curvewright/);
  });
});

import fs from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { LONGEST_LINE, type StoredEntry, writeHeader, writeLine } from '../../src/build/journal-line.ts';
import type { Disk } from '../../src/machine/disk.ts';
import { createJournal, type JournalOptions, openJournal } from '../../src/machine/journal-file.ts';
import { act, HEADER, ids, opened, take } from './journals.ts';
import { tempFolder } from './temp-folder.ts';

let folder: string;
let path: string;
const temp = tempFolder();
beforeEach(() => {
  folder = temp.make();
  path = join(folder, 'kicker.jsonl');
});
afterEach(temp.remove);

const header = writeHeader({ ...HEADER, version: 1 });
const put = (...lines: string[]): void => fs.writeFileSync(path, lines.map(l => `${l}\n`).join(''));
const text = (): string => fs.readFileSync(path, 'utf8');
const failure = (code: string): Error => Object.assign(new Error(code), { code });

describe('a new journal', () => {
  test('is written whole and read back', () => {
    expect(createJournal(path, HEADER, [act('a', 1), act('b', 2)])).toEqual({ ok: true, value: path });
    const reading = opened(path).reading();
    expect(reading.header).toEqual({ ...HEADER, version: 1 });
    expect(ids(reading.entries)).toEqual(['a', 'b']);
    expect(reading).toMatchObject({ setAside: [], readOnly: null, endsTorn: false });
  });

  test('never takes the place of another file', () => {
    fs.writeFileSync(path, 'something of somebody');
    expect(createJournal(path, HEADER)).toMatchObject({ ok: false, fault: { code: 'exists' } });
    expect(text()).toBe('something of somebody');
    expect(fs.readdirSync(folder)).toEqual(['kicker.jsonl']);
  });

  test('makes the folder it belongs in', () => {
    expect(createJournal(join(folder, 'a', 'b', 'kicker.jsonl'), HEADER).ok).toBe(true);
  });

  test('in a place that is no folder is refused as data', () => {
    fs.writeFileSync(join(folder, 'file'), '');
    const made = createJournal(join(folder, 'file', 'kicker.jsonl'), HEADER);
    expect(made.ok).toBe(false);
  });
});

describe('opening', () => {
  test('what is not there, no file, or no journal is refused and says which', () => {
    fs.mkdirSync(join(folder, 'd.jsonl'));
    fs.writeFileSync(join(folder, 'text.jsonl'), 'dear diary\n');
    fs.writeFileSync(join(folder, 'empty.jsonl'), '');
    const code = (name: string): unknown => {
      const open = openJournal(join(folder, name), take);
      return open.ok ? 'opened' : open.fault.code;
    };
    expect(code('none.jsonl')).toBe('missing');
    expect(code('d.jsonl')).toBe('not-a-file');
    expect(code('text.jsonl')).toBe('not-a-journal');
    expect(code('empty.jsonl')).toBe('not-a-journal');
  });

  test('a shop where a build belongs is refused', () => {
    createJournal(path, { ...HEADER, format: 'curvewright-shop' });
    expect(openJournal(path, take)).toMatchObject({ ok: false, fault: { code: 'other-format' } });
  });

  test('damaged lines are set aside with number and reason, the rest counts, and the file is left as it is', () => {
    const changed = writeLine(act('b', 2, { text: 'cut at 412.0' })).replace('412', '421');
    put(header, writeLine(act('a', 1)), changed, '', 'what is \x1b[31mthis', writeLine(act('c', 3)));
    fs.appendFileSync(path, Buffer.from([0xff, 0xfe, 0x0a]));
    const before = fs.readFileSync(path);
    const reading = opened(path).reading();
    expect(ids(reading.entries)).toEqual(['a', 'c']);
    expect(reading.setAside).toMatchObject([
      { line: 3, why: 'damaged', message: expect.stringMatching(/changed/) },
      { line: 5, why: 'damaged', message: expect.stringMatching(/torn/), excerpt: 'what is this' },
      { line: 7, why: 'damaged', message: expect.stringMatching(/not text/) },
    ]);
    expect(reading.readOnly).toBeNull();
    expect(fs.readFileSync(path).equals(before)).toBe(true);
  });

  test('with a damaged first line the entries still count and can be added to', () => {
    put(header.replace('build', 'bulid'), writeLine(act('a', 1)));
    const journal = opened(path);
    expect(journal.reading().header).toBeNull();
    expect(journal.append(act('b', 2)).ok).toBe(true);
    expect(ids(opened(path).reading().entries)).toEqual(['a', 'b']);
  });

  test('a byte order mark and the line endings of another system are forgiven', () => {
    fs.writeFileSync(path, `\ufeff${header}\r\n${writeLine(act('a', 1))}\r\n`);
    const reading = opened(path).reading();
    expect(ids(reading.entries)).toEqual(['a']);
    expect(reading.setAside).toEqual([]);
  });

  test('two copies strung together count once; another build strung behind does not count', () => {
    const other = writeHeader({ ...HEADER, version: 1, build: 'another' });
    put(
      header,
      writeLine(act('a', 1)),
      header,
      writeLine(act('a', 1)),
      writeLine(act('b', 2)),
      other,
      writeLine(act('x', 3)),
    );
    const reading = opened(path).reading();
    expect(ids(reading.entries)).toEqual(['a', 'b']);
    expect(reading.setAside).toMatchObject([
      { line: 6, why: 'other-build' },
      { line: 7, why: 'other-build' },
    ]);
  });

  test('entries of a newer program make it read-only and say so', () => {
    put(header, writeLine(act('a', 1)), writeLine({ ...act('b', 2), v: 2 }));
    const journal = opened(path);
    const before = text();
    expect(ids(journal.reading().entries)).toEqual(['a']);
    expect(ids(journal.reading().stored)).toEqual(['a', 'b']);
    expect(journal.reading().setAside).toMatchObject([{ line: 3, why: 'newer' }]);
    expect(journal.reading().readOnly).toMatch(/newer Curvewright/);
    expect(journal.append(act('c', 3))).toMatchObject({
      ok: false,
      fault: { code: 'read-only', waits: false },
    });
    expect(text()).toBe(before);
  });

  test('a first line of a newer form makes it read-only', () => {
    put(writeHeader({ ...HEADER, version: 2 }), writeLine(act('a', 1)));
    expect(opened(path).reading().readOnly).toMatch(/newer/);
  });

  test('an entry that does not fit its kind is set aside, and the journal stays writable', () => {
    put(header, writeLine(act('a', 1, { unfit: true })), writeLine(act('b', 2)));
    const reading = opened(path).reading();
    expect(ids(reading.entries)).toEqual(['b']);
    expect(reading.setAside).toMatchObject([{ line: 2, why: 'unfit' }]);
    expect(reading.readOnly).toBeNull();
  });

  test('a line longer than any entry is set aside, the next still counts', () => {
    put(header, 'x'.repeat(3 * LONGEST_LINE), writeLine(act('a', 1)));
    const reading = opened(path).reading();
    expect(ids(reading.entries)).toEqual(['a']);
    expect(reading.setAside).toMatchObject([{ line: 2, message: expect.stringMatching(/longer/) }]);
    expect(reading.setAside[0]!.excerpt.length).toBeLessThan(100);
  });

  test('a hundred thousand entries are all there, in order', () => {
    const entries = Array.from({ length: 100_000 }, (_, i) => act(`e${i}`, i + 1));
    put(header, ...entries.map(writeLine));
    const reading = opened(path).reading();
    expect(reading.entries).toHaveLength(100_000);
    expect(reading.entries.at(-1)!.id).toBe('e99999');
    expect(reading.setAside).toEqual([]);
  });
});

describe('appending', () => {
  test('is one line, on disk when the call returns', () => {
    createJournal(path, HEADER);
    const journal = opened(path);
    expect(journal.append(act('a', 1))).toEqual({ ok: true, value: 1 });
    expect(text()).toBe(`${header}\n${writeLine(act('a', 1))}\n`);
    expect(ids(journal.reading().entries)).toEqual(['a']);
    expect(journal.waiting()).toEqual([]);
  });

  test('an entry too long for a line is refused and nothing is written', () => {
    createJournal(path, HEADER);
    const journal = opened(path);
    const long = act('a', 1, { text: 'ö'.repeat(LONGEST_LINE / 2) });
    expect(journal.append(long)).toMatchObject({ ok: false, fault: { code: 'too-long', waits: false } });
    expect(text()).toBe(`${header}\n`);
    expect(journal.append(act('b', 1)).ok).toBe(true);
  });

  test('a file another program wrote to is noticed before anything is written', () => {
    createJournal(path, HEADER);
    const journal = opened(path);
    expect(journal.changed()).toBe(false);
    fs.appendFileSync(path, `${writeLine(act('x', 1))}\n`);
    const before = text();
    expect(journal.changed()).toBe(true);
    expect(journal.append(act('a', 1))).toMatchObject({
      ok: false,
      fault: { code: 'changed', waits: false },
    });
    expect(text()).toBe(before);
    expect(journal.reload().ok).toBe(true);
    expect(journal.append(act('a', 2)).ok).toBe(true);
    expect(ids(opened(path).reading().entries)).toEqual(['x', 'a']);
  });

  test('a file put in place of ours, of the same length, is noticed', () => {
    createJournal(path, HEADER);
    const journal = opened(path);
    fs.copyFileSync(path, join(folder, 'copy'));
    fs.renameSync(join(folder, 'copy'), path);
    expect(journal.changed()).toBe(true);
    expect(journal.append(act('a', 1))).toMatchObject({ ok: false, fault: { code: 'changed' } });
  });

  test('a file that vanished is not made anew half empty; the entry waits and can go to another place', () => {
    createJournal(path, HEADER, [act('a', 1)]);
    const journal = opened(path);
    fs.rmSync(path);
    expect(journal.append(act('b', 2))).toMatchObject({ ok: false, fault: { code: 'missing', waits: true } });
    expect(fs.existsSync(path)).toBe(false);
    expect(ids(journal.waiting())).toEqual(['b']);
    expect(ids(journal.reading().entries)).toEqual(['a', 'b']);
  });

  test('while it is barred nothing is written and the reason is given', () => {
    createJournal(path, HEADER);
    let bar: string | null = 'another program holds this build';
    const journal = opened(path, { ...take, barred: () => bar });
    expect(journal.append(act('a', 1))).toMatchObject({
      ok: false,
      fault: { code: 'read-only', message: bar },
    });
    bar = null;
    expect(journal.append(act('a', 1)).ok).toBe(true);
  });
});

describe('a torn end', () => {
  test('is set aside, and the next entry begins on a line of its own', () => {
    put(header, writeLine(act('a', 1)));
    fs.appendFileSync(path, writeLine(act('b', 2)).slice(0, 40));
    const journal = opened(path);
    expect(journal.reading()).toMatchObject({ endsTorn: true, setAside: [{ line: 3, why: 'damaged' }] });
    expect(journal.append(act('c', 3)).ok).toBe(true);
    expect(journal.append(act('d', 4)).ok).toBe(true);
    expect(ids(opened(path).reading().entries)).toEqual(['a', 'c', 'd']);
    expect(text()).not.toContain('\n\n');
  });

  test('that lacks only its line break is a whole entry', () => {
    fs.writeFileSync(path, `${header}\n${writeLine(act('a', 1))}`);
    const journal = opened(path);
    expect(journal.reading()).toMatchObject({ endsTorn: true, setAside: [] });
    journal.append(act('b', 2));
    expect(ids(opened(path).reading().entries)).toEqual(['a', 'b']);
  });

  test('of noughts, as a power cut leaves, costs nothing of what comes after', () => {
    put(header, writeLine(act('a', 1)));
    fs.appendFileSync(path, Buffer.alloc(500));
    opened(path).append(act('b', 2));
    expect(ids(opened(path).reading().entries)).toEqual(['a', 'b']);
  });

  test('wherever it tears: every whole line before it counts, and so does all that is written after', () => {
    put(header, writeLine(act('a', 1)), writeLine(act('b', 2, { text: 'Größe' })), writeLine(act('c', 3)));
    const whole = fs.readFileSync(path);
    const start = header.length + 1;
    for (let size = start; size <= whole.length; size++) {
      fs.writeFileSync(path, whole.subarray(0, size));
      const before = ids(opened(path).reading().entries);
      expect(opened(path).append(act('z', 9)).ok).toBe(true);
      expect(ids(opened(path).reading().entries), `torn at ${size}`).toEqual([...before, 'z']);
      const lines = whole.subarray(0, size).toString('utf8').split('\n').length - 2;
      expect(before.length).toBeGreaterThanOrEqual(lines);
    }
  });
});

/** A disk that does as told: takes so many bytes more and then fails, may be unable to flush or to cut. */
const troubled = (state: {
  room: number;
  code: string;
  flushes: boolean;
  cuts: boolean;
  opens: boolean;
}): Disk => ({
  openSync: ((...args: Parameters<typeof fs.openSync>) => {
    if (!state.opens) throw failure(state.code);
    return fs.openSync(...args);
  }) as Disk['openSync'],
  closeSync: fs.closeSync,
  fstatSync: fs.fstatSync,
  writeSync: ((fd: number, bytes: Uint8Array, offset: number, length: number) => {
    const taken = Math.min(length, state.room);
    if (taken === 0) throw failure(state.code);
    state.room -= taken;
    return fs.writeSync(fd, bytes, offset, taken);
  }) as Disk['writeSync'],
  fsyncSync: fd => {
    if (!state.flushes) throw failure('EIO');
    fs.fsyncSync(fd);
  },
  ftruncateSync: (fd, size) => {
    if (!state.cuts) throw failure('EIO');
    fs.ftruncateSync(fd, size);
  },
});
const well = { room: Number.POSITIVE_INFINITY, code: 'ENOSPC', flushes: true, cuts: true, opens: true };

describe('a disk in trouble', () => {
  const start = (state: typeof well) => {
    createJournal(path, HEADER, [act('a', 1)]);
    return opened(path, { ...take, disk: troubled(state) } satisfies JournalOptions<StoredEntry>);
  };

  test.each([
    ['ENOSPC', 'disk-full'],
    ['EDQUOT', 'disk-full'],
    ['EACCES', 'no-permission'],
    ['EROFS', 'read-only-disk'],
    ['EIO', 'disk-fault'],
  ])('%s is told as %s, the entry is kept and goes to disk on the next try', (code, told) => {
    const state = { ...well, code, opens: false };
    const journal = start(state);
    const before = text();
    expect(journal.append(act('b', 2))).toMatchObject({
      ok: false,
      fault: { code: told, cause: code, waits: true },
    });
    expect(journal.retry()).toMatchObject({ ok: false, fault: { code: told } });
    expect(text()).toBe(before);
    expect(ids(journal.reading().entries)).toEqual(['a', 'b']);
    expect(ids(journal.waiting())).toEqual(['b']);
    state.opens = true;
    expect(journal.retry()).toEqual({ ok: true, value: 1 });
    expect(journal.retry()).toEqual({ ok: true, value: 0 });
    expect(ids(opened(path).reading().entries)).toEqual(['a', 'b']);
  });

  test('what waits is written before what comes after it, in order', () => {
    const state = { ...well, room: 0 };
    const journal = start(state);
    journal.append(act('b', 2));
    journal.append(act('c', 3));
    state.room = Number.POSITIVE_INFINITY;
    expect(journal.append(act('d', 4))).toEqual({ ok: true, value: 3 });
    expect(ids(opened(path).reading().stored)).toEqual(['a', 'b', 'c', 'd']);
  });

  test('a part that got through is cut off, so the file is as it was', () => {
    const state = { ...well, room: 30 };
    const journal = start(state);
    const before = text();
    expect(journal.append(act('b', 2)).ok).toBe(false);
    expect(text()).toBe(before);
    expect(journal.changed()).toBe(false);
  });

  test('an entry that was written but not flushed is not said to be on disk', () => {
    const state = { ...well, flushes: false };
    const journal = start(state);
    expect(journal.append(act('b', 2))).toMatchObject({
      ok: false,
      fault: { code: 'disk-fault', waits: true },
    });
    state.flushes = true;
    expect(journal.retry().ok).toBe(true);
    expect(ids(opened(path).reading().stored)).toEqual(['a', 'b']);
  });

  test('a program killed after a failed write leaves a file that opens', () => {
    const state = { ...well, room: 30, cuts: false };
    start(state).append(act('b', 2));
    const next = opened(path);
    expect(next.reading()).toMatchObject({ endsTorn: true, setAside: [{ line: 3 }] });
    next.append(act('c', 2));
    expect(ids(opened(path).reading().entries)).toEqual(['a', 'c']);
  });

  test('reading anew in the middle of it loses nothing and doubles nothing', () => {
    const state = { ...well, room: 30, cuts: false };
    const journal = start(state);
    journal.append(act('b', 2));
    expect(journal.reload().ok).toBe(true);
    expect(ids(journal.reading().entries)).toEqual(['a', 'b']);
    state.room = Number.POSITIVE_INFINITY;
    expect(journal.retry().ok).toBe(true);
    expect(ids(opened(path).reading().entries)).toEqual(['a', 'b']);
  });

  test('whatever fails, however often: nothing acknowledged is lost, nothing counts twice, nothing is glued', () => {
    const trouble = fc.record({
      room: fc.oneof(fc.nat(260), fc.constant(Number.POSITIVE_INFINITY)),
      code: fc.constantFrom('ENOSPC', 'EIO'),
      flushes: fc.boolean(),
      cuts: fc.boolean(),
      opens: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(trouble, { minLength: 1, maxLength: 8 }), troubles => {
        fs.rmSync(path, { force: true });
        const state = { ...well };
        const journal = start(state);
        const asked = ['a'];
        for (const [i, next] of troubles.entries()) {
          Object.assign(state, next);
          asked.push(`e${i}`);
          const done = journal.append(act(`e${i}`, i + 2));
          expect(ids(journal.reading().entries)).toEqual(asked);
          const onDisk = ids(opened(path).reading().entries);
          if (done.ok) expect(onDisk).toEqual(asked);
          else expect(asked.slice(0, onDisk.length)).toEqual(onDisk);
        }
        Object.assign(state, well);
        expect(journal.retry().ok).toBe(true);
        expect(ids(opened(path).reading().stored)).toEqual(asked);
        expect(opened(path).reading().endsTorn).toBe(false);
      }),
      { numRuns: 60 },
    );
  });
});

// The superuser may write anything, so this holds only for the rest of us.
test.skipIf(process.getuid?.() === 0)(
  'a file without leave to write opens, and says so when written to',
  () => {
    createJournal(path, HEADER);
    fs.chmodSync(path, 0o444);
    expect(opened(path).append(act('a', 1))).toMatchObject({
      ok: false,
      fault: { code: 'no-permission', waits: true },
    });
  },
);

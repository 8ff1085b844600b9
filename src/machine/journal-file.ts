import fs from 'node:fs';
import {
  HEADER_VERSION,
  type Header,
  type JournalFormat,
  LONGEST_LINE,
  type StoredEntry,
  writeHeader,
  writeLine,
} from '../build/journal-line.ts';
import type { Outcome } from '../quantity/outcome.ts';
import { good } from '../quantity/outcome.ts';
import { type Disk, fileMark, disk as realDisk, writeAll } from './disk.ts';
import { type FileFault, type FileFaultCode, faultFrom, fileFault } from './file-fault.ts';
import { writeNewFile } from './new-file.ts';
import { type JournalReading, readJournal, type Understand } from './read-journal.ts';

/** Largest journal read, bytes: a thousand times a long build. */
export const LARGEST_FILE = 268_435_456;

/** Why an entry is not on disk. `waits`: it is kept in memory, and `retry` writes it; otherwise it was refused. */
export type WriteFault = FileFault & Readonly<{ waits: boolean }>;

/** A journal on disk, and what this program knows of it. All calls are synchronous: when one returns, it is done. */
export type JournalFile<E extends StoredEntry> = Readonly<{
  path: string;
  /** What was read, with everything appended since, waiting entries too; a new object after every change. */
  reading(): JournalReading<E>;
  /** One entry as one line, written and flushed; first those that wait. Gives the number of entries written. */
  append(entry: E): Outcome<number, WriteFault>;
  /** Tries again to write what waits. Gives the number of entries written, 0 when nothing waits. */
  retry(): Outcome<number, WriteFault>;
  /** Entries that are in memory only. */
  waiting(): readonly E[];
  /** Whether something else wrote to the file, or put another in its place, since it was last read or written. */
  changed(): boolean;
  /** Reads the file anew; what waits goes on waiting. */
  reload(): Outcome<JournalReading<E>, FileFault>;
}>;

export type JournalOptions<E extends StoredEntry> = Readonly<{
  format: JournalFormat;
  understand: Understand<E>;
  /** Why nothing may be written just now (another program holds the build), or null. Asked before every write. */
  barred?: () => string | null;
  disk?: Disk;
}>;

/**
 * Makes a journal that is not there yet, whole or not at all, and never over another file.
 * @param entries written after the first line, in the order given
 * @returns the path, or the fault of `writeNewFile`
 */
export const createJournal = (
  path: string,
  header: Omit<Header, 'version'>,
  entries: readonly StoredEntry[] = [],
): Outcome<string, FileFault> =>
  writeNewFile(
    path,
    [writeHeader({ ...header, version: HEADER_VERSION }), ...entries.map(writeLine)]
      .map(l => `${l}\n`)
      .join(''),
  );

/** Whose file and how long it was when we last looked. */
type Seen = Readonly<{ mark: string; size: number }>;
type Loaded<E extends StoredEntry> = Readonly<{ seen: Seen; reading: JournalReading<E> }>;

const look = (stat: fs.BigIntStats): Seen => ({ mark: fileMark(stat), size: Number(stat.size) });
const same = (a: Seen, b: Seen): boolean => a.mark === b.mark && a.size === b.size;

const load = <E extends StoredEntry>(
  path: string,
  options: JournalOptions<E>,
): Outcome<Loaded<E>, FileFault> => {
  const no = (code: FileFaultCode) => ({ ok: false, fault: fileFault(code, path) }) as const;
  try {
    // Looked at before it is opened: opening a pipe would wait for ever.
    const stat = fs.statSync(path, { bigint: true });
    if (!stat.isFile()) return no('not-a-file');
    if (stat.size > LARGEST_FILE) return no('too-large');
    const fd = fs.openSync(path, 'r');
    try {
      const bytes = fs.readFileSync(fd);
      const reading = readJournal(bytes, options.format, options.understand);
      if (reading === null) return no('not-a-journal');
      if (reading === 'other-format') return no('other-format');
      const seen = { mark: fileMark(fs.fstatSync(fd, { bigint: true })), size: bytes.length };
      return good({ seen, reading });
    } finally {
      fs.closeSync(fd);
    }
  } catch (error) {
    return { ok: false, fault: faultFrom(error, path) };
  }
};

/** Append only, and not made anew where it went missing: a build that vanished must be noticed. */
const APPEND = fs.constants.O_WRONLY | fs.constants.O_APPEND;

/**
 * Opens a journal. Damaged lines are set aside and the rest counts; reading never changes the file.
 * @returns the journal, or why it cannot be read
 */
export const openJournal = <E extends StoredEntry>(
  path: string,
  options: JournalOptions<E>,
): Outcome<JournalFile<E>, FileFault> => {
  const first = load(path, options);
  if (!first.ok) return first;
  const disk = options.disk ?? realDisk;
  let { seen, reading } = first.value;
  let waiting: readonly E[] = [];
  /** A write that failed may have left a part behind: bytes of ours from `seen.size` up to this size. */
  let mayReach: number | null = null;

  const fault = (of: FileFault, waits: boolean) => ({ ok: false, fault: { ...of, waits } }) as const;
  const refuse = (code: FileFaultCode, message?: string) =>
    fault(fileFault(code, path, message), waiting.length > 0);

  /** Cuts off what a failed write left. Not through the appending handle: not every system lets that one cut. */
  const cut = (): void => {
    if (mayReach === null) return;
    const fd = disk.openSync(path, 'r+');
    try {
      const now = look(disk.fstatSync(fd, { bigint: true }));
      if (now.mark !== seen.mark || now.size < seen.size || now.size > mayReach) return;
      try {
        if (now.size > seen.size) {
          disk.ftruncateSync(fd, seen.size);
          disk.fsyncSync(fd);
        }
      } catch {
        // It cannot be cut: the part stays as a torn line, and the next write begins on a line of its own.
        seen = look(disk.fstatSync(fd, { bigint: true }));
        reading = { ...reading, endsTorn: true };
      }
      mayReach = null;
    } finally {
      disk.closeSync(fd);
    }
  };

  const cutIfPossible = (): void => {
    try {
      cut();
    } catch {
      // The disk is gone for now; `mayReach` remembers, and the next try cuts first.
    }
  };

  const retry = (): Outcome<number, WriteFault> => {
    if (waiting.length === 0) return good(0);
    const bar = options.barred?.() ?? reading.readOnly;
    if (bar !== null) return refuse('read-only', bar);
    try {
      cut();
      const fd = disk.openSync(path, APPEND);
      try {
        if (!same(look(disk.fstatSync(fd, { bigint: true })), seen)) return refuse('changed');
        const lines = waiting.map(e => `${writeLine(e)}\n`).join('');
        const bytes = Buffer.from(reading.endsTorn ? `\n${lines}` : lines);
        mayReach = seen.size + bytes.length;
        writeAll(disk, fd, bytes);
        disk.fsyncSync(fd);
        seen = { ...seen, size: seen.size + bytes.length };
        mayReach = null;
      } finally {
        disk.closeSync(fd);
      }
    } catch (error) {
      cutIfPossible();
      return fault(faultFrom(error, path), true);
    }
    const written = waiting.length;
    waiting = [];
    reading = { ...reading, endsTorn: false };
    return good(written);
  };

  const add = (entry: E): void => {
    waiting = [...waiting, entry];
    reading = { ...reading, stored: [...reading.stored, entry], entries: [...reading.entries, entry] };
  };

  const takeBackLast = (): void => {
    waiting = waiting.slice(0, -1);
    reading = { ...reading, stored: reading.stored.slice(0, -1), entries: reading.entries.slice(0, -1) };
  };

  const append = (entry: E): Outcome<number, WriteFault> => {
    const bar = options.barred?.() ?? reading.readOnly;
    if (bar !== null) return fault(fileFault('read-only', path, bar), false);
    if (Buffer.byteLength(writeLine(entry)) > LONGEST_LINE) return fault(fileFault('too-long', path), false);
    add(entry);
    const done = retry();
    // Refused because the file is another now: the act was decided on an old state, so it does not wait.
    if (!done.ok && done.fault.code === 'changed') {
      takeBackLast();
      return fault(done.fault, false);
    }
    return done;
  };

  const changed = (): boolean => {
    try {
      const now = look(fs.statSync(path, { bigint: true }));
      const ownPart =
        mayReach !== null && now.mark === seen.mark && now.size >= seen.size && now.size <= mayReach;
      return !ownPart && !same(now, seen);
    } catch {
      return true;
    }
  };

  const reload = (): Outcome<JournalReading<E>, FileFault> => {
    cutIfPossible();
    const again = load(path, options);
    if (!again.ok) return again;
    ({ seen, reading } = again.value);
    mayReach = null;
    const held = new Set(reading.stored.map(e => e.id));
    const still = waiting.filter(e => !held.has(e.id));
    waiting = [];
    for (const entry of still) add(entry);
    return good(reading);
  };

  return good({ path, reading: () => reading, append, retry, waiting: () => waiting, changed, reload });
};

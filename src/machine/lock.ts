import fs from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { sumOf } from '../build/crc32.ts';
import { plainText } from '../build/plain-text.ts';
import type { Outcome } from '../quantity/outcome.ts';
import { good } from '../quantity/outcome.ts';
import { removeQuietly } from './disk.ts';
import { errorCode, type FileFault, faultFrom } from './file-fault.ts';
import { newId } from './ids.ts';
import { processState, type Self, self as thisProcess } from './process-probe.ts';

/** Who holds a build: the content of a lock, one JSON object. `since` is for people. */
export type Holder = Self & Readonly<{ token: string; since: string }>;

/**
 * alive: it runs on this machine · dead: it ran here and has ended · elsewhere: another machine (or container), which cannot be
 * asked from here · unsure: something runs under its number and the system does not say since when · unclear: the lock
 * cannot be read and is too young to be left over.
 */
export type Verdict = 'alive' | 'dead' | 'elsewhere' | 'unsure' | 'unclear';

export type Lock = Readonly<{
  path: string;
  holder: Holder;
  /** Still ours? Someone on another machine may have taken it over. Asked before every write. */
  holds(): boolean;
  /** Gives the build free, if the lock is still ours. May be called more than once; throws nothing. */
  release(): void;
}>;

export type Locked = Readonly<{
  lock: Lock;
  /** What was found and taken over: its holder, or null where it could not be read. */
  tookOver: Readonly<{ from: Holder | null; because: Verdict }> | null;
}>;

export type LockFault =
  /**
   * Somebody has it; verdict `dead` means that another program is taking it over this very moment.
   * `mayTakeOver`: a person who knows better may say so (`takeOver: true`).
   */
  | Readonly<{ code: 'held'; path: string; holder: Holder | null; verdict: Verdict; mayTakeOver: boolean }>
  /** No lock can be made there: the disk is full, the folder cannot be written … */
  | Readonly<{ code: 'cannot-lock'; path: string; because: FileFault }>;

export type LockOptions = Readonly<{
  now: Date;
  /** The person said so: also from another machine, or where it cannot be told. Never from a program that surely runs here. */
  takeOver?: boolean;
  /** Tests only: who we are, and whether a holder still runs. */
  self?: Self;
  probe?: (holder: Holder) => Verdict;
}>;

/** The lock of a journal stands beside it. */
export const lockPath = (journal: string): string => `${journal}.lock`;

/** A lock is made in one go; one that still cannot be read after this long was left by a crash, ms. */
const UNCLEAR_FOR_MS = 10_000;
const LARGEST_LOCK = 4096;
const TOKEN = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

const textOrNull = (value: unknown): string | null =>
  typeof value === 'string' && value !== '' ? plainText(value).slice(0, 120) : null;

const holderIn = (text: string): Holder | null => {
  try {
    const o = JSON.parse(text) as Record<string, unknown> | null;
    const { token, pid } = o ?? {};
    const [host, since] = [textOrNull(o?.host), textOrNull(o?.since)];
    if (typeof token !== 'string' || !TOKEN.test(token) || host === null || since === null) return null;
    if (typeof pid !== 'number' || !Number.isInteger(pid) || pid < 1) return null;
    const [room, started, terminal] = [textOrNull(o?.room), textOrNull(o?.started), textOrNull(o?.terminal)];
    return { token, host, room, pid, started, terminal, since };
  } catch {
    return null;
  }
};

/** A lock as found. `mark` is this one lock and no other, ever: its token, or for rubbish the file itself. */
type Found = Readonly<{ mark: string; holder: Holder | null; changed_ms: number }>;

const find = (path: string): Found | null => {
  try {
    const stat = fs.statSync(path);
    const text = stat.isFile() && stat.size <= LARGEST_LOCK ? fs.readFileSync(path, 'utf8') : '';
    const holder = holderIn(text);
    const mark = holder?.token ?? `x${stat.ino}-${Math.round(stat.mtimeMs)}-${stat.size}`;
    return { mark, holder, changed_ms: stat.mtimeMs };
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return null;
    throw error;
  }
};

const probeWith =
  (us: Self) =>
  (holder: Holder): Verdict => {
    if (holder.host !== us.host || holder.room !== us.room) return 'elsewhere';
    const state = processState(holder.pid);
    if (!state.runs) return 'dead';
    if (state.started === null || holder.started === null) return 'unsure';
    return state.started === holder.started ? 'alive' : 'dead';
  };

const writeLock = (path: string, holder: Holder): void => {
  const fd = fs.openSync(path, 'wx', 0o644);
  try {
    fs.writeFileSync(fd, `${JSON.stringify(holder)}\n`);
  } catch (error) {
    removeQuietly(path);
    throw error;
  } finally {
    fs.closeSync(fd);
  }
};

/** Where the takeover of one certain lock is guarded. Short, for names of files have an end. */
const guardPath = (path: string, mark: string): string => `${path}.${sumOf(mark)}`;

/** Crashes in the middle of a takeover may leave guards behind; while we hold the lock, only one named after ours is in use. */
const sweep = (path: string, ours: Holder): void => {
  try {
    const prefix = `${basename(path)}.`;
    const inUse = basename(guardPath(path, ours.token));
    for (const name of fs.readdirSync(dirname(path))) {
      if (name.startsWith(prefix) && !name.startsWith(inUse)) removeQuietly(join(dirname(path), name));
    }
  } catch {
    // Rubbish that stays harms nothing.
  }
};

const lockOf = (path: string, holder: Holder): Lock => {
  const holds = (): boolean => {
    try {
      return find(path)?.mark === holder.token;
    } catch {
      return false;
    }
  };
  const release = (): void => {
    if (holds()) removeQuietly(path);
  };
  return { path, holder, holds, release };
};

const ROUNDS = 16;
const DEEPEST_GUARD = 3;

/**
 * Making a lock is one `wx` open: of many programs one makes it. Replacing a dead one is not one call, so it is guarded by
 * a second lock named after the dead one's token, which no later lock will have. Whoever holds that guard looks again:
 * only if the dead lock still stands does it put its own in its place, in one rename. Who comes late finds the guard taken,
 * or takes it and finds another lock. A guard left by a crash is a dead lock like any other.
 */
const acquire = (path: string, options: LockOptions, depth: number): Outcome<Locked, LockFault> => {
  const us = options.self ?? thisProcess();
  const probe = options.probe ?? probeWith(us);
  const holder: Holder = { token: newId(), since: options.now.toISOString(), ...us };
  let last: Found | null = null;
  let verdict: Verdict = 'unclear';

  for (let round = 0; round < ROUNDS; round++) {
    try {
      writeLock(path, holder);
      return good({ lock: lockOf(path, holder), tookOver: null });
    } catch (error) {
      if (errorCode(error) !== 'EEXIST') throw error;
    }
    const found = find(path);
    if (found === null) continue;
    last = found;
    const young = Math.abs(options.now.getTime() - found.changed_ms) < UNCLEAR_FOR_MS;
    verdict = found.holder === null ? (young ? 'unclear' : 'dead') : probe(found.holder);
    const free = verdict === 'dead' || (options.takeOver === true && verdict !== 'alive');
    if (!free || depth >= DEEPEST_GUARD) break;

    const guard = acquire(guardPath(path, found.mark), { ...options, takeOver: false }, depth + 1);
    if (!guard.ok) break;
    try {
      if (find(path)?.mark !== found.mark) continue;
      const ready = `${guardPath(path, holder.token)}.new`;
      writeLock(ready, holder);
      fs.renameSync(ready, path);
      return good({ lock: lockOf(path, holder), tookOver: { from: found.holder, because: verdict } });
    } finally {
      guard.value.lock.release();
    }
  }
  const mayTakeOver = verdict !== 'alive' && verdict !== 'dead';
  return { ok: false, fault: { code: 'held', path, holder: last?.holder ?? null, verdict, mayTakeOver } };
};

/**
 * Takes the lock at a path for this process, or says who has it. A lock whose owner has ended on this machine is taken over
 * without a word; one from another machine only when the person says so.
 * @param path of the lock, see `lockPath`
 */
export const takeLock = (path: string, options: LockOptions): Outcome<Locked, LockFault> => {
  try {
    const locked = acquire(path, options, 0);
    if (locked.ok) sweep(path, locked.value.lock.holder);
    return locked;
  } catch (error) {
    return { ok: false, fault: { code: 'cannot-lock', path, because: faultFrom(error, path) } };
  }
};

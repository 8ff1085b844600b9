import type { StoredEntry } from '../build/journal-line.ts';
import type { Outcome } from '../quantity/outcome.ts';
import { good } from '../quantity/outcome.ts';
import type { Clock } from './clock.ts';
import type { FileFault } from './file-fault.ts';
import { type JournalFile, openJournal } from './journal-file.ts';
import { type Lock, type LockFault, lockPath, takeLock } from './lock.ts';
import type { Understand } from './read-journal.ts';

/** A build opened to work on, or to look at when it is held or newer. */
export type OpenBuild<E extends StoredEntry> = Readonly<{
  journal: JournalFile<E>;
  /** Why it may only be looked at, or null while it is ours to write. */
  barred(): string | null;
  /** Who holds it, when it was held at the last try; null when it is ours. */
  heldBy(): LockFault | null;
  /** Takes the lock if it is free by now, and then reads the file anew. True when the build is ours to write. */
  tryAgain(takeOver?: boolean): boolean;
  /** Gives the build free. May be called more than once, also on the way out. */
  release(): void;
}>;

export type OpenBuildOptions<E extends StoredEntry> = Readonly<{
  understand: Understand<E>;
  now: Clock;
  takeOver?: boolean;
}>;

const HELD = 'another program holds this build';
const LOST = 'another program has taken this build over';

/**
 * Opens a build: first the lock, then the file, so that nothing is written in between. A build held by another program
 * opens to be looked at.
 * @param path of the journal
 */
export const openBuild = <E extends StoredEntry>(
  path: string,
  options: OpenBuildOptions<E>,
): Outcome<OpenBuild<E>, FileFault> => {
  let lock: Lock | null = null;
  let held: LockFault | null = null;

  const take = (takeOver: boolean): void => {
    const taken = takeLock(lockPath(path), { now: options.now(), takeOver });
    lock = taken.ok ? taken.value.lock : null;
    held = taken.ok ? null : taken.fault;
  };
  const lockBars = (): string | null => {
    if (lock !== null) return lock.holds() ? null : LOST;
    return held?.code === 'cannot-lock' ? `it cannot be locked here: ${held.because.message}` : HELD;
  };
  const release = (): void => {
    lock?.release();
    lock = null;
  };

  // Looked at before it is locked: no lock is left beside a file that is no build.
  const look = { format: 'curvewright-build', understand: options.understand, barred: lockBars } as const;
  const first = openJournal(path, look);
  if (!first.ok) return first;
  take(options.takeOver === true);
  const journal = first.value;
  const again = journal.changed() ? journal.reload() : null;
  if (again !== null && !again.ok) {
    release();
    return again;
  }

  const barred = (): string | null => lockBars() ?? journal.reading().readOnly;
  const tryAgain = (takeOver = false): boolean => {
    if (lockBars() !== null) {
      release();
      take(takeOver);
      if (lock !== null) journal.reload();
    }
    return barred() === null;
  };
  return good({ journal, barred, heldBy: () => held, tryAgain, release });
};

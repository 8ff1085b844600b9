import type { StoredEntry } from '../../src/build/journal-line.ts';
import type { Understood } from '../../src/build/versions/upcast.ts';
import { type JournalFile, type JournalOptions, openJournal } from '../../src/machine/journal-file.ts';

export const AT = '2026-05-01T18:00:00.000Z';
export const HEADER = { format: 'curvewright-build', build: 'b-1', created: AT } as const;

export const act = (id: string, n: number, more: Record<string, unknown> = {}): StoredEntry => ({
  id,
  n,
  v: 1,
  at: AT,
  kind: 'remarked',
  ...more,
});

export const ids = (entries: readonly StoredEntry[]): string[] => entries.map(e => e.id);

/** These tests know one kind, in version 1. */
export const understand = (stored: StoredEntry): Understood<StoredEntry> => {
  if (stored.kind !== 'remarked' || stored.v > 1) return { is: 'newer', reason: 'it is of another time' };
  return stored.unfit === true
    ? { is: 'unfit', reason: 'it does not fit' }
    : { is: 'current', entry: stored };
};

export const take: JournalOptions<StoredEntry> = { format: 'curvewright-build', understand };

export const opened = (path: string, options = take): JournalFile<StoredEntry> => {
  const open = openJournal(path, options);
  if (!open.ok) throw new Error(`${path}: ${open.fault.message}`);
  return open.value;
};

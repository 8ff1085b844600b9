import type { StoredEntry } from '../journal-line.ts';

/**
 * One step that brings an entry of one kind from the version it was written in to the next. Pure; it is run when a journal
 * is read and never changes the file. `change` gives the fields of the kind; id, count, time and version are kept by `upcast`.
 */
export type VersionStep = Readonly<{ kind: string; from: number; change: (old: StoredEntry) => StoredEntry }>;

/** For every kind this version knows: the steps from version 1 up. The newest version is one more than their number. */
export type VersionTable = ReadonlyMap<string, readonly VersionStep[]>;

export type Understood<E> =
  | Readonly<{ is: 'current'; entry: E }>
  /** Written by a newer Curvewright: the journal may be looked at, not written. */
  | Readonly<{ is: 'newer'; reason: string }>
  /** Of a known kind and version, but not holding what that kind holds. */
  | Readonly<{ is: 'unfit'; reason: string }>;

/**
 * The table of known kinds and their steps.
 * @param kinds every kind of entry this version can read
 * @param steps in any order; throws when one is missing, double or of an unknown kind: that is a bug
 */
export const versionTable = (kinds: readonly string[], steps: readonly VersionStep[]): VersionTable => {
  const stray = steps.find(s => !kinds.includes(s.kind));
  if (stray !== undefined) throw new RangeError(`a version step of the unknown kind ${stray.kind}`);
  return new Map(
    kinds.map(kind => {
      const own = steps.filter(s => s.kind === kind).sort((a, b) => a.from - b.from);
      const gap = own.findIndex((s, i) => s.from !== i + 1);
      if (gap !== -1) throw new RangeError(`the version steps of ${kind} do not lead from 1 up one by one`);
      return [kind, own] as const;
    }),
  );
};

/**
 * An entry as this version knows it. Never throws.
 * @param stored the entry as it stands on disk
 */
export const upcast = (stored: StoredEntry, table: VersionTable): Understood<StoredEntry> => {
  const steps = table.get(stored.kind);
  if (steps === undefined)
    return { is: 'newer', reason: 'it holds a kind of entry this version does not know' };
  if (stored.v > steps.length + 1) {
    return { is: 'newer', reason: 'it holds an entry written in a newer way than this version knows' };
  }
  try {
    const entry = steps
      .slice(stored.v - 1)
      .reduce<StoredEntry>((old, step) => ({ ...step.change(old), ...stamp(old), v: step.from + 1 }), stored);
    return { is: 'current', entry };
  } catch {
    return { is: 'unfit', reason: 'an entry of an older version does not hold what it should' };
  }
};

const stamp = (e: StoredEntry): Pick<StoredEntry, 'id' | 'n' | 'at'> => ({ id: e.id, n: e.n, at: e.at });

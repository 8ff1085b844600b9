import { entryText, type StoredEntry } from './journal-line.ts';

type Placed = Readonly<{ id: string; n: number }>;

/** Entries stand by their count, then by their random id; never by the clock, which may be wrong or set back. */
export const byOrder = (a: Placed, b: Placed): number =>
  a.n - b.n || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/**
 * The entries in their order. Two with the same count and id (two copies of one line, one of them changed) stand by
 * their text, so that the order never depends on the order in which they were read.
 */
export const inOrder = <E extends StoredEntry>(entries: readonly E[]): E[] =>
  [...entries].sort((a, b) => byOrder(a, b) || byText(entryText(a), entryText(b)));

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The count the next entry gets: one more than the greatest seen, 1 in an empty journal. */
export const nextN = (entries: readonly Placed[]): number =>
  entries.reduce((n, e) => Math.max(n, e.n), 0) + 1;

/**
 * The ids of the entries that no longer count: struck, or replaced by a correction. Looked at from the newest back, so a
 * strike that was itself struck takes nothing away, and a correction taken back gives the entry it replaced its place again. One
 * that was corrected in its turn gives nothing back: of a number read three times only the last counts.
 */
export const goneIds = (entries: readonly StoredEntry[]): ReadonlySet<string> => {
  const struck = new Set<string>();
  const replaced = new Set<string>();
  for (const e of inOrder(entries).reverse()) {
    const corrected = replaced.has(e.id);
    if (struck.has(e.id) && !corrected) continue;
    if (e.kind === 'entry-struck' && typeof e.target === 'string' && !corrected) struck.add(e.target);
    for (const id of e.replaces ?? []) replaced.add(id);
  }
  return new Set([...struck, ...replaced]);
};

/** The entries that count, in order: neither struck nor replaced, and no strikes. */
export const live = <E extends StoredEntry>(entries: readonly E[]): E[] => {
  const gone = goneIds(entries);
  return inOrder(entries).filter(e => !gone.has(e.id) && e.kind !== 'entry-struck');
};

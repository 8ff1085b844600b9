import type { Outcome } from '../quantity/outcome.ts';
import { good } from '../quantity/outcome.ts';
import { entryText, type Header, type StoredEntry } from './journal-line.ts';
import { inOrder } from './order.ts';

/** A journal in memory: its first line, and its entries as they stand on disk (never brought to a newer version). */
export type Journal = Readonly<{ header: Header; entries: readonly StoredEntry[] }>;

/** One id with more than one content: one copy of a line was changed. Each text once, sorted. */
export type IdConflict = Readonly<{ id: string; texts: readonly string[] }>;

export type Joined = Readonly<{ journal: Journal; conflicts: readonly IdConflict[] }>;

export type JoinFault = Readonly<{ code: 'other-build' | 'other-format'; message: string; accepted: string }>;

/** Each entry once, in order: a line that came in twice is one entry; one id with two contents stays two. */
export const distinct = (entries: readonly StoredEntry[]): StoredEntry[] => {
  const seen = new Map<string, StoredEntry | Map<string, StoredEntry>>();
  for (const e of entries) {
    const before = seen.get(e.id);
    // Texts are only made where an id comes twice: for a whole journal they cost more than reading it.
    if (before === undefined) seen.set(e.id, e);
    else {
      const texts = before instanceof Map ? before : new Map([[entryText(before), before]]);
      if (!texts.has(entryText(e))) texts.set(entryText(e), e);
      seen.set(e.id, texts);
    }
  }
  return inOrder([...seen.values()].flatMap(held => (held instanceof Map ? [...held.values()] : [held])));
};

/** The ids that stand for more than one content among these entries, by id. */
export const idConflicts = (entries: readonly StoredEntry[]): IdConflict[] => {
  const byId = new Map<string, StoredEntry[]>();
  for (const e of distinct(entries)) byId.set(e.id, [...(byId.get(e.id) ?? []), e]);
  return [...byId.entries()]
    .filter(([, held]) => held.length > 1)
    .map(([id, held]) => ({ id, texts: held.map(entryText).sort() }))
    .sort((a, b) => (a.id < b.id ? -1 : 1));
};

/**
 * Two copies of one build that went on apart, as one: the union of their entries, in order. Nothing is added and nothing
 * decided; two readings of one thing both stay and become a finding. Whatever the order of joining, and however often,
 * the result is the same to the byte.
 * @returns the joined journal with the ids that stand for two contents, or why these two do not belong together
 */
export const join = (a: Journal, b: Journal): Outcome<Joined, JoinFault> => {
  if (a.header.format !== b.header.format) {
    return {
      ok: false,
      fault: {
        code: 'other-format',
        message: 'one is a build and the other the shop',
        accepted: 'two copies of the same build, or two of the same shop',
      },
    };
  }
  if (a.header.build !== b.header.build) {
    return {
      ok: false,
      fault: {
        code: 'other-build',
        message: 'these are two builds, not two copies of one',
        accepted: 'two files that were copied from the same build',
      },
    };
  }
  const entries = distinct([...a.entries, ...b.entries]);
  const header: Header = {
    format: a.header.format,
    version: Math.max(a.header.version, b.header.version),
    build: a.header.build,
    // Copies of one build were created once; if a first line was changed by hand, the earlier is kept, from either side.
    created: [a.header.created, b.header.created].sort()[0]!,
  };
  return good({ journal: { header, entries }, conflicts: idConflicts(entries) });
};

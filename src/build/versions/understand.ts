import { asEntry, ENTRY_SCHEMAS, type Entry } from '../entries.ts';
import type { StoredEntry } from '../journal-line.ts';
import { VERSION_STEPS } from './steps.ts';
import { type Understood, upcast, versionTable } from './upcast.ts';

const TABLE = versionTable(Object.keys(ENTRY_SCHEMAS), VERSION_STEPS);

/** A stored entry of a build as this version knows it: brought up to date, then held against its schema. Never throws. */
export const understandEntry = (stored: StoredEntry): Understood<Entry> => {
  const understood = upcast(stored, TABLE);
  if (understood.is !== 'current') return understood;
  const entry = asEntry(understood.entry);
  return entry === null
    ? { is: 'unfit', reason: `what the entry says does not fit its kind (${stored.kind})` }
    : { is: 'current', entry };
};

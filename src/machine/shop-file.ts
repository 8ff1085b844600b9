import { dirname, join } from 'node:path';
import type { JournalFormat, StoredEntry } from '../build/journal-line.ts';
import { good, type Outcome } from '../quantity/outcome.ts';
import { BUILD_ENDING, SHOP_NAME } from './builds.ts';
import type { Clock } from './clock.ts';
import type { FileFault } from './file-fault.ts';
import { newId } from './ids.ts';
import { createJournal, type JournalFile, openJournal } from './journal-file.ts';
import type { Understand } from './read-journal.ts';

const FORMAT: JournalFormat = 'curvewright-shop';

/** The shop's journal lies beside the builds. */
export const shopPath = (folder: string): string => join(folder, SHOP_NAME + BUILD_ENDING);

/** The folder whose shop a build works with: its own. */
export const shopFolder = (buildPath: string): string => dirname(buildPath);

/** The shop as it stands, or null where nothing was written to it yet: looking makes no file. */
export const lookIntoShop = <E extends StoredEntry>(
  folder: string,
  understand: Understand<E>,
): Outcome<JournalFile<E> | null, FileFault> => {
  const there = openJournal(shopPath(folder), { format: FORMAT, understand });
  return there.ok || there.fault.code !== 'missing' ? there : good(null);
};

/**
 * The shop: kerf, minutes, prices, offcuts, learned weld pull, in a journal like a build's; made when it is not there yet.
 * Two programs may write to it in turns: on the fault `changed`, reload and append again.
 */
export const openShop = <E extends StoredEntry>(
  folder: string,
  understand: Understand<E>,
  now: Clock,
): Outcome<JournalFile<E>, FileFault> => {
  const path = shopPath(folder);
  const there = openJournal(path, { format: FORMAT, understand });
  if (there.ok || there.fault.code !== 'missing') return there;
  const made = createJournal(path, { format: FORMAT, build: newId(), created: now().toISOString() });
  // Another program may have made it in between: then that one is opened.
  if (!made.ok && made.fault.code !== 'exists') return made;
  return openJournal(path, { format: FORMAT, understand });
};

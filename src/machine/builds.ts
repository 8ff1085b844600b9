import fs from 'node:fs';
import { basename, join } from 'node:path';
import type { JournalFormat, StoredEntry } from '../build/journal-line.ts';
import { plainText } from '../build/plain-text.ts';
import type { Outcome } from '../quantity/outcome.ts';
import { good } from '../quantity/outcome.ts';
import type { Clock } from './clock.ts';
import { errorCode, type FileFault, faultFrom, fileFault } from './file-fault.ts';
import { newId } from './ids.ts';
import { createJournal, openJournal } from './journal-file.ts';
import type { JournalReading, Understand } from './read-journal.ts';
import { safeName } from './safe-name.ts';

export const BUILD_ENDING = '.jsonl';
export const SHOP_NAME = 'shop';
const FORMAT: JournalFormat = 'curvewright-build';

/** A build as the first page lists it. */
export type ListedBuild<E extends StoredEntry> = Readonly<{
  /** Name of the file, without folder and ending: what a person types after `--build`. */
  name: string;
  path: string;
  build: string | null;
  /** When the last entry was made, as its machine's clock had it; null when there is none. */
  lastAt: string | null;
  count: number;
  setAside: number;
  readOnly: string | null;
  entries: readonly E[];
}>;

export type BuildList<E extends StoredEntry> = Readonly<{
  /** Last worked on first. */
  builds: readonly ListedBuild<E>[];
  /** Files of that ending that could not be read as a build. */
  unreadable: readonly Readonly<{ name: string; fault: FileFault }>[];
}>;

const nameOf = (path: string): string => plainText(basename(path, BUILD_ENDING));

const listed = <E extends StoredEntry>(path: string, reading: JournalReading<E>): ListedBuild<E> => ({
  name: nameOf(path),
  path,
  build: reading.header?.build ?? null,
  lastAt: reading.stored.at(-1)?.at ?? null,
  count: reading.stored.length,
  setAside: reading.setAside.length,
  readOnly: reading.readOnly,
  entries: reading.entries,
});

const time = (at: string | null): number => {
  const ms = Date.parse(at ?? '');
  return Number.isNaN(ms) ? 0 : ms;
};

/**
 * The builds in a folder. A folder that is not there yet has none.
 * @returns the builds with what is in them, or why the folder cannot be read
 */
export const listBuilds = <E extends StoredEntry>(
  folder: string,
  understand: Understand<E>,
): Outcome<BuildList<E>, FileFault> => {
  let names: string[];
  try {
    names = fs.readdirSync(folder).sort();
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return good({ builds: [], unreadable: [] });
    return { ok: false, fault: faultFrom(error, folder) };
  }
  const builds: ListedBuild<E>[] = [];
  const unreadable: { name: string; fault: FileFault }[] = [];
  for (const file of names) {
    if (!file.endsWith(BUILD_ENDING) || file.startsWith('.') || file === SHOP_NAME + BUILD_ENDING) continue;
    const path = join(folder, file);
    const opened = openJournal(path, { format: FORMAT, understand });
    if (opened.ok) builds.push(listed(path, opened.value.reading()));
    else if (opened.fault.code !== 'not-a-file') unreadable.push({ name: nameOf(path), fault: opened.fault });
  }
  builds.sort((a, b) => time(b.lastAt) - time(a.lastAt) || (a.name < b.name ? -1 : 1));
  return good({ builds, unreadable });
};

/**
 * The file of the build a person means.
 * @param said a name from the list, or the name they gave the build
 * @returns the path, or `missing`
 */
export const findBuild = (folder: string, said: string): Outcome<string, FileFault> => {
  // Only names, never paths: what was typed cannot lead out of the folder.
  const names = [...new Set([/[\\/]/.test(said) || said.startsWith('.') ? '' : said, safeName(said)])];
  for (const name of names) {
    const path = join(folder, name + BUILD_ENDING);
    if (name !== '' && name !== SHOP_NAME && fs.existsSync(path)) return good(path);
  }
  return { ok: false, fault: fileFault('missing', join(folder, safeName(said) + BUILD_ENDING)) };
};

const TRIES = 999;

/**
 * Writes a new build under the first free name: `kicker`, `kicker-2`, `kicker-3` …, never over another.
 * @param name as the person gave it; the file's name is made from it
 * @param entries the first entries, with their ids and counts
 * @returns the path, or why it could not be written
 */
export const createBuild = (
  folder: string,
  name: string,
  entries: readonly StoredEntry[],
  now: Clock,
): Outcome<string, FileFault> => {
  const stem = safeName(name);
  const header = { format: FORMAT, build: newId(), created: now().toISOString() };
  let made: Outcome<string, FileFault> = { ok: false, fault: fileFault('exists', join(folder, stem)) };
  for (let i = 1; i <= TRIES; i++) {
    made = createJournal(join(folder, `${stem}${i === 1 ? '' : `-${i}`}${BUILD_ENDING}`), header, entries);
    if (made.ok || made.fault.code !== 'exists') return made;
  }
  return made;
};

/** The demo builds that came with the program, by name. */
export const listDemos = <E extends StoredEntry>(
  demo: string | null,
  understand: Understand<E>,
): readonly ListedBuild<E>[] => {
  const list = demo === null ? null : listBuilds(demo, understand);
  return list?.ok ? [...list.value.builds].sort((a, b) => (a.name < b.name ? -1 : 1)) : [];
};

/**
 * Opens a demo: copies it among the person's own builds, whole or not at all, under a free name, and leaves the demo as it is.
 *
 * The copy is a build of its own, with a new build id: the demo is the same file on every machine, so with its id the
 * copies of two people who never shared anything would count as two copies of one build, and joining them would mix their
 * doings without a word. Entry ids stay, because entries point at one another by them.
 * @param path of the demo
 */
export const copyDemo = <E extends StoredEntry>(
  path: string,
  folder: string,
  understand: Understand<E>,
  now: Clock,
): Outcome<string, FileFault> => {
  const demo = openJournal(path, { format: FORMAT, understand });
  return demo.ok ? createBuild(folder, nameOf(path), demo.value.reading().stored, now) : demo;
};

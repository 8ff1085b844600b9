import fs from 'node:fs';
import { join } from 'node:path';
import Conf from 'conf';
import { plainText } from '../build/plain-text.ts';

/** What a person likes, and nothing a build depends on: losing it costs two key presses. */
export type Preferences = Readonly<{
  units: 'metric' | 'us' | null;
  /** Name of the file, without folder and ending, of the build last worked on. */
  lastBuild: string | null;
}>;

export type Settings = Readonly<{
  preferences(): Preferences;
  /** Sets some and keeps the rest. False when they could not be written; then they hold until the program ends. */
  set(some: Partial<Preferences>): boolean;
  /** What a person should know about the file, for example that a damaged one was set aside, or null. */
  notice: string | null;
}>;

const NONE: Preferences = { units: null, lastBuild: null };

/** The file may hold anything: what is no preference of ours is as if it were not there. */
const preferencesIn = (store: Readonly<Record<string, unknown>>): Preferences => ({
  units: store.units === 'metric' || store.units === 'us' ? store.units : null,
  lastBuild:
    typeof store.lastBuild === 'string' && store.lastBuild !== '' && store.lastBuild.length <= 200
      ? plainText(store.lastBuild)
      : null,
});

/** Without a schema or defaults: with them the library writes on opening. Never its own clearing of damaged files: it empties them. */
const openStore = (folder: string): Conf<Record<string, unknown>> =>
  new Conf<Record<string, unknown>>({
    cwd: folder,
    configName: 'settings',
    projectName: 'curvewright',
    projectSuffix: '',
  });

/** The library tries for a whole second, busy, before it gives up on a folder it may not write: so it is asked first. */
const writable = (folder: string): boolean => {
  try {
    fs.mkdirSync(folder, { recursive: true });
    fs.accessSync(folder, fs.constants.W_OK);
    return true;
  } catch {
    return false;
  }
};

const setAside = (folder: string, now: Date): string | null => {
  const file = join(folder, 'settings.json');
  const aside = `${file}.corrupt-${now.toISOString().replace(/[:.]/g, '')}`;
  try {
    fs.renameSync(file, aside);
    return aside;
  } catch {
    return null;
  }
};

/**
 * The preferences of this person. Never throws: a damaged file is set aside beside its place (`.corrupt-<time>`), a folder
 * that cannot be written or made is lived with.
 * @param folder the config folder
 */
export const openSettings = (folder: string, now: Date): Settings => {
  let store: Conf<Record<string, unknown>> | null = null;
  let notice: string | null = null;
  try {
    store = openStore(folder);
    if (Object.keys(store.store).some(key => /^\d+$/.test(key)))
      throw new SyntaxError('a list, not settings');
  } catch (error) {
    store = null;
    if (error instanceof SyntaxError) {
      const aside = setAside(folder, now);
      notice =
        aside === null
          ? 'The settings file is damaged.'
          : `The settings file was damaged and is now ${aside}.`;
    } else notice = 'The settings cannot be read; the usual ones are used.';
  }
  let held = store === null ? NONE : preferencesIn(store.store);

  const set = (some: Partial<Preferences>): boolean => {
    held = { ...held, ...some };
    if (!writable(folder)) return false;
    try {
      store ??= openStore(folder);
      for (const [key, value] of Object.entries(some)) {
        if (value === null) store.delete(key);
        else store.set(key, value);
      }
      return true;
    } catch {
      return false;
    }
  };
  return { preferences: () => held, set, notice };
};

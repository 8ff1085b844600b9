import fs from 'node:fs';
import { join } from 'node:path';
import { plainText } from '../build/plain-text.ts';
import { errorCode } from './file-fault.ts';
import { makeFolder } from './make-folder.ts';

/** What a person likes, and nothing a build depends on: losing it costs two key presses. */
export type Preferences = Readonly<{
  units: 'metric' | 'us' | null;
  /** Name of the file, without folder and ending, of the build last worked on. */
  lastBuild: string | null;
}>;

export type Settings = Readonly<{
  preferences(): Preferences;
  /** Sets some and keeps the rest. False when they could not be written; then they hold until the program ends. */
  set(some: Partial<Preferences>): Promise<boolean>;
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

/** The library tries for a whole second, busy, before it gives up on a folder it may not write: so it is asked first. */
const writable = (folder: string): boolean => {
  try {
    makeFolder(folder);
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
  let notice: string | null = null;
  let held = NONE;
  try {
    const store: unknown = JSON.parse(fs.readFileSync(join(folder, 'settings.json'), 'utf8'));
    if (Array.isArray(store)) throw new SyntaxError('a list, not settings');
    if (typeof store === 'object' && store !== null) held = preferencesIn(store as Record<string, unknown>);
  } catch (error) {
    if (error instanceof SyntaxError) {
      const aside = setAside(folder, now);
      notice =
        aside === null
          ? 'The settings file is damaged.'
          : `The settings file was damaged and is now ${aside}.`;
    } else if (errorCode(error) !== 'ENOENT') {
      notice = 'The settings cannot be read; the usual ones are used.';
    }
  }

  /** One after the other: two writes at once would each keep the other's out. */
  let before: Promise<unknown> = Promise.resolve();
  const set = (some: Partial<Preferences>): Promise<boolean> => {
    held = { ...held, ...some };
    const written = before.then(async () => {
      if (!writable(folder)) return false;
      try {
        // The library that writes is larger than all that reads: it is loaded when there is something to write.
        const { writeSettings } = await import('./settings-store.ts');
        writeSettings(folder, some);
        return true;
      } catch {
        return false;
      }
    });
    before = written;
    return written;
  };
  return { preferences: () => held, set, notice };
};

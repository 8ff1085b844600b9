import fs from 'node:fs';
import { homedir, platform } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const NAME = 'curvewright';

export type Folders = Readonly<{
  /** Where the builds and the shop of this person are. May not exist yet. */
  builds: string;
  /** The two invented builds that come with the program, or null when they are not there. */
  demo: string | null;
  /** Where the settings are. May not exist yet. */
  config: string;
  /** What can be made again: compiled forms of the program. May not exist yet. */
  cache: string;
}>;

export type FolderOptions = Readonly<{
  /** The `--sessions` of the command line; relative to where the person stands. */
  sessions?: string | undefined;
  env?: Readonly<Record<string, string | undefined>>;
  system?: NodeJS.Platform;
  home?: string;
  /** Folder of the running program file, from which the demo builds are looked for. */
  program?: string;
}>;

/** A folder from the environment counts only when absolute (XDG Base Directory Specification, "Basics": relative ones are invalid). */
const absolute = (value: string | undefined, p: path.PlatformPath): string | null =>
  value !== undefined && value !== '' && p.isAbsolute(value) ? value : null;

/** From the checkout `src/machine` lies two below the project, in the package `dist` one. */
const demoFrom = (program: string): string | null => {
  const places = [1, 2, 3].map(up => path.join(program, ...Array<string>(up).fill('..'), 'sessions', 'demo'));
  return places.find(place => fs.existsSync(place)) ?? null;
};

/**
 * Where everything is. Looks, makes nothing.
 * Builds: `--sessions`, else CURVEWRIGHT_SESSIONS, else the data folder of the account as its system has it.
 */
export const folders = (options: FolderOptions = {}): Folders => {
  const env = options.env ?? process.env;
  const system = options.system ?? platform();
  const p = system === 'win32' ? path.win32 : path.posix;
  const home = options.home ?? homedir();
  const windows = system === 'win32';
  const mac = system === 'darwin';

  const data =
    absolute(env.XDG_DATA_HOME, p) ??
    (windows
      ? (absolute(env.LOCALAPPDATA, p) ?? p.join(home, 'AppData', 'Local'))
      : mac
        ? p.join(home, 'Library', 'Application Support')
        : p.join(home, '.local', 'share'));
  const config =
    absolute(env.XDG_CONFIG_HOME, p) ??
    (windows
      ? (absolute(env.APPDATA, p) ?? p.join(home, 'AppData', 'Roaming'))
      : mac
        ? p.join(home, 'Library', 'Preferences')
        : p.join(home, '.config'));

  const cache =
    absolute(env.XDG_CACHE_HOME, p) ??
    (windows
      ? p.join(absolute(env.LOCALAPPDATA, p) ?? p.join(home, 'AppData', 'Local'), 'Cache')
      : mac
        ? p.join(home, 'Library', 'Caches')
        : p.join(home, '.cache'));

  const said = options.sessions || env.CURVEWRIGHT_SESSIONS || null;
  return {
    builds: said === null ? p.join(data, NAME) : p.resolve(said),
    demo: demoFrom(options.program ?? path.dirname(fileURLToPath(import.meta.url))),
    config: p.join(config, NAME),
    cache: p.join(cache, NAME),
  };
};

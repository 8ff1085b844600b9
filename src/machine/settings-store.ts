import Conf from 'conf';

/**
 * Writes some settings and keeps the rest, as the library does: to a file beside it, flushed, then put in its place.
 * Without a schema or defaults: with them the library writes on opening. Never its own clearing of damaged files: it empties them.
 * @param some null takes a setting away
 */
export const writeSettings = (folder: string, some: Readonly<Record<string, unknown>>): void => {
  const store = new Conf<Record<string, unknown>>({
    cwd: folder,
    configName: 'settings',
    projectName: 'curvewright',
    projectSuffix: '',
  });
  for (const [key, value] of Object.entries(some)) {
    if (value === null) store.delete(key);
    else store.set(key, value);
  }
};

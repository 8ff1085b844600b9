import fs from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { type FolderOptions, folders } from '../../src/machine/folders.ts';
import { tempFolder } from './temp-folder.ts';

const temp = tempFolder();
afterEach(temp.remove);

const linux: FolderOptions = { system: 'linux', home: '/home/ann', env: {} };

describe('the builds of a person', () => {
  test('are where the command line says, whatever else is set', () => {
    const env = { CURVEWRIGHT_SESSIONS: '/b', XDG_DATA_HOME: '/x' };
    expect(folders({ ...linux, sessions: '/a', env }).builds).toBe('/a');
    expect(folders({ ...linux, sessions: 'here', env }).builds).toBe(resolve('here'));
  });

  test('else where CURVEWRIGHT_SESSIONS says; empty says nothing', () => {
    expect(folders({ ...linux, env: { CURVEWRIGHT_SESSIONS: '/b', XDG_DATA_HOME: '/x' } }).builds).toBe('/b');
    expect(folders({ ...linux, sessions: '', env: { CURVEWRIGHT_SESSIONS: '' } }).builds).toBe(
      '/home/ann/.local/share/curvewright',
    );
  });

  // XDG Base Directory Specification: defaults $HOME/.local/share and $HOME/.config; a relative path is invalid and to be ignored [found].
  test('else in the data folder of the account; a relative one is ignored', () => {
    expect(folders({ ...linux, env: { XDG_DATA_HOME: '/x' } }).builds).toBe('/x/curvewright');
    expect(folders({ ...linux, env: { XDG_DATA_HOME: 'x' } }).builds).toBe(
      '/home/ann/.local/share/curvewright',
    );
    expect(folders({ ...linux, env: { XDG_DATA_HOME: '' } }).builds).toBe(
      '/home/ann/.local/share/curvewright',
    );
  });
});

test('the settings are in the config folder of the account', () => {
  expect(folders(linux).config).toBe('/home/ann/.config/curvewright');
  expect(folders({ ...linux, env: { XDG_CONFIG_HOME: '/c' } }).config).toBe('/c/curvewright');
  expect(folders({ ...linux, env: { XDG_CONFIG_HOME: './c' } }).config).toBe('/home/ann/.config/curvewright');
});

test('what can be made again is in the cache folder of the account', () => {
  expect(folders(linux).cache).toBe('/home/ann/.cache/curvewright');
  expect(folders({ ...linux, env: { XDG_CACHE_HOME: '/c' } }).cache).toBe('/c/curvewright');
  expect(folders({ ...linux, env: { XDG_CACHE_HOME: './c' } }).cache).toBe('/home/ann/.cache/curvewright');
});

test('other systems have their own places', () => {
  expect(folders({ system: 'darwin', home: '/Users/ann', env: {} })).toMatchObject({
    builds: '/Users/ann/Library/Application Support/curvewright',
    config: '/Users/ann/Library/Preferences/curvewright',
  });
  const windows = { system: 'win32', home: 'C:\\Users\\ann' } as const;
  expect(folders({ ...windows, env: { LOCALAPPDATA: 'D:\\L', APPDATA: 'D:\\R' } })).toMatchObject({
    builds: 'D:\\L\\curvewright',
    config: 'D:\\R\\curvewright',
  });
  expect(folders({ ...windows, env: {} }).builds).toBe('C:\\Users\\ann\\AppData\\Local\\curvewright');
});

describe('the demo builds', () => {
  test('are found from the checkout and from the package', () => {
    const project = temp.make();
    const demo = join(project, 'sessions', 'demo');
    for (const place of ['src/machine', 'dist']) fs.mkdirSync(join(project, place), { recursive: true });
    fs.mkdirSync(demo, { recursive: true });
    expect(folders({ program: join(project, 'src', 'machine') }).demo).toBe(demo);
    expect(folders({ program: join(project, 'dist') }).demo).toBe(demo);
  });

  test('may be missing', () => expect(folders({ program: temp.make() }).demo).toBeNull());
});

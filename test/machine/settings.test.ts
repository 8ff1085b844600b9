import fs from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openSettings } from '../../src/machine/settings.ts';
import { tempFolder } from './temp-folder.ts';

const temp = tempFolder();
let folder: string;
beforeEach(() => {
  folder = join(temp.make(), 'config');
});
afterEach(temp.remove);

const now = new Date('2026-05-01T18:00:00.000Z');
const none = { units: null, lastBuild: null };
const put = (text: string): void => {
  fs.mkdirSync(folder, { recursive: true });
  fs.writeFileSync(join(folder, 'settings.json'), text);
};

describe('settings', () => {
  test('are the usual ones at first, and say nothing', async () => {
    const settings = openSettings(folder, now);
    expect(settings.preferences()).toEqual(none);
    expect(settings.notice).toBeNull();
  });

  test('are kept for the next time', async () => {
    const settings = openSettings(folder, now);
    expect(await settings.set({ units: 'us' })).toBe(true);
    expect(await settings.set({ lastBuild: 'quarry-lane-kicker' })).toBe(true);
    expect(settings.preferences()).toEqual({ units: 'us', lastBuild: 'quarry-lane-kicker' });
    expect(openSettings(folder, now).preferences()).toEqual({ units: 'us', lastBuild: 'quarry-lane-kicker' });
    expect(fs.readdirSync(folder)).toEqual(['settings.json']);
  });

  test('can be taken back', async () => {
    await openSettings(folder, now).set({ units: 'us', lastBuild: 'x' });
    expect(await openSettings(folder, now).set({ lastBuild: null })).toBe(true);
    expect(openSettings(folder, now).preferences()).toEqual({ units: 'us', lastBuild: null });
  });

  test.each([
    ['torn', '{"units": "u'],
    ['empty', ''],
    ['of noughts', '\0\0\0'],
    ['a list', '["us"]'],
  ])('that are %s are set aside whole, and the usual ones hold', async (_, text) => {
    put(text);
    const settings = openSettings(folder, now);
    expect(settings.preferences()).toEqual(none);
    expect(settings.notice).toMatch(/damaged/);
    const aside = 'settings.json.corrupt-2026-05-01T180000000Z';
    expect(fs.readdirSync(folder)).toEqual([aside]);
    expect(fs.readFileSync(join(folder, aside), 'utf8')).toBe(text);
    expect(await settings.set({ units: 'metric' })).toBe(true);
    expect(openSettings(folder, now).preferences().units).toBe('metric');
  });

  test('of wrong sorts count as not set', async () => {
    put(JSON.stringify({ units: 'cubits', lastBuild: 7, more: true }));
    expect(openSettings(folder, now).preferences()).toEqual(none);
    put(JSON.stringify({ units: 'us', lastBuild: '\x1b[31mred' }));
    expect(openSettings(folder, now).preferences()).toEqual({ units: 'us', lastBuild: 'red' });
    put('null');
    expect(openSettings(folder, now).preferences()).toEqual(none);
  });

  test('of a newer program keep what we do not know', async () => {
    put(JSON.stringify({ units: 'us', sound: 'off' }));
    await openSettings(folder, now).set({ units: 'metric' });
    expect(JSON.parse(fs.readFileSync(join(folder, 'settings.json'), 'utf8'))).toEqual({
      units: 'metric',
      sound: 'off',
    });
  });

  test('that can be put nowhere hold until the end', async () => {
    fs.writeFileSync(folder, 'a file where the folder belongs');
    const settings = openSettings(folder, now);
    expect(settings.preferences()).toEqual(none);
    expect(settings.notice).toMatch(/usual ones/);
    expect(await settings.set({ units: 'us' })).toBe(false);
    expect(settings.preferences().units).toBe('us');
  });

  test.skipIf(process.getuid?.() === 0)('in a folder without leave to write hold until the end', async () => {
    fs.mkdirSync(folder, { recursive: true });
    fs.chmodSync(folder, 0o555);
    const settings = openSettings(folder, now);
    expect(await settings.set({ units: 'us' })).toBe(false);
    expect(settings.preferences().units).toBe('us');
  });
});

import fs from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { join as joinJournals } from '../../src/build/join.ts';
import { writeHeader, writeLine } from '../../src/build/journal-line.ts';
import { copyDemo, createBuild, findBuild, listBuilds, listDemos } from '../../src/machine/builds.ts';
import { openShop, shopPath } from '../../src/machine/shop-file.ts';
import { act, HEADER, ids, opened, understand } from './journals.ts';
import { tempFolder } from './temp-folder.ts';

const temp = tempFolder();
let folder: string;
beforeEach(() => {
  folder = join(temp.make(), 'builds');
});
afterEach(temp.remove);

const now = (): Date => new Date('2026-05-01T18:00:00.000Z');
const list = (where = folder) => {
  const listed = listBuilds(where, understand);
  if (!listed.ok) throw new Error(listed.fault.message);
  return listed.value;
};
const made = (name: string, ...entries: Parameters<typeof createBuild>[2]): string => {
  const done = createBuild(folder, name, entries, now);
  if (!done.ok) throw new Error(done.fault.message);
  return done.value;
};

describe('the list of builds', () => {
  test('of a folder that is not there yet is empty', () =>
    expect(list()).toEqual({ builds: [], unreadable: [] }));

  test('tells name, last entry, number of entries and of damaged lines; last worked on first', () => {
    made('Old one', act('a', 1, { at: '2026-01-01T10:00:00Z' }));
    const path = made('Quarry Lane kicker', act('a', 1), act('b', 2, { at: '2026-06-01T10:00:00Z' }));
    fs.appendFileSync(path, 'torn');
    expect(list().builds).toMatchObject([
      {
        name: 'quarry-lane-kicker',
        path,
        count: 2,
        setAside: 1,
        lastAt: '2026-06-01T10:00:00Z',
        readOnly: null,
      },
      { name: 'old-one', count: 1, setAside: 0 },
    ]);
    expect(ids(list().builds[0]!.entries)).toEqual(['a', 'b']);
  });

  test('leaves out the shop, locks, folders, hidden files and other things, and names what it cannot read', () => {
    made('kicker', act('a', 1));
    openShop(folder, understand, now);
    fs.mkdirSync(join(folder, 'folder.jsonl'));
    fs.writeFileSync(join(folder, 'kicker.jsonl.lock'), '');
    fs.writeFileSync(join(folder, 'notes.txt'), '');
    fs.writeFileSync(join(folder, '.hidden.jsonl'), '');
    fs.writeFileSync(join(folder, 'diary\x1b[2J.jsonl'), 'dear diary');
    expect(list().builds.map(b => b.name)).toEqual(['kicker']);
    expect(list().unreadable).toMatchObject([{ name: 'diary', fault: { code: 'not-a-journal' } }]);
  });

  test('lists a build of a newer program as read-only, and one without a clock last', () => {
    made('newer', act('a', 1, { kind: 'of-tomorrow' }));
    made('timeless', act('a', 1, { at: 'some day' }));
    expect(list().builds).toMatchObject([
      { name: 'newer', readOnly: expect.stringMatching(/newer/) },
      { name: 'timeless' },
    ]);
  });

  test('of something that is no folder is a fault', () => {
    fs.writeFileSync(folder, '');
    expect(listBuilds(folder, understand).ok).toBe(false);
  });
});

describe('a new build', () => {
  test('gets the first free name and an id of its own', () => {
    const paths = ['Kicker', 'kicker', 'KICKER!'].map(name => made(name));
    expect(paths.map(p => p.slice(folder.length + 1))).toEqual([
      'kicker.jsonl',
      'kicker-2.jsonl',
      'kicker-3.jsonl',
    ]);
    expect(new Set(list().builds.map(b => b.build)).size).toBe(3);
  });

  test('is found by the name of its file or by its own, and never outside the folder', () => {
    const path = made('Quarry Lane kicker');
    fs.writeFileSync(join(folder, '..', 'secret.jsonl'), '');
    for (const said of ['quarry-lane-kicker', 'Quarry Lane kicker', 'QUARRY LANE KICKER']) {
      expect(findBuild(folder, said)).toEqual({ ok: true, value: path });
    }
    for (const said of ['../secret', '..', '', 'shop', '/etc/passwd', 'none']) {
      expect(findBuild(folder, said)).toMatchObject({ ok: false, fault: { code: 'missing' } });
    }
  });
});

describe('a demo', () => {
  let demo: string;
  beforeEach(() => {
    demo = temp.make();
    const lines = [writeHeader({ ...HEADER, version: 1 }), ...[act('a', 1), act('b', 2)].map(writeLine)];
    fs.writeFileSync(join(demo, 'garden-kicker.jsonl'), `${lines.join('\n')}\n`);
  });

  test('is listed by name; none where there is no demo folder', () => {
    expect(listDemos(demo, understand).map(b => b.name)).toEqual(['garden-kicker']);
    expect(listDemos(null, understand)).toEqual([]);
  });

  test('is copied with all its entries under a free name, as a build of its own, and stays as it is', () => {
    const from = join(demo, 'garden-kicker.jsonl');
    const before = fs.readFileSync(from, 'utf8');
    const copies = [1, 2].map(() => copyDemo(from, folder, understand, now));
    expect(copies).toMatchObject([
      { ok: true, value: join(folder, 'garden-kicker.jsonl') },
      { ok: true, value: join(folder, 'garden-kicker-2.jsonl') },
    ]);
    expect(fs.readFileSync(from, 'utf8')).toBe(before);
    const [one, two] = list().builds;
    expect(ids(one!.entries)).toEqual(['a', 'b']);
    expect(new Set([one!.build, two!.build, HEADER.build]).size).toBe(3);
    const readings = [one!, two!].map(b => opened(b.path).reading());
    const [a, b] = readings.map(r => ({ header: r.header!, entries: r.stored }));
    expect(joinJournals(a!, b!)).toMatchObject({ ok: false, fault: { code: 'other-build' } });
  });

  test('that is not there is a fault', () => {
    expect(copyDemo(join(demo, 'none.jsonl'), folder, understand, now)).toMatchObject({
      ok: false,
      fault: { code: 'missing' },
    });
  });
});

describe('the shop', () => {
  test('is made once, beside the builds, and kept', () => {
    const shop = openShop(folder, understand, now);
    expect(shop.ok && shop.value.append(act('a', 1)).ok).toBe(true);
    const again = openShop(folder, understand, now);
    expect(again.ok && ids(again.value.reading().entries)).toEqual(['a']);
    expect(again.ok && again.value.reading().header?.format).toBe('curvewright-shop');
    expect(again.ok && again.value.path).toBe(shopPath(folder));
  });

  test('of two programs takes from both, one after the other', () => {
    const [one, two] = [openShop(folder, understand, now), openShop(folder, understand, now)];
    if (!one.ok || !two.ok) throw new Error('no shop');
    expect(one.value.append(act('a', 1)).ok).toBe(true);
    expect(two.value.append(act('b', 1))).toMatchObject({ ok: false, fault: { code: 'changed' } });
    two.value.reload();
    expect(two.value.append(act('b', 2)).ok).toBe(true);
    one.value.reload();
    expect(ids(one.value.reading().entries)).toEqual(['a', 'b']);
  });

  test('is not overwritten when the file is no shop', () => {
    fs.mkdirSync(folder);
    fs.writeFileSync(shopPath(folder), 'dear diary');
    expect(openShop(folder, understand, now)).toMatchObject({ ok: false, fault: { code: 'not-a-journal' } });
    expect(fs.readFileSync(shopPath(folder), 'utf8')).toBe('dear diary');
  });
});

import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { newFolder, openBench, run, start } from './program.ts';

const answers = JSON.stringify({
  units: 'metric',
  use: 'bike',
  shape: { height: '600 mm', exit: 30 },
  first: true,
});
const lines = (...intents: object[]): string => intents.map(i => JSON.stringify(i)).join('\n');

describe('a page into a pipe', () => {
  test('whose reader has gone already is no fault of the program', async () => {
    const folder = newFolder();
    await run(folder, ['start', 'Yard kicker', '--in', '-'], answers);
    const child = start(folder, ['sheet', 'plan', '--build', 'yard-kicker']);
    child.stdout.destroy();
    let err = '';
    child.stderr.on('data', d => {
      err += d;
    });
    const code = await new Promise(done => child.on('close', done));
    expect({ code, err }).toEqual({ code: 0, err: '' });
  });
});

describe('a word that a command does not take', () => {
  test.each([
    [['order', 'old-gate'], 'order does not take the word "old-gate"; a build is named by --build NAME'],
    [
      ['sheet', 'cut', 'old-gate'],
      'sheet does not take the word "old-gate"; a build is named by --build NAME',
    ],
    [
      ['start', 'Old', 'gate'],
      'start does not take the word "gate"; a name of several words stands in quotes',
    ],
    [['builds', 'old-gate'], 'builds does not take the word "old-gate"'],
  ])('%j is refused, so that no other build is shown or begun in its place', async (args, said) => {
    const folder = newFolder();
    await run(folder, ['start', 'Yard kicker', '--in', '-'], answers);
    const got = await run(folder, args);
    expect(got).toMatchObject({ code: 2, out: '' });
    expect(got.err).toContain(said);
    const data = JSON.parse((await run(folder, [...args, '--json'])).out);
    expect(data.error).toMatchObject({ code: 'unknown-field' });
    expect(JSON.parse((await run(folder, ['builds', '--json'])).out).builds).toHaveLength(1);
  });
});

describe('a build scripted from the command line', () => {
  test('is begun from answers, listed, read as a page and as data, and worked on', async () => {
    const folder = newFolder();
    const started = await run(folder, ['start', 'Yard kicker', '--in', '-', '--json'], answers);
    expect(started).toMatchObject({ code: 0, err: '' });
    expect(JSON.parse(started.out)).toMatchObject({ schemaVersion: 1, build: 'yard-kicker', agreed: true });

    const list = JSON.parse((await run(folder, ['builds', '--json'])).out);
    expect(list.builds.map((b: { name: string }) => b.name)).toEqual(['yard-kicker']);
    expect(list.demos.map((b: { name: string }) => b.name)).toEqual([
      'mill-lane-launch',
      'orchard-bank-kicker',
    ]);

    const page = await run(folder, ['sheet', 'plan', '--build', 'yard-kicker']);
    expect(page.code).toBe(0);
    expect(page.out).toContain('600 mm');
    const data = JSON.parse((await run(folder, ['sheet', 'plan', '--json'])).out);
    expect(data).toMatchObject({ schemaVersion: 1, stage: 'plan' });
    expect(data.figures.find((f: { id: string }) => f.id === 'lip-height').value).toEqual({
      is: 'exact',
      v: 600,
    });

    const logged = await run(
      folder,
      ['log', 'yard-kicker', '--in', '-', '--json'],
      lines({ do: 'remark', text: 'horse 2 is wobbly' }, { do: 'answer', field: 'width', value: '1 m' }),
    );
    expect(JSON.parse(logged.out).kept).toHaveLength(2);
    const after = JSON.parse((await run(folder, ['sheet', 'plan', '--json'])).out);
    expect(after.figures.length).toBeGreaterThan(5);
  });

  test('every refusal is one object with a code, what is wrong and what would do, exit 2, and nothing is lost', async () => {
    const folder = newFolder();
    await run(folder, ['start', 'Kicker', '--in', '-'], answers);
    const refusals: [object | string, string][] = [
      [{ do: 'tick', step: 'plan/nothing' }, 'no-such-step'],
      [{ do: 'answer', field: 'width', value: 'six' }, 'not-read'],
      [{ do: 'answer', field: 'tube', value: { depth_mm: 40, width_mm: 40, wall_mm: 1.5 } }, 'wall-thin'],
      [{ do: 'answer', field: 'use', value: 'wheelchair' }, 'use-wheelchair'],
      [{ do: 'jump' }, 'unknown-field'],
      ['not json', 'not-json'],
    ];
    for (const [intent, code] of refusals) {
      const text = typeof intent === 'string' ? intent : JSON.stringify(intent);
      const got = await run(folder, ['log', 'kicker', '--in', '-', '--json'], text);
      expect(got.code, text).toBe(2);
      const { error } = JSON.parse(got.out);
      expect(error.code, text).toBe(code);
      expect(error.message.length, text).toBeGreaterThan(5);
      expect(error.accepted.length, text).toBeGreaterThan(3);
    }
    const bad = await run(folder, ['start', 'Bad', '--in', '-', '--json'], '{"colour":"red"}');
    expect(bad.code).toBe(2);
    expect(JSON.parse(bad.out).error).toMatchObject({ code: 'unknown-field', field: 'colour' });
    expect((await run(folder, ['log', 'nobody', '--in', '-'], '')).code).toBe(66);
    expect((await run(folder, ['sheet', 'paint'])).code).toBe(2);
    expect((await run(folder, ['sheeet'])).code).toBe(2);
    // With --json a line that is no command at all is one object too.
    for (const [args, field, code] of [
      [['sheeet', '--json'], null, 2],
      [['start', 'Kicker', '--colour', '--json'], null, 2],
      [['sheet', 'paint', '--json'], 'STAGE', 2],
      [['sheet', 'plan', '--build', 'nobody', '--json'], 'build', 66],
    ] as const) {
      const got = await run(folder, [...args]);
      expect({ code: got.code, err: got.err }, args.join(' ')).toEqual({ code, err: '' });
      expect(JSON.parse(got.out), args.join(' ')).toMatchObject({ schemaVersion: 1, error: { field } });
    }
  });

  test('an escape sequence in a name or a note never reaches the terminal, and no name leaves the folder', async () => {
    const folder = newFolder();
    const evil = '../../\u001b[2Jevil\u0007';
    const started = await run(folder, ['start', evil, '--in', '-', '--json'], answers);
    expect(started.code).toBe(0);
    const { build, path } = JSON.parse(started.out);
    expect(path.startsWith(folder)).toBe(true);
    await run(folder, ['log', build, '--in', '-'], lines({ do: 'remark', text: 'wobbly \u001b[31m horse' }));
    const page = await run(folder, ['sheet', 'plan', '--build', build]);
    expect(page.out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f]/);
  });

  test('two copies worked on apart are joined, in either order to the same bytes; two builds are not', async () => {
    const folder = newFolder();
    await run(folder, ['start', 'Kicker', '--in', '-'], answers);
    const mine = join(folder, 'kicker.jsonl');
    const theirs = join(folder, 'copy.jsonl');
    copyFileSync(mine, theirs);
    await run(folder, ['log', 'kicker', '--in', '-'], lines({ do: 'answer', field: 'width', value: '1 m' }));
    await run(folder, ['log', 'copy', '--in', '-'], lines({ do: 'answer', field: 'rider', value: '80 kg' }));
    const one = join(folder, 'one.jsonl');
    const two = join(folder, 'two.jsonl');
    expect((await run(folder, ['join', mine, theirs, '--out', one])).code).toBe(0);
    expect((await run(folder, ['join', theirs, mine, '--out', two])).code).toBe(0);
    expect(readFileSync(one)).toEqual(readFileSync(two));
    await run(folder, ['start', 'Other', '--in', '-'], answers);
    expect((await run(folder, ['join', mine, join(folder, 'other.jsonl')])).code).toBe(2);
  });

  test('a damaged line is set aside with its number, the rest loads, and the file stays as it was', async () => {
    const folder = newFolder();
    await run(folder, ['start', 'Kicker', '--in', '-'], answers);
    const file = join(folder, 'kicker.jsonl');
    const whole = readFileSync(file, 'utf8').split('\n');
    whole[2] = (whole[2] ?? '').replace('design-set', 'design-sat');
    writeFileSync(file, whole.join('\n'));
    const before = readFileSync(file);
    const list = JSON.parse((await run(folder, ['builds', '--json'])).out);
    expect(list.builds[0].setAside).toBe(1);
    expect((await run(folder, ['sheet', 'plan'])).code).toBe(0);
    expect(readFileSync(file)).toEqual(before);
  });

  test('while the bench holds the build, log is refused with the holder named', async () => {
    const folder = newFolder();
    await run(folder, ['start', 'Kicker', '--in', '-'], answers);
    const bench = openBench(folder, {}, ['--build', 'kicker']);
    await bench.until(/Kicker/);
    const got = await run(
      folder,
      ['log', 'kicker', '--in', '-', '--json'],
      lines({ do: 'remark', text: 'x' }),
    );
    expect(got.code).toBe(75);
    expect(JSON.parse(got.out).error.message).toContain(String(bench.pid));
    bench.press('q');
    expect(await bench.exit).toBe(0);
    expect((await run(folder, ['log', 'kicker', '--in', '-'], lines({ do: 'remark', text: 'x' }))).code).toBe(
      0,
    );
  });

  test('without a terminal the bench prints the page of the stage and ends with 0', async () => {
    const folder = newFolder();
    expect((await run(folder, [])).code).toBe(0);
    await run(folder, ['start', 'Kicker', '--in', '-'], answers);
    const got = await run(folder, ['--build', 'kicker']);
    expect(got.code).toBe(0);
    expect(got.out).toContain('plan');
    expect(got.out).not.toContain('\u001b');
  });

  test('help, version and schemas', async () => {
    const folder = newFolder();
    const help = await run(folder, ['--help']);
    expect(help.code).toBe(0);
    expect(help.out.split('\n').length).toBeLessThan(40);
    expect((await run(folder, ['--version'])).out).toMatch(/^curvewright \d+\.\d+\.\d+\n$/);
    for (const args of [
      ['start', '--schema'],
      ['log', '--schema'],
      ['reckon', 'rail', '--schema'],
    ]) {
      const schema = JSON.parse((await run(folder, args)).out);
      expect(schema, args.join(' ')).toHaveProperty('$schema');
    }
  });
});

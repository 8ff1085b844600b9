import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Entry } from '../../src/build/entries.ts';
import { createJournal } from '../../src/machine/journal-file.ts';
import { read } from '../demo/builds.ts';
import { Teller } from '../demo/tell.ts';
import { type Hand, nextIntent } from '../walk/hand.ts';
import { newFolder, openBench, run } from './program.ts';
import type { RealTerminal } from './real-terminal.ts';

/** Steps before which the walk is kept: the weather of the bench, the labels on the welder, the first test weld, the dye on the slits. */
const WANTED = ['prep/weather', 'weld/settings', 'weld/coupons', 'finish/inspect'] as const;
type Wanted = (typeof WANTED)[number];

const before = new Map<string, readonly Entry[]>();

/** A welder with mixed gas; all else as a steady person reads it. */
const withGas: NonNullable<Hand['read']> = (view, step, ask) =>
  step.key === 'weld/machine' && ask.ask === 'kind' ? 1 : read(view, step, ask);

beforeAll(async () => {
  const t = new Teller(11, '2026-10-01T16:00:00Z');
  t.begin({ kind: 'build-begun', name: 'Bad evening', system: 'metric' });
  await t.act({ do: 'agree' });
  for (let i = 0; i < 900 && before.size < WANTED.length; i++) {
    const intent = nextIntent(await t.view(), { read: withGas });
    if (intent === null) break;
    const step = ('step' in intent ? intent.step : undefined) ?? '';
    const wanted = WANTED.find(key => step === key || step.startsWith(`${key}#`));
    if (wanted !== undefined && !before.has(wanted)) before.set(wanted, [...t.entries]);
    await t.act(intent);
  }
}, 240_000);

/** The same entries with the last of them made a few minutes ago, or longer: an evening at the bench, and no long pause. */
const tonight = (entries: readonly Entry[], ago_ms: number): readonly Entry[] => {
  const shift = Date.now() - ago_ms - Date.parse(entries.at(-1)?.at ?? '');
  return entries.map(e => ({ ...e, at: new Date(Date.parse(e.at) + shift).toISOString() }));
};

/** A build on disk that comes next to the step, and the bench open on it. */
const atStep = async (
  step: Wanted,
  ago_ms = 300_000,
): Promise<{ folder: string; path: string; bench: RealTerminal }> => {
  const entries = before.get(step);
  if (entries === undefined) throw new Error(`the walk never came to ${step}`);
  const folder = newFolder();
  const path = join(folder, 'bad-evening.jsonl');
  const made = createJournal(
    path,
    {
      format: 'curvewright-build',
      build: '3f6b1c7a-51d2-4c0d-8a0e-6f1b2c9d7e10',
      created: '2026-10-01T16:00:00Z',
    },
    tonight(entries, ago_ms),
  );
  if (!made.ok) throw new Error(made.fault.message);
  const bench = openBench(folder, {}, ['--build', 'bad-evening']);
  await bench.until(/Bad evening/);
  bench.press('0');
  await bench.until(/MEASURE|STOP|NEXT/);
  return { folder, path, bench };
};

const lines = (path: string): number => readFileSync(path, 'utf8').trimEnd().split('\n').length;

/** Answers of the rag, and of the bottle's label: how many below the first. */
const ANSWERS = { dry: 0, wet: 1, rain: 2 } as const;

/** Tells the numbers and answers that the open step asks, one after the other, as they come; the rest stand as they were. */
const tell = async (
  bench: RealTerminal,
  path: string,
  values: readonly (string | keyof typeof ANSWERS)[],
): Promise<void> => {
  for (const [i, value] of values.entries()) {
    if (i === 0) bench.press('enter');
    const kept = lines(path);
    if (value in ANSWERS) {
      await bench.until(/keep the lit one/);
      bench.press('up', 'up');
      for (let n = 0; n < ANSWERS[value as keyof typeof ANSWERS]; n++) bench.press('down');
      bench.press('enter');
    } else {
      await bench.until(/ typed {2}_/);
      bench.type(value);
      await bench.until(s => s.includes(`typed  ${value}`), 'what was typed');
      bench.press('enter');
      await bench.until(s => lines(path) > kept || s.includes('Enter again'), 'kept, or asked once more');
      if (lines(path) === kept) bench.press('enter');
    }
    await bench.until(() => lines(path) > kept, 'kept');
  }
};

/** Closes a field or list that asks for the next number. */
const closeField = async (bench: RealTerminal): Promise<void> => {
  const screen = await bench.until(/ typed {2}_|keep the lit one|▸ next|■ STOP|NEXT/);
  if (/ typed {2}_|keep the lit one/.test(screen)) bench.press('esc');
  await bench.until(s => !/ typed {2}_|keep the lit one/.test(s), 'the field closed');
};

/** Goes up a stage's page until what stops is lit; gives the screen that says what opens it. */
const toTheBar = async (bench: RealTerminal, key = '3', stage = 'prep'): Promise<string> => {
  const at = (screen: string): number =>
    Number(new RegExp(`${stage}: step (\\d+) of`).exec(screen)?.[1] ?? 0);
  bench.press('2');
  await bench.until(/▸2 CUT◂/);
  bench.press(key);
  let screen = await bench.until(
    s => s.includes(`▸${key} ${stage.toUpperCase()}◂`) && at(s) > 0,
    `the page of ${stage}`,
  );
  while (!/^ ■ STOP {2}/m.test(screen) && at(screen) > 1) {
    const up = at(screen) - 1;
    bench.press('p');
    screen = await bench.until(s => at(s) === up && /h keys/.test(s), 'the step above');
  }
  return screen;
};

/** Enter at a bar leads to the reading that opens it, and there to the number that bars. */
const readAgain = async (bench: RealTerminal, path: string, value: string): Promise<void> => {
  bench.press('enter');
  await bench.until(/Read wind, air, steel and damp/);
  await tell(bench, path, [value]);
  await closeField(bench);
};

/** Whether a step of a stage is kept back, and by what, as a script sees it. */
const stepNow = async (folder: string, stage: string, key: string) => {
  const page = await run(folder, ['sheet', stage, '--build', 'bad-evening', '--json']);
  expect(page.code).toBe(0);
  const { steps } = JSON.parse(page.out) as {
    steps: { key: string; state: string; waitsFor: string[]; gates: string[] }[];
  };
  return steps.find(s => s.key === key);
};

describe('the weather of the bench, typed as it is', () => {
  test('bad weather: rain on the work keeps the arc off, and no reason opens it', async () => {
    const { folder, path, bench } = await atStep('prep/weather');
    await tell(bench, path, ['rain', '5 km/h', '12', '12', '95']);
    expect(await toTheBar(bench)).toMatch(/STOP {2}Rain or snow on the work/);
    expect((await stepNow(folder, 'weld', 'weld/test-piece'))?.waitsFor).toContain('prep/dry-steel');
    const kept = lines(path);
    bench.press('s');
    await bench.until(/Why\?/);
    bench.type('it is only drizzle');
    bench.press('enter');
    await bench.until(s => /STOP {2}Rain or snow on the work/.test(s) && !/Why\?/.test(s), 'refused');
    expect(lines(path)).toBe(kept);
    // Under a roof, wiped dry: the rag is read once more, and the bar is gone.
    await readAgain(bench, path, 'dry');
    expect((await stepNow(folder, 'prep', 'prep/dry-steel'))?.gates).toEqual([
      expect.stringContaining('steel-damp'),
    ]);
    bench.press('q');
    await bench.exit;
  });

  test('wind over the limit asks for the shelter; behind a dead one the air stands still', async () => {
    const { folder, path, bench } = await atStep('prep/weather');
    await tell(bench, path, ['dry', '25 km/h', '0.5 km/h', '15', '15', '50']);
    expect(await toTheBar(bench)).toMatch(/STOP {2}Air stands still behind the shelter/);
    expect((await stepNow(folder, 'weld', 'weld/test-piece'))?.waitsFor).toContain('prep/dry-steel');
    // Too wide open again, then right.
    await readAgain(bench, path, '14 km/h');
    expect(await toTheBar(bench)).toMatch(
      /STOP {2}The shelter lets 14\.0 km\/h through, 8\.0 km\/h is the most/,
    );
    await readAgain(bench, path, '4 km/h');
    expect(await stepNow(folder, 'prep', 'prep/dry-steel')).toBeUndefined();
    expect((await stepNow(folder, 'weld', 'weld/test-piece'))?.waitsFor).not.toContain('prep/dry-steel');
    bench.press('q');
    await bench.exit;
  });

  test('wet steel: a reason passes it and is kept, and the next wet reading stops it again', async () => {
    const { folder, path, bench } = await atStep('prep/weather');
    await tell(bench, path, ['dry', '3 km/h', '14', '12.5', '90']);
    expect(await toTheBar(bench)).toMatch(/STOP {2}Steel too near the dew point/);
    expect((await stepNow(folder, 'weld', 'weld/test-piece'))?.waitsFor).toContain('prep/dry-steel');
    bench.press('s');
    await bench.until(/Why\?/);
    const kept = lines(path);
    bench.type('thermometer lay in the sun');
    bench.press('enter');
    await bench.until(() => lines(path) > kept, 'the reason kept');
    const reason = readFileSync(path, 'utf8').trimEnd().split('\n').at(-1) ?? '';
    expect(reason).toContain('gate-overridden');
    expect(reason).toContain('thermometer lay in the sun');
    bench.press('q');
    await bench.exit;
    const line = JSON.stringify({ do: 'read', step: 'prep/weather', ask: 'steel', value: '12 °C' });
    const again = await run(folder, ['log', 'bad-evening', '--in', '-'], `${line}\n`);
    expect(again.code).toBe(0);
    expect((await stepNow(folder, 'prep', 'prep/dry-steel'))?.state).toBe('stop');
  });
});

describe('the next evening', () => {
  test('wet steel: yesterday’s weather opens no arc, and dew found tonight keeps it off', async () => {
    const { folder, path, bench } = await atStep('weld/coupons', 20 * 3_600_000);
    expect((await stepNow(folder, 'weld', 'weld/coupons'))?.waitsFor).toContain('prep/dry-steel');
    await bench.until(/STOP {2}The weather was read \d+ hours ago, good for 16/);
    await tell(bench, path, ['wet', '3 km/h', '12', '9', '95']);
    expect((await stepNow(folder, 'prep', 'prep/dry-steel'))?.gates).toEqual([
      expect.stringContaining('steel-wet'),
      expect.stringContaining('steel-damp'),
    ]);
    expect((await stepNow(folder, 'weld', 'weld/coupons'))?.waitsFor).toContain('prep/dry-steel');
    const dry = ['wet', 'steel', 'damp'].map(ask =>
      JSON.stringify({
        do: 'read',
        step: 'prep/weather',
        ask,
        value: { wet: '0', steel: '20 °C', damp: '60' }[ask],
      }),
    );
    bench.press('q');
    await bench.exit;
    expect((await run(folder, ['log', 'bad-evening', '--in', '-'], `${dry.join('\n')}\n`)).code).toBe(0);
    expect((await stepNow(folder, 'weld', 'weld/coupons'))?.waitsFor).not.toContain('prep/dry-steel');
  });
});

describe('the welder and its welds', () => {
  test('wrong gas: argon alone keeps the arc off until the right bottle is read', async () => {
    const { folder, path, bench } = await atStep('weld/settings');
    bench.press('enter');
    // Spool as told, then the bottle's label: third of the four.
    for (const answer of [1, 3]) {
      const kept = lines(path);
      const screen = await bench.until(/ typed {2}_|keep the lit one/);
      if (/keep the lit one/.test(screen)) {
        bench.press('up', 'up', 'up', 'up');
        for (let n = 1; n < answer; n++) bench.press('down');
        bench.press('enter');
      } else {
        bench.type(String(answer));
        await bench.until(s => s.includes(`typed  ${answer}`), 'what was typed');
        bench.press('enter');
        await bench.until(s => lines(path) > kept || s.includes('Enter again'), 'kept, or asked once more');
        if (lines(path) === kept) bench.press('enter');
      }
      await bench.until(() => lines(path) > kept, 'kept');
    }
    await closeField(bench);
    expect(await toTheBar(bench, '5', 'weld')).toMatch(/STOP {2}Argon alone is the wrong gas for steel/);
    expect((await stepNow(folder, 'weld', 'weld/test-piece'))?.gates).toContain('gas-argon');
    bench.press('q');
    await bench.exit;
    const line = JSON.stringify({ do: 'read', step: 'weld/settings', ask: 'bottle', value: '1' });
    expect((await run(folder, ['log', 'bad-evening', '--in', '-'], `${line}\n`)).code).toBe(0);
    expect((await stepNow(folder, 'weld', 'weld/test-piece'))?.gates).not.toContain('gas-argon');
  });

  test('a cracked weld: nothing is loaded or ridden over it, and no reason opens it', async () => {
    const { folder, path, bench } = await atStep('finish/inspect');
    const kept = lines(path);
    bench.press('enter');
    const screen = await bench.until(/ typed {2}_|keep the lit one/);
    if (/keep the lit one/.test(screen)) bench.press('up', 'down', 'enter');
    else {
      bench.type('1');
      await bench.until(/typed {2}1/);
      bench.press('enter');
      await bench.until(s => lines(path) > kept || s.includes('Enter again'), 'kept, or asked once more');
      if (lines(path) === kept) bench.press('enter');
    }
    await bench.until(() => lines(path) > kept, 'the crack kept');
    await bench.until(/[Cc]rack/);
    expect((await stepNow(folder, 'finish', 'finish/proof'))?.gates).toContain('open-crack');
    bench.press('ctrl-c');
    await bench.exit;
    const line = JSON.stringify({
      do: 'override',
      step: 'finish/proof',
      gate: 'open-crack',
      why: 'it is only a small one',
    });
    const passed = await run(folder, ['log', 'bad-evening', '--in', '-'], `${line}\n`);
    expect(passed.code).not.toBe(0);
    expect((await stepNow(folder, 'finish', 'finish/proof'))?.gates).toContain('open-crack');
  });
});

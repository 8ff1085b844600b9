import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Entry } from '../../src/build/entries.ts';
import { createJournal } from '../../src/machine/journal-file.ts';
import { read } from '../demo/builds.ts';
import { Teller } from '../demo/tell.ts';
import { nextIntent } from '../walk/hand.ts';
import { newFolder, openBench, run } from './program.ts';

/** One number typed at the bench in a stage, two ways, and the later page that must not read alike. */
const CASES: readonly [string, string, readonly [string, string], string][] = [
  // stage's step, its ask (or 'survey'), two values, the page looked at afterwards
  ['plan/power', 'lead', ['6 m', '40 m'], 'prep'],
  ['plan/helpers', 'helpers', ['5', '0'], 'assemble'],
  ['cut/test-piece', 'turn', ['8.9°', '7.4°'], 'tack'],
  ['prep/fit', 'gap', ['0.4 mm', '1.4 mm'], 'weld'],
  ['tack/read-third@A:1', 'bent', ['6.6°', '5.6°'], 'cut'],
  ['weld/test-piece', 'turn', ['9.6°', '11.5°'], 'tack'],
  ['weld/cold-survey@A', 'survey', ['0', '-3'], 'brace'],
  ['brace/survey@A', 'survey', ['0', '-3'], 'finish'],
  ['assemble/width', 'lip', ['1200', '1206'], 'finish'],
  ['finish/proof', 'set', ['0.3', '2.5'], 'finish'],
];

/** Entries of a whole walked build up to the moment each of those steps is next and its number is wanted. */
const before = new Map<string, readonly Entry[]>();

beforeAll(async () => {
  const t = new Teller(7, '2026-10-01T16:00:00Z');
  t.begin({ kind: 'build-begun', name: 'Two ways', system: 'metric' });
  await t.act({ do: 'agree' });
  for (let i = 0; i < 900; i++) {
    const view = await t.view();
    const intent = nextIntent(view, { read });
    if (intent === null) break;
    const step = 'step' in intent ? intent.step : undefined;
    const ask = intent.do === 'read' ? intent.ask : intent.do === 'open-survey' ? 'survey' : '';
    const wanted = CASES.find(([s, a]) => s === step && a === ask);
    if (wanted !== undefined && !before.has(`${step}#${ask}`)) before.set(`${step}#${ask}`, [...t.entries]);
    await t.act(intent);
  }
}, 120_000);

/** The same build, its last act a moment ago: one laid aside for weeks would first ask for what the pause may have changed. */
const upToNow = (entries: readonly Entry[]): readonly Entry[] => {
  const shift = Date.now() - Date.parse(entries.at(-1)?.at ?? '');
  return entries.map(e => ({ ...e, at: new Date(Date.parse(e.at) + shift).toISOString() }));
};

const typedAtTheBench = async (key: string, ask: string, value: string): Promise<string> => {
  const walked = before.get(key);
  if (walked === undefined) throw new Error(`the walk never came to ${key}`);
  const entries = upToNow(walked);
  const folder = newFolder();
  const made = createJournal(
    join(folder, 'two-ways.jsonl'),
    {
      format: 'curvewright-build',
      build: '7a0c1d2e-77aa-4b0e-9d51-0c8e5b1f4a07',
      created: '2026-10-01T16:00:00Z',
    },
    entries,
  );
  if (!made.ok) throw new Error(made.fault.message);
  const bench = openBench(folder, {}, ['--build', 'two-ways']);
  await bench.until(/Two ways/);
  bench.press('0');
  await bench.until(/MEASURE|STOP|NEXT/);
  bench.press('enter');
  if (ask === 'survey') {
    await bench.until(/before reading/);
    bench.press('enter');
    const first = await bench.until(/kept, (\d+) to go/);
    const stations = Number(/0 kept, (\d+) to go/.exec(first)?.[1]);
    for (let i = 0; i < stations; i++) {
      await bench.until(new RegExp(`\\b${i} kept, `));
      await bench.until(/ typed {2}_/);
      bench.type(value);
      bench.press('enter');
      await bench.until(
        s => new RegExp(`\\b${i + 1} kept, `).test(s) || s.includes('Enter again'),
        'kept, or asked once more',
      );
      if (!bench.text().some(l => l.includes(`${i + 1} kept, `))) bench.press('enter');
    }
    await bench.until(/ends the reading/);
    bench.press('enter');
    await bench.until(s => !/kept, \d+ to go/.test(s), 'the page after the reading');
  } else {
    // The wanted number may not be the first one of its step: others are taken as they come.
    await bench.until(/ typed {2}_/);
    bench.type(value);
    await bench.until(s => s.includes(`typed  ${value}`), 'what was typed');
    bench.press('enter');
    await bench.until(
      s => / typed {2}_/.test(s) || !/^ typed /m.test(s) || s.includes('Enter again'),
      'kept, or asked once more',
    );
    if (bench.text().some(l => l.includes('Enter again'))) {
      bench.press('enter');
      await bench.until(s => / typed {2}_/.test(s) || !/^ typed /m.test(s), 'kept');
    }
    if (bench.text().some(l => l.startsWith(' typed '))) bench.press('esc');
  }
  bench.press('q');
  await bench.exit;
  return folder;
};

describe('what is measured in a stage changes what a later page says', () => {
  test.each(CASES)('%s #%s', async (step, ask, [one, other], later) => {
    const pages: string[] = [];
    for (const value of [one, other]) {
      const folder = await typedAtTheBench(`${step}#${ask}`, ask, value);
      const page = await run(folder, ['sheet', later, '--build', 'two-ways', '--json']);
      expect(page.code).toBe(0);
      pages.push(page.out);
    }
    const parts = pages.map(
      p => JSON.parse(p) as { figures: unknown; steps: { title: string }[]; findings: unknown },
    );
    // What was typed stands on its own page; a later one must differ in a number, a step or a finding of its own.
    const seen = parts.map(p =>
      JSON.stringify([p.figures, p.findings, p.steps.map(s => ({ ...s, asks: undefined }))]),
    );
    expect(seen[0]).not.toBe(seen[1]);
  });
});

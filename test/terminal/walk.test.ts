import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/build/entries.ts';
import { understandEntry } from '../../src/build/versions/understand.ts';
import { compute } from '../../src/coach/compute.ts';
import type { Intent } from '../../src/coach/intents.ts';
import { asksOf, withAnswer } from '../../src/coach/tasks.ts';
import { type View, viewOf } from '../../src/coach/view.ts';
import { isDecided } from '../../src/coach/walk.ts';
import { openJournal } from '../../src/machine/journal-file.ts';
import type { Answers } from '../../src/stages/situation.ts';
import { read } from '../demo/builds.ts';
import { nextIntent } from '../walk/hand.ts';
import { newFolder, openBench } from './program.ts';
import type { RealTerminal } from './real-terminal.ts';

/** Heavy answers once computed, by their questions. */
let answers: Answers = new Map();

/** The build on disk as the program will see it, with its heavy questions answered. */
const onDisk = async (path: string): Promise<View> => {
  const file = openJournal<Entry>(path, { format: 'curvewright-build', understand: understandEntry });
  if (!file.ok) throw new Error(file.fault.message);
  const { entries } = file.value.reading();
  for (let round = 0; round < 4; round++) {
    const view = viewOf(entries, Date.now(), answers);
    const asks = asksOf(view);
    if (asks.length === 0) return view;
    for (const ask of asks) answers = withAnswer(answers, ask, await compute(ask));
  }
  return viewOf(entries, Date.now(), answers);
};

const entryCount = (path: string): number =>
  existsSync(path)
    ? readFileSync(path, 'utf8')
        .split('\n')
        .filter(l => l !== '').length
    : 0;

/** Waits until the file holds more entries than before: what a key did is on disk. */
const grown = async (bench: RealTerminal, path: string, before: number): Promise<void> => {
  await bench.until(() => entryCount(path) > before, `more than ${before} lines in the build`);
};

const fieldOpen = (bench: RealTerminal): boolean => bench.text().some(l => l.startsWith(' typed '));

/** Presses what a person would press to do an act on the page that shows the next step. */
const press = async (bench: RealTerminal, view: View, intent: Intent, path: string): Promise<void> => {
  const before = entryCount(path);
  switch (intent.do) {
    case 'caution': {
      if (!bench.text().some(l => l.includes('once in this build'))) bench.press('space');
      const shown = await bench.until(/once in this build/);
      bench.press('enter');
      // Reading a caution also does what it stood before, or shows the next one: the screen tells when that is over.
      await bench.until(s => s !== shown, 'the page after the caution');
      break;
    }
    case 'tick':
      bench.press('space');
      break;
    case 'read':
    case 'cut-piece':
      // After a number is kept, the field of the next one is open already.
      if (!fieldOpen(bench)) bench.press('enter');
      await bench.until(/ typed /);
      bench.type(String('value' in intent ? intent.value : intent.length));
      bench.press('enter');
      // Outside the expected band the same Enter is asked for once more.
      await bench.until(
        s => entryCount(path) > before || s.includes('Enter again'),
        'the number kept, or asked once more',
      );
      if (entryCount(path) === before) bench.press('enter');
      break;
    case 'open-survey':
      bench.press('enter');
      await bench.until(/before reading/);
      bench.press('enter');
      break;
    case 'offsets': {
      await bench.until(/ typed /);
      for (const value of intent.values) {
        const lines = entryCount(path);
        bench.type(String(value));
        bench.press('enter');
        await bench.until(
          s => entryCount(path) > lines || s.includes('Enter again'),
          'the offset kept, or asked once more',
        );
        if (entryCount(path) === lines) bench.press('enter');
        await grown(bench, path, lines);
      }
      return;
    }
    case 'close-survey':
      await bench.until(/ends the reading/);
      bench.press('enter');
      break;
    case 'choose': {
      bench.press('enter');
      await bench.until(/what you can do/);
      const finding = view.findings.find(f => f.key === intent.finding);
      const at = finding?.offers.findIndex(o => o.remedy === intent.remedy) ?? 0;
      for (let i = 0; i < at; i++) bench.press('down');
      bench.press('enter');
      break;
    }
    case 'override':
      bench.press('s');
      await bench.until(/Why\?/);
      bench.type(intent.why);
      bench.press('enter');
      break;
    default:
      throw new Error(`no keys for ${intent.do}`);
  }
  await grown(bench, path, before);
  // On to what the bench shows next: an empty field while the step has numbers left, else a page.
  const after = await onDisk(path);
  const step = intent.do === 'read' ? after.steps.find(x => x.key === intent.step) : undefined;
  const more = (step?.asks ?? []).some(a => !after.build.readings.has(`${step?.key}#${a.ask}`));
  if (intent.do === 'open-survey') await bench.until(/ typed {2}_/);
  else
    await bench.until(s => (more ? / typed {2}_/.test(s) : !/^ typed /m.test(s)), 'the page after the act');
};

/** Walks on until `done` says so; gives the number of acts. */
const walkUntil = async (
  bench: RealTerminal,
  path: string,
  done: (view: View) => boolean,
): Promise<number> => {
  let acts = 0;
  const last: string[] = [];
  for (; acts < 700; acts++) {
    const view = await onDisk(path);
    if (done(view)) return acts;
    const intent = nextIntent(view, { read });
    if (intent === null) return acts;
    last.push(JSON.stringify(intent).slice(0, 90));
    // 0 goes to the next step, wherever it is; inside a survey or a field the page is there already.
    if (!['offsets', 'close-survey'].includes(intent.do) && !fieldOpen(bench)) {
      bench.press('0');
      await bench.until(s => /\d (PLAN|CUT|PREP|TACK|WELD|BRACE|ASSEMBLE|FINISH)/.test(s), 'a stage page');
    }
    await press(bench, view, intent, path);
  }
  throw new Error(`the walk does not end: ${last.slice(-6).join(' ')}`);
};

describe('a whole build in a real terminal at 80 by 24', () => {
  test('from the first question to the last tick, resized, killed in the middle, opened again', async () => {
    const folder = newFolder();
    let bench = openBench(folder);
    await bench.until(/the bench is empty/);
    bench.press('enter');
    await bench.until(/A name for the build/);
    bench.type('Walked kicker');
    bench.press('enter');
    await bench.until(/question 1 of/);
    const path = join(folder, 'walked-kicker.jsonl');

    // Every question with what is offered: Enter takes a lit choice, Tab the number.
    for (let i = 0; i < 40; i++) {
      const text = bench.text().join('\n');
      if (/all answered/.test(text)) break;
      bench.press(/typed/.test(text) ? 'tab' : 'enter');
      await bench.until(s => s !== text, 'the next question');
    }
    await bench.until(/agrees to this design/);
    bench.press('enter');
    await bench.until(/1 PLAN/);

    await walkUntil(bench, path, v => v.build.marks.length > 0);
    bench.resize(120, 40);
    await bench.until(s => s.split('\n').some(l => l.trimEnd().length > 100), 'the wide page');
    bench.resize(60, 15);
    await bench.until(/This window is 60 x 15/);
    bench.resize(80, 24);
    await bench.until(/\d (CUT|TACK)/);

    // A power cut: everything entered is on disk.
    await walkUntil(bench, path, v => v.build.surveys.length > 0);
    const saved = entryCount(path);
    bench.kill('SIGKILL');
    await bench.exit;
    expect(entryCount(path)).toBe(saved);
    expect(readdirSync(folder)).toContain('walked-kicker.jsonl.lock');
    bench = openBench(folder);
    await bench.until(/Walked kicker/);
    expect((await onDisk(path)).build.all.length).toBe(saved - 1);
    if ((await onDisk(path)).build.surveys.some(s => !s.closed)) {
      // The reading goes on at the first station not read.
      bench.press('0');
      await bench.until(/TACK/);
      bench.press('enter');
      await bench.until(/kept, \d+ to go/);
    }

    await walkUntil(bench, path, () => false);
    const end = await onDisk(path);
    expect(end.next).toBeNull();
    const undone = end.steps.filter(s => !['done', 'skipped'].includes(s.state));
    expect(undone.map(s => `${s.key} ${s.state}`)).toEqual([]);
    expect(end.findings.filter(f => f.severity === 'stop' && !isDecided(end.build, f))).toEqual([]);
    bench.press('q');
    expect(await bench.exit).toBe(0);
    expect(bench.text().join('\n')).toContain('entries on disk');
  });
});

import { existsSync, readFileSync } from 'node:fs';
import type { Entry } from '../../src/build/entries.ts';
import { understandEntry } from '../../src/build/versions/understand.ts';
import { compute } from '../../src/coach/compute.ts';
import type { Intent } from '../../src/coach/intents.ts';
import { asksOf, withAnswer } from '../../src/coach/tasks.ts';
import { type View, viewOf } from '../../src/coach/view.ts';
import { openJournal } from '../../src/machine/journal-file.ts';
import type { Answers } from '../../src/stages/situation.ts';
import { type Hand, nextIntent } from '../walk/hand.ts';
import type { RealTerminal } from './real-terminal.ts';

/** Heavy answers once computed, by their questions. */
let answers: Answers = new Map();

/** The build on disk as the program will see it, with its heavy questions answered. */
export const onDisk = async (path: string): Promise<View> => {
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

export const entryCount = (path: string): number =>
  existsSync(path)
    ? readFileSync(path, 'utf8')
        .split('\n')
        .filter(l => l !== '').length
    : 0;

/** Waits until the file holds more entries than before: what a key did is on disk. */
const grown = async (bench: RealTerminal, path: string, before: number): Promise<void> => {
  await bench.until(() => entryCount(path) > before, `more than ${before} lines in the build`);
};

/** A list of answers is open instead of a field. */
const listOpen = (bench: RealTerminal): boolean => bench.text().some(l => l.includes('keep the lit one'));
const fieldOpen = (bench: RealTerminal): boolean =>
  listOpen(bench) || bench.text().some(l => l.startsWith(' typed '));

/** What the open list is about: the row above its answers; null where none is open. */
const listAbout = (rows: readonly string[]): string | null => {
  if (!rows.some(l => l.includes('keep the lit one'))) return null;
  // Row 4 is the step's own, with a sign like the lit answer's.
  const first = rows.findIndex((l, i) => i > 4 && /^ [▸·] /.test(l));
  return rows[first - 1] ?? null;
};

/** Lights the answer that stands for a number, keeps it, and waits until the list is gone. */
const chooseAnswer = async (
  bench: RealTerminal,
  view: View,
  intent: Intent & { do: 'read' },
): Promise<void> => {
  const about = listAbout(bench.text());
  const asks = view.steps.find(x => x.key === intent.step)?.asks ?? [];
  const ask = asks.find(a => a.ask === intent.ask);
  for (let i = 0; i < 9; i++) bench.press('up');
  for (let i = ask?.possible?.[0] ?? 0; i < Number(intent.value); i++) bench.press('down');
  bench.press('enter');
  await bench.until(s => listAbout(s.split('\n')) !== about, 'the list gone');
};

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
      if (!fieldOpen(bench)) {
        bench.press('enter');
        await bench.until(/ typed |keep the lit one|Reading this again can open it/);
        // A shut gate first leads to what can open it.
        if (!fieldOpen(bench)) bench.press('enter');
      }
      await bench.until(/ typed |keep the lit one/);
      if (intent.do === 'read' && listOpen(bench)) {
        await chooseAnswer(bench, view, intent);
        break;
      }
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
  // What is read anew goes on until the gate that wants it is open.
  const anew = after.steps.some(x =>
    (x.gates ?? []).some(g => g.soon === true && g.measure === step?.key && x.shut.includes(g.id)),
  );
  const more = (step?.asks ?? []).some(
    a => a.optional !== true && (anew || !after.build.readings.has(`${step?.key}#${a.ask}`)),
  );
  if (intent.do === 'open-survey') await bench.until(/ typed {2}_/);
  else
    await bench.until(
      s => (more ? / typed {2}_|keep the lit one/.test(s) : !/^ typed |keep the lit one/m.test(s)),
      'the page after the act',
    );
};

/** Walks on until `done` says so; gives the number of acts. */
export const walkUntil = async (
  bench: RealTerminal,
  path: string,
  hand: Hand,
  done: (view: View) => boolean,
): Promise<number> => {
  let acts = 0;
  const last: string[] = [];
  for (; acts < 700; acts++) {
    const view = await onDisk(path);
    if (done(view)) return acts;
    const intent = nextIntent(view, hand);
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

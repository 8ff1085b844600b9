import { resolve } from 'node:path';
import type { Intent } from '../../src/coach/intents.ts';
import type { View } from '../../src/coach/view.ts';
import { compileContent } from '../../src/making/compile-content.ts';
import type { Quantity } from '../../src/quantity/quantities.ts';
import { read as readText } from '../../src/quantity/read.ts';
import { write } from '../../src/quantity/write.ts';
import { askChoices } from '../../src/screen/pages/step-words.ts';
import { STAGES } from '../../src/stages/sheet.ts';
import type { Content } from '../../src/words/schema.ts';
import { metricDemo, read } from '../demo/builds.ts';
import { Teller } from '../demo/tell.ts';
import { nextIntent } from '../walk/hand.ts';

type Print = (name: string, ...cells: readonly (string | number)[]) => void;

const ENTER = 1;

/** Signs a person types for what a script gives to six places: the number as the bench shows it, its unit left out. */
const signsOf = (value: unknown, quantity: Quantity): number => {
  const number = readText(String(value), quantity, 'metric');
  const shown = number.ok ? write(number.value, quantity, 'metric', { unit: false }) : String(value);
  // 40.00 on a caliper is typed 40: nobody types zeros that close a decimal.
  return (shown.includes('.') ? shown.replace(/\.?0+$/, '') : shown).length;
};

type KeyCounter = (view: View, intent: Intent) => number;

/** Counts the keys each act takes at the bench, on the page of the next step. */
const keyCounter = (): KeyCounter => {
  const voice = { content: JSON.parse(compileContent(resolve('.'))) as Content, system: 'metric' as const };
  let lastRead = '';
  /** Enter opens the first number of a step; the next one's field opens by itself. */
  const opening = (step: string): number => {
    const first = lastRead !== step;
    lastRead = step;
    return first ? ENTER : 0;
  };
  return (view, intent) => {
    if (intent.do !== 'read') lastRead = '';
    switch (intent.do) {
      case 'caution':
        // The key that took note goes on with the step by itself.
        return 1;
      case 'read': {
        const step = view.steps.find(s => s.key === intent.step);
        const ask = step?.asks?.find(a => a.ask === intent.ask);
        if (step === undefined || ask === undefined) throw new Error(`no ask ${intent.step} ${intent.ask}`);
        const chosen = askChoices(view, voice, step, ask.ask).length > 0;
        // Of a list its number is pressed; where none is lit beforehand, that lights it and Enter keeps it.
        if (chosen) return opening(intent.step) + 1 + (ask.unlit === true ? ENTER : 0);
        return opening(intent.step) + signsOf(intent.value, ask.as) + ENTER;
      }
      case 'cut-piece': {
        // A piece that came out as asked takes Space; a length of its own is typed.
        const asked = view.steps
          .flatMap(s => [s, ...(s.items ?? [])])
          .find(i => i.piece?.need === intent.need)?.piece?.long_mm;
        const length = readText(String(intent.length), 'length', 'metric');
        if (asked !== undefined && length.ok && Math.abs(length.value - asked) <= 0.5) return 1;
        return ENTER + signsOf(intent.length, 'length') + ENTER;
      }
      case 'tick': {
        // Enter ticks all of a group, each for itself: its first is the key, the others come with it.
        const item = view.next?.items?.find(i => i.key === intent.step);
        if (item?.group === undefined) return 1;
        const before = view.next?.items?.some(
          i => i.group === item.group && i.key !== item.key && view.build.ticks.has(i.key),
        );
        return before === true ? 0 : 1;
      }
      case 'offsets':
        return intent.values.reduce<number>((n, v) => n + signsOf(v, 'length') + ENTER, 0);
      case 'override':
        return 1 + intent.why.length + ENTER;
      case 'open-survey':
      case 'choose':
        return 2;
      default:
        return 1;
    }
  };
};

/** Longest wait for a gate that time alone opens (paint that must dry), in half days. */
const LONGEST_WAIT = 20;
/** So many pages are named with what they cost. */
const DEAREST = 12;

/** What is done next; where only time keeps a step shut, the person waits. */
const nextAct = async (teller: Teller): Promise<Intent | null> => {
  const shut = nextIntent(await teller.view(), { read });
  if (shut?.do !== 'override') return shut;
  for (let n = 0; n < LONGEST_WAIT; n++) {
    teller.wait(12 * 3600);
    const intent = nextIntent(await teller.view(), { read });
    if (intent?.do !== 'override') return intent;
  }
  return shut;
};

/** Key presses and gates of the whole demo build, from the first question to the last tick. */
export const keysOfTheDemo = async (print: Print): Promise<void> => {
  const told = await metricDemo();
  const whole = new Teller(41, '2026-09-14T16:30:00Z');
  whole.begin({ kind: 'build-begun', name: 'Orchard Bank kicker', system: 'metric', invented: true });
  for (const e of told.entries.slice(1)) {
    if (e.kind === 'design-set') whole.begin({ kind: e.kind, field: e.field, value: e.value });
    if (e.kind === 'design-agreed') whole.begin({ kind: e.kind });
  }
  const keysOf = keyCounter();
  const acts: Record<string, number> = {};
  const stages = new Map<string, number>();
  const pages = new Map<string, number>();
  let keys = 0;
  let count = 0;
  for (; count < 900; count++) {
    const intent = await nextAct(whole);
    if (intent === null) break;
    const view = await whole.view();
    const pressed = keysOf(view, intent);
    keys += pressed;
    const at = view.next?.key ?? '';
    const of = view.next?.stage ?? 'plan';
    stages.set(of, (stages.get(of) ?? 0) + pressed);
    const page = at.split(/[#:@]/)[0] ?? at;
    pages.set(page, (pages.get(page) ?? 0) + pressed);
    acts[intent.do] = (acts[intent.do] ?? 0) + 1;
    await whole.act(intent);
  }
  print('the whole demo build', 'acts', 'keys', 'gates passed', 'numbers read');
  print('', count, keys, acts.override ?? 0, (acts.read ?? 0) + (acts['cut-piece'] ?? 0));
  print('', 'keys, stage by stage');
  for (const stage of STAGES) print('', stage, stages.get(stage) ?? 0);
  print('', 'keys, the dearest pages');
  for (const [page, pressed] of [...pages].sort(([, a], [, b]) => b - a).slice(0, DEAREST))
    print('', page, pressed);
};

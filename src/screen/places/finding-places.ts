import type { Step } from '../../coach/walk.ts';
import { broughtBy } from '../../coach/with-remedies.ts';
import type { Quantity, System } from '../../quantity/quantities.ts';
import { read } from '../../quantity/read.ts';
import { unitOf } from '../../quantity/units.ts';
import { innerUnit } from '../../quantity/usual.ts';
import { write } from '../../quantity/write.ts';
import type { Stage } from '../../stages/sheet.ts';
import { typedLine } from '../fields/typed-line.ts';
import { findingPage, findingsPage, listed } from '../pages/finding-pages.ts';
import { whyFindingRows } from '../pages/why-finding.ts';
import { commonAct, firstOpenItem } from './common.ts';
import type { Desk, Place } from './desk.ts';

const goTo = (desk: Desk, { stage, key }: Step): void =>
  desk.root(desk.around.ways.stage(desk, { stage, step: key, item: firstOpenItem(desk, key) }));

/** All findings. */
export const findingsPlace = (stage: Stage, start: number): Place => {
  let lit = start;
  const place: Place = {
    stage: () => stage,
    rows: desk => findingsPage(desk.context(), stage, lit, desk.keyRow(place)),
    keys: () => [
      { act: 'open', words: 'what to do' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'back' },
      { act: 'help' },
      { act: 'leave' },
    ],
    act: (desk, act, char) => {
      const list = listed(desk.context());
      const last = list.length - 1;
      lit = Math.max(0, Math.min(lit, last));
      if (act === 'next') lit = Math.min(last, lit + 1);
      else if (act === 'previous') lit = Math.max(0, lit - 1);
      else if (act === 'open') {
        const thing = list[lit];
        if (thing === undefined) desk.say('Nothing to fix.');
        else if (thing.is === 'under way') goTo(desk, thing.work.next);
        else desk.push(desk.around.ways.finding(thing.finding.key));
      } else return commonAct(desk, act, char, { stage, step: null, item: 0 });
      return true;
    },
  };
  return place;
};

/** A number that a chosen change says at a step. */
type Said = Readonly<{ step: string; ask: string; value: number }>;

const isSaid = (r: unknown): r is Said => {
  const { step, ask, value } = (r ?? {}) as Partial<Record<keyof Said, unknown>>;
  return typeof step === 'string' && typeof ask === 'string' && typeof value === 'number';
};

/** A number as the person would type it; to the last place where the page's own rounding is another number. */
const asTyped = (value: number, as: Quantity, system: System): string => {
  const text = write(value, as, system);
  const back = read(text, as, system);
  const same = back.ok && Math.abs(back.value - value) <= 1e-6 * Math.max(1, Math.abs(value));
  return same ? text : `${value} ${unitOf(innerUnit(as)).label}`;
};

/** Says the numbers of a chosen change in its steps, so that nobody types what stands in its words. */
const enter = (desk: Desk, plan: Readonly<Record<string, unknown>>): string | null => {
  const list = (Array.isArray(plan.readings) ? plan.readings : []).filter(isSaid);
  for (const { step, ask, value } of list) {
    const as = desk.view.steps.find(s => s.key === step)?.asks?.find(a => a.ask === ask)?.as;
    if (as !== undefined)
      desk.act({ do: 'read', step, ask, value: asTyped(value, as, desk.view.build.system) });
  }
  return list[0]?.step ?? null;
};

/** After a choice: to the first step it brought or changed, wherever that is, else back where the finding was opened. */
const goOn = (desk: Desk): void => {
  const chosen = desk.view.build.chosen.at(-1);
  const entered = chosen === undefined ? null : enter(desk, chosen.plan);
  const step = desk.view.steps.find(
    s =>
      s.key === entered ||
      (chosen !== undefined && broughtBy(s, chosen) && s.state !== 'done' && s.state !== 'skipped'),
  );
  if (step === undefined) desk.pop();
  else goTo(desk, step);
};

/** A danger is taken on by a sentence that names it. */
const takeOn = (desk: Desk, finding: string, remedy: string, danger: string): void =>
  desk.ask({
    title: `In your own words, with "${danger}" in it`,
    line: typedLine(),
    submit: typed => {
      if (desk.act({ do: 'choose', finding, remedy, ...(typed.trim() === '' ? {} : { typed }) })) goOn(desk);
    },
  });

/** One finding and its remedies. */
export const findingPlace = (key: string): Place => {
  let lit = 0;
  let full = false;
  const place: Place = {
    rows: desk => {
      const finding = desk.view.findings.find(f => f.key === key);
      if (finding === undefined) return findingsPage(desk.context(), 'plan', 0, desk.keyRow(place));
      if (full) return whyFindingRows(desk.context(), finding, desk.keyRow(place));
      return findingPage(
        desk.context(),
        finding,
        Math.min(lit, finding.offers.length - 1),
        desk.textRow() ?? desk.keyRow(place),
      );
    },
    keys: () => [
      { act: 'open', words: 'choose the lit one' },
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'why', words: full ? 'remedies' : 'how found' },
      { act: 'back', words: 'later' },
      { act: 'help' },
    ],
    act: (desk, act, char) => {
      const finding = desk.view.findings.find(f => f.key === key);
      if (finding === undefined) {
        // What was measured since has settled it.
        desk.pop();
        return true;
      }
      const count = finding.offers.length;
      if (act === 'next') lit = Math.min(count - 1, lit + 1);
      else if (act === 'previous') lit = Math.max(0, lit - 1);
      else if (act === 'why') full = !full;
      else if (act === 'open') {
        const offer = finding.offers[Math.min(lit, count - 1)];
        if (offer?.typed !== undefined) takeOn(desk, key, offer.remedy, offer.typed);
        else if (offer !== undefined && desk.act({ do: 'choose', finding: key, remedy: offer.remedy }))
          goOn(desk);
      } else return commonAct(desk, act, char, { stage: finding.stage, step: null, item: 0 });
      return true;
    },
  };
  return place;
};

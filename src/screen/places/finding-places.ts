import { underWay } from '../../coach/under-way.ts';
import { openFindings } from '../../coach/view.ts';
import type { Step } from '../../coach/walk.ts';
import { broughtBy } from '../../coach/with-remedies.ts';
import type { Stage } from '../../stages/sheet.ts';
import { typedLine } from '../fields/typed-line.ts';
import { findingPage, findingsPage, listedFindings } from '../pages/finding-pages.ts';
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
      const list = listedFindings(desk.context());
      const mending = underWay(desk.view);
      const open = openFindings(desk.view).length;
      const last = list.length + mending.length - 1;
      lit = Math.max(0, Math.min(lit, last));
      if (act === 'next') lit = Math.min(last, lit + 1);
      else if (act === 'previous') lit = Math.max(0, lit - 1);
      else if (act === 'open') {
        const chosen = mending[lit - open];
        const finding = lit < open ? list[lit] : list[lit - mending.length];
        if (chosen !== undefined) goTo(desk, chosen.next);
        else if (finding === undefined) desk.say('Nothing to fix.');
        else desk.push(desk.around.ways.finding(finding.key));
      } else return commonAct(desk, act, char, { stage, step: null, item: 0 });
      return true;
    },
  };
  return place;
};

/** The step in which a chosen change is entered, where it is a number that somebody says. */
const enteredIn = (plan: Readonly<Record<string, unknown>>): string | null => {
  const [first] = Array.isArray(plan.readings) ? plan.readings : [];
  return typeof first?.step === 'string' ? first.step : null;
};

/** After a choice: to the first step it brought or is entered in, wherever that is, else back where the finding was opened. */
const goOn = (desk: Desk): void => {
  const chosen = desk.view.build.chosen.at(-1);
  const entered = chosen === undefined ? null : enteredIn(chosen.plan);
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

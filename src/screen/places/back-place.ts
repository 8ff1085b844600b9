import { daysAway, lastWorked, pauseSteps, type Recheck, rechecksOf } from '../../coach/pause.ts';
import { openFindings, type View } from '../../coach/view.ts';
import type { Step } from '../../coach/walk.ts';
import { cellWidth, cutAtWord, padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { counted } from '../../words/counted.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from '../pages/context.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import { findingText, stepText } from '../pages/step-words.ts';
import { tallRows } from '../pages/tall-figures.ts';
import { commonAct } from './common.ts';
import type { Place } from './desk.ts';

export const isLongAway = (view: View): boolean => daysAway(view) >= 1;

type Check = Readonly<{ title: string; why: string; measured: boolean; lit: boolean }>;

/** What is to be looked at: the steps of a long pause, measured ones first; after a few days a word on what changes by itself. */
const checksOf = (c: PageContext, few: readonly Recheck[]): readonly Check[] => {
  const steps = pauseSteps(c.view);
  if (steps.length > 0) {
    return steps.map((s, i) => ({
      title: stepText(c.view, c.voice, s, 'title') ?? s.key,
      why: stepText(c.view, c.voice, s, 'why') ?? '',
      measured: (s.asks ?? []).length > 0,
      lit: i === 0,
    }));
  }
  return few.map(k => ({
    title: say(c.voice, { words: `rechecks.${k.id}.title`, fills: { rail: k.rail ?? '' } }),
    why: say(c.voice, { words: `rechecks.${k.id}.why`, fills: { rail: k.rail ?? '' } }),
    measured: false,
    lit: false,
  }));
};

const checksLeft = (view: View, count: number): string => {
  const steps = pauseSteps(view);
  if (steps.length === 0) return `${count} to look at`;
  const minutes = [0, 1].map(k => steps.reduce((n, s) => n + (s.minutes[k] ?? 0), 0));
  return `${count} left · about ${minutes[0]} to ${minutes[1]} min`;
};

/** The first sentence of a reason; where that is too long for its row, as much of it as stands before a comma. */
const reasonWithin = (why: string, columns: number): string => {
  const sentence = why.split('. ')[0] ?? why;
  const parts = sentence.split(', ');
  while (parts.length > 1 && cellWidth(parts.join(', ')) > columns) parts.pop();
  return cutAtWord(parts.join(', '), columns);
};

/** What comes once the pause is settled: the first of the other steps that would be open by then. */
const afterChecks = (view: View): Step | null => {
  const waiting = new Set(pauseSteps(view).map(s => s.key));
  return (
    view.steps.find(
      s =>
        !waiting.has(s.key) &&
        (s.state === 'to do' ||
          s.state === 'stop' ||
          (s.state === 'waiting' && s.waitsFor.every(k => waiting.has(k)))),
    ) ?? null
  );
};

/** Back after days away: where you stopped, what to look at, what comes next. */
export const backPlace = (opened: View): Place => {
  // As it was found: a remark made on this page is no evening's work.
  const days = daysAway(opened);
  const last = lastWorked(opened);
  const few = rechecksOf(opened);
  const stageOf = (view: View) => view.next?.stage ?? 'finish';
  const place: Place = {
    rows: desk => {
      const c = desk.context();
      const when =
        last === null
          ? ''
          : new Date(last).toLocaleDateString('en-GB', {
              weekday: 'long',
              day: 'numeric',
              month: 'long',
              year: 'numeric',
            });
      const findings = openFindings(c.view);
      const next = c.view.next;
      const steps = c.view.steps.filter(s => s.stage === stageOf(c.view));
      const done = steps.filter(
        s => s.state === 'done' || s.state === 'skipped' || s.state === 'stale',
      ).length;
      const lines = findings.slice(0, 3).map(f => row('   ', findingText(c.voice, f, 'title') ?? f.key));
      const checks = checksOf(c, few);
      const taken = 3 + 2 + 3 + (lines.length === 0 ? 0 : lines.length + 1) + 2 + checks.length + 2;
      const reasons = taken + checks.length <= pageRows(c);
      const first = pauseSteps(c.view)[0];
      const after = first === undefined ? next : afterChecks(c.view);
      const body: Row[] = [
        ...tallRows(
          [
            {
              digits: String(days),
              unit: '',
              name: `${days === 1 ? 'day' : 'days'} away. You stopped on ${when}.`,
            },
          ],
          c.look.columns - 2,
          c.look.ascii,
        ),
        ...(lines.length === 0 ? [] : [row(' ', ['quiet', 'Open findings:']), ...lines]),
        [],
        ruleRow(
          c,
          'look at these before you go on',
          checks.length === 0 ? 'nothing left open' : checksLeft(c.view, checks.length),
        ),
        ...(checks.length === 0 ? [row(' ', 'Nothing was left in a state that changes by itself.')] : []),
        ...checks.flatMap(k => {
          const head = row(
            ' ',
            [k.lit ? 'lead' : 'quiet', `${k.lit ? '▸' : '·'} ${padTo(k.measured ? 'measure' : 'look', 9)}`],
            [k.lit ? 'lead' : 'plain', k.title],
          );
          // The reasons go where there is room for them; the things to do never do.
          return reasons
            ? [head, row('            ', ['quiet', reasonWithin(k.why, c.look.columns - 12)])]
            : [head];
        }),
        ruleRow(c, 'then'),
        after === null
          ? row(' ', 'Nothing is left to do in this build.')
          : row(' ', [
              first === undefined ? 'lead' : 'plain',
              `${first === undefined ? '▸' : '·'} ${after.stage}  ${stepText(c.view, c.voice, after, 'title') ?? after.key}`,
            ]),
      ];
      const stage = stageOf(c.view);
      return page(
        c,
        [
          titleRow(c),
          stripRow(c.view, stage),
          ruleRow(c, `back after ${counted(days, 'day')}`, `${stage} ${done} of ${steps.length}`),
        ],
        body,
        [
          echoRow(c, `Nothing was lost: ${counted(c.view.build.all.length, 'entry', 'entries')} read.`),
          desk.keyRow(place),
        ],
      );
    },
    keys: desk => [
      { act: 'open', words: pauseSteps(desk.view).length > 0 ? 'the first of them' : 'go on' },
      { act: 'findings' },
      { act: 'journal' },
      { act: 'help' },
      { act: 'leave' },
    ],
    act: (desk, act, char) => {
      if (act === 'open' || act === 'tick') {
        desk.pop();
        return true;
      }
      return commonAct(desk, act, char, { stage: stageOf(desk.view), step: null, item: 0 });
    },
  };
  return place;
};

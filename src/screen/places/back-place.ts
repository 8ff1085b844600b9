import { daysAway, lastWorked, rechecksOf } from '../../coach/pause.ts';
import { openFindings, type View } from '../../coach/view.ts';
import { padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { say } from '../../words/say.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from '../pages/frame.ts';
import { findingText, stepText } from '../pages/step-words.ts';
import { tallRows } from '../pages/tall-figures.ts';
import { commonAct } from './common.ts';
import type { Place } from './desk.ts';

export const isLongAway = (view: View): boolean => daysAway(view) >= 1;

/** Back after days away: where you stopped, what to look at, what comes next. */
export const backPlace = (opened: View): Place => {
  // As it was found: a remark made on this page is no evening's work.
  const days = daysAway(opened);
  const last = lastWorked(opened);
  const checks = rechecksOf(opened);
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
      const taken = 3 + 2 + 3 + (lines.length === 0 ? 0 : lines.length + 1) + 2 + checks.length + 2;
      const reasons = taken + checks.length <= pageRows(c);
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
          checks.length === 0 ? 'nothing left open' : `${checks.length} to look at`,
        ),
        ...(checks.length === 0 ? [row(' ', 'Nothing was left in a state that changes by itself.')] : []),
        ...checks.flatMap(k => {
          const title = say(c.voice, { words: `rechecks.${k.id}.title`, fills: { rail: k.rail ?? '' } });
          const why = say(c.voice, { words: `rechecks.${k.id}.why`, fills: { rail: k.rail ?? '' } });
          const first = row(' ', ['quiet', `· ${padTo(k.measured ? 'measure' : 'look', 9)}`], title);
          // The reasons go where there is room for them; the things to do never do.
          return reasons ? [first, row('            ', ['quiet', why.split('. ')[0] ?? why])] : [first];
        }),
        ruleRow(c, 'then'),
        next === null
          ? row(' ', 'Nothing is left to do in this build.')
          : row(' ', ['lead', `▸ ${next.stage}  ${stepText(c.view, c.voice, next, 'title') ?? next.key}`]),
      ];
      const stage = stageOf(c.view);
      return page(
        c,
        [
          titleRow(c),
          stripRow(c.view, stage),
          ruleRow(
            c,
            `back after ${days} ${days === 1 ? 'day' : 'days'}`,
            `${stage} ${done} of ${steps.length}`,
          ),
        ],
        body,
        [echoRow(c, `Nothing was lost: ${c.view.build.all.length} entries read.`), desk.keyRow(place)],
      );
    },
    keys: () => [
      { act: 'open', words: 'go on' },
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

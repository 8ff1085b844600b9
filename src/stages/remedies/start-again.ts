import { CAREFUL_RAIL } from '../rail-findings/limits.ts';
import type { StepDraft } from '../sheet.ts';
import {
  angle,
  BENCH,
  frozenNumber,
  frozenRows,
  frozenText,
  type Injecting,
  length,
  type Offering,
  offer,
  railOf,
} from './remedy.ts';
import { slitsFree } from './slit-limits.ts';
import { beforeSurvey } from './turns.ts';

/** A rail from the blank to its tacks, and the evening of welding it (common practice: first frame). */
const MINUTES = { tack: 240, weld: 150 } as const;

/** The spare rail takes this one's place: same marks, closed to the line, read like the first. */
export const offerStartAgain: Offering = c => {
  const { plan, survey } = c.r;
  if (!slitsFree(survey.phase) || plan.slits.length === 0) return [];
  return [
    offer(
      c,
      'start-again',
      MINUTES.tack + (survey.phase === 'tacked' ? 0 : MINUTES.weld),
      CAREFUL_RAIL,
      { cut: length(plan.cut_mm), count: plan.slits.length },
      {
        cut_mm: plan.cut_mm,
        marks: plan.slits.map(x => ({
          slit: x.number,
          at_mm: x.at_mm,
          close_rad: x.close_rad,
          gap_mm: x.gap_mm,
        })),
      },
    ),
  ];
};

type Mark = Readonly<{ slit: number; at_mm: number; close_rad: number; gap_mm: number }>;

export const startAgainSteps: Injecting = (s, chosen) => {
  const on = railOf(s, chosen);
  const marks = frozenRows<Mark>(chosen, 'marks', ['slit', 'at_mm', 'close_rad', 'gap_mm']);
  if (on === null) return [];
  const phase = frozenText(chosen, 'phase');
  const key = (part: string): string => `tack/again-${part}@${chosen.entry}`;
  const items = (
    part: string,
    value: (m: Mark) => Pick<NonNullable<StepDraft['items']>[number], 'value' | 'second'>,
  ) => marks.map(m => ({ key: `${key(part)}#${m.slit}`, name: String(m.slit), ...value(m) }));
  const fills = {
    ...BENCH,
    rail: on.rail,
    count: marks.length,
    cut: length(frozenNumber(chosen, 'cut_mm')),
  };
  const base = { stage: 'tack', fills, uses: [], line: { face: 'hinge line', rail: on.rail } } as const;
  const turn = (at: number) => beforeSurvey(s, on.index, 'tacked', at);
  const n = marks.length;
  return [
    { ...base, key: key('blank'), words: 'again-blank', turn: turn(-4), needs: [], minutes: [25, 45] },
    {
      ...base,
      key: key('saw'),
      words: 'again-saw',
      turn: turn(-3),
      needs: [key('blank')],
      items: items('saw', m => ({ value: { v: m.at_mm, as: 'slit' } })),
      minutes: [n * 3, n * 6],
    },
    {
      ...base,
      key: key('close'),
      words: 'again-close',
      line: 'tack line',
      turn: turn(-2),
      needs: [key('saw')],
      items: items('close', m => ({ value: angle(m.close_rad), second: { v: m.gap_mm, as: 'thickness' } })),
      minutes: [n * 3, n * 5],
    },
    ...(phase === 'tacked'
      ? []
      : [
          {
            ...base,
            key: `weld/again-weld@${chosen.entry}`,
            stage: 'weld',
            words: 'again-weld',
            // After it was read as tacked, before it is read half welded and cold.
            turn: beforeSurvey(s, on.index, 'half-welded', 15),
            needs: [`tack/survey@${on.rail}`],
            items: marks.map(m => ({
              key: `weld/again-weld@${chosen.entry}#${m.slit}`,
              name: String(m.slit),
            })),
            minutes: [n * 5, n * 9],
          } as const,
        ]),
  ];
};

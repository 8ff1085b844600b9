import { readingKey } from '../../build/fold.ts';
import { TURN } from '../order.ts';
import type { Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { jointWall } from '../weld-walls.ts';
import { couponsKey } from './coupon-steps.ts';
import { hotGates } from './hot-gates.ts';
import { settingNow } from './setting-now.ts';
import { workedNeeds } from './worked-steps.ts';

/** Largest gap of a fillet that needs no more weld, mm: 1/16 in (AWS D1.1 as an AWS forum and a city's specification quote it [found]). */
const FREE_GAP = 25.4 / 16;
/** Least of three welds with a gap is a leg as much larger; none is made over this, mm: 3/16 in (the same [found]). */
const MOST_GAP = (3 * 25.4) / 16;
/** Less current for a joint that shows a gap, % (common practice: 10 to 15 for a beginner's burn-through). */
const LESS_pct = 10;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;

/** Setting the machine for the joints, by the largest gap of the dry fit. */
export const jointSteps = (s: Situation): readonly StepDraft[] => {
  const gap = s.build.readings.get(readingKey('prep/fit', 'gap'))?.value ?? null;
  const wall = jointWall(s);
  // A gap over half the wall burns through where a closed joint would not (common practice).
  const open = gap !== null && gap > wall / 2;
  const gates: readonly Gate[] =
    gap !== null && gap > FREE_GAP
      ? [
          {
            id: 'gap-wide',
            shut: true,
            fills: { gap: thickness(gap), most: thickness(FREE_GAP), never: thickness(MOST_GAP) },
            ...(gap > MOST_GAP ? { never: true as const } : {}),
            measure: 'prep/fit',
          },
        ]
      : [];
  const set = settingNow(s, 'joints')?.set ?? null;
  const wired = set !== null && set.feed_m_min !== null;
  return [
    {
      key: 'weld/joint-settings',
      stage: 'weld',
      words: open ? 'joint-settings-gap' : wired ? 'joint-settings-wire' : 'joint-settings',
      fills: {
        wall: thickness(wall),
        gap: thickness(gap ?? 0),
        half: thickness(wall / 2),
        less: { v: LESS_pct, as: 'percent' },
      },
      turn: TURN.fit + 60,
      needs: ['prep/fit', 'weld/settings', couponsKey(s), ...workedNeeds(s, 'joints')],
      uses: wired
        ? ['joint-amps', 'joint-volts', 'joint-feed', 'joint-travel']
        : ['joint-amps', 'joint-travel'],
      ...(set === null ? {} : { tall: wired ? ['joint-volts', 'joint-feed'] : ['joint-amps'] }),
      gates: [...gates, ...hotGates(s)],
      minutes: [10, 20],
    },
  ];
};

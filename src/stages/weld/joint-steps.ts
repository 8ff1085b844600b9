import { readingKey } from '../../build/fold.ts';
import { TURN } from '../order.ts';
import type { Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { kindOf, machineOf, settingsFor } from './machine.ts';

/** Largest gap of a fillet that needs no more weld, mm: 1/16 in (AWS D1.1 as an AWS forum and a city's specification quote it [found]). */
const FREE_GAP = 25.4 / 16;
/** Least of three welds with a gap is a leg as much larger; none is made over this, mm: 3/16 in (the same [found]). */
const MOST_GAP = (3 * 25.4) / 16;
/** Less current for a joint that shows a gap, % (common practice: 10 to 15 for a beginner's burn-through). */
const LESS_pct = 10;

const thickness = (v: number) => ({ v, as: 'thickness' }) as const;

/** The thinner wall where an upright or crossmember meets a rail, mm. */
export const jointWall = (s: Situation): number =>
  Math.min(s.ramp.design.post.wall_mm, s.ramp.design.tube.wall_mm);

/** What to set for the joints of uprights and crossmembers; null where the machine is not told or the wall is past the rules. */
export const jointSettings = (s: Situation) => {
  const kind = kindOf(s);
  if (kind === null) return null;
  const set = settingsFor(kind, jointWall(s), machineOf(s)?.filler_mm ?? null);
  return set.ok ? set.value : null;
};

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
  const set = jointSettings(s);
  return [
    {
      key: 'weld/joint-settings',
      stage: 'weld',
      words: open ? 'joint-settings-gap' : 'joint-settings',
      fills: {
        wall: thickness(wall),
        gap: thickness(gap ?? 0),
        half: thickness(wall / 2),
        less: { v: LESS_pct, as: 'percent' },
      },
      turn: TURN.fit + 60,
      needs: ['prep/fit', 'weld/settings'],
      uses: ['joint-amps'],
      ...(set === null ? {} : { tall: ['joint-amps'] }),
      gates,
      minutes: [10, 20],
    },
  ];
};

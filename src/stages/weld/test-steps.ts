import { READINGS } from '../../build/reading-names.ts';
import { TURN } from '../order.ts';
import type { StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { couponSteps } from './coupon-steps.ts';
import { hotGates } from './hot-gates.ts';
import { around, pullBand } from './rail-pull.ts';
import { settingTall } from './setting-tall.ts';

/** Angle of a straight edge's legs: 1 mm on 600 is 0.1° (common practice; exact). */
const LEG = 600;
/** A gauge's step at each end of what is read, rad. */
const GAUGE = (0.2 * Math.PI) / 180;
const angle = (v: number) => ({ v, as: 'angle' }) as const;

const testPiece = (s: Situation): StepDraft | null => {
  const plan = s.ramp.plans.get(s.ramp.rails[0] ?? '');
  if (plan === undefined || plan.slits.length === 0) return null;
  const { step, ask, slits } = READINGS.testPull;
  const closed =
    s.build.readings.get(`${READINGS.testKerf.step}#${READINGS.testKerf.ask}`)?.value ??
    (READINGS.testKerf.slits * plan.kerf_mm) / (s.ramp.design.tube.depth_mm - s.ramp.design.tube.wall_mm / 2);
  const pull = pullBand(plan);
  return {
    key: step,
    stage: 'weld',
    words: 'test-piece',
    fills: {
      slits,
      all: READINGS.testKerf.slits,
      closed: angle(closed),
      low: angle(slits * pull.low),
      high: angle(slits * pull.high),
      leg: { v: LEG, as: 'length' },
      rise: { v: 1, as: 'length' },
      step: angle(1 / LEG),
    },
    turn: TURN.testWeld + 30,
    needs: [
      'cut/test-piece',
      'prep/place',
      'prep/power',
      'prep/weather',
      'prep/dry-steel',
      'prep/body',
      'weld/first-evening',
      'weld/settings',
    ],
    uses: ['weld-amps'],
    tall: settingTall(s),
    asks: [
      {
        ask,
        as: 'angle',
        expected: around(
          {
            low: closed + slits * pull.low,
            likely: closed + slits * pull.likely,
            high: closed + slits * pull.high,
          },
          GAUGE,
        ),
        possible: [Math.max(0, closed - 0.05), closed + 0.3],
      },
    ],
    gates: hotGates(s),
    cautions: ['weld-fume'],
    minutes: [45, 90],
  };
};

/** Welds on steel that is not the job: what three slits pull, and pieces broken to see whether they hold. */
export const testSteps = (s: Situation): readonly StepDraft[] => {
  const piece = testPiece(s);
  return [...(piece === null ? [] : [piece]), ...couponSteps(s)];
};

import type { RailPlan } from '../../ramp/rail-plan.ts';
import type { FigureId, Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { halvesOf, ROUND } from '../weld-order.ts';
import { HAND_OFF, HAND_WARM_C, SIDEWAYS_LIMIT, SMOOTH_LIMIT } from './limits.ts';
import { slitNumbers, tackedBend, topsOf } from './rail-pull.ts';
import { settingTall } from './setting-tall.ts';

/** Up to this wall the rail stands slits up and its sides are welded downward; thicker ones are welded lying, mm (common practice). */
const STANDING_TO_WALL = 2.4;
/** Fit-up tacks grown before the sides are welded, mm, low and high (common practice). */
const GROWN = { thin: [5, 6], thick: [8, 10] } as const;
/** A side weld stops this short of the back corner and is stitched on; it wraps so far round the top corner, mm (common practice). */
const STITCH = 10;
const WRAP = [5, 8] as const;
/** Fire watch after the last arc, and the look after it, s (NFPA 51B-2019: an hour, and up to three more of looking [found]). */
const WATCH_s = 3600;
const LOOK_AGAIN_s = 3 * 3600;
/** Straight edge's legs: 1 mm on 600 is 0.1° (common practice; exact). */
const LEG = 600;

const length = (v: number) => ({ v, as: 'length' }) as const;
const angle = (v: number) => ({ v, as: 'angle' }) as const;

/** One slit rail to weld: its plan, its place among the rails, and what its words are filled with. */
export type RailJob = Readonly<{
  s: Situation;
  plan: RailPlan;
  index: number;
  standing: boolean;
  /** Other rails are welded in the same rounds. */
  inStep: boolean;
  common: Pick<StepDraft, 'stage' | 'fills'>;
  /** What the machine stands at, tall where the hand is. */
  set: readonly FigureId[];
}>;

export const railJob = (s: Situation, plan: RailPlan, index: number): RailJob => {
  const d = s.ramp.design;
  const wall = s.measured.tubes.get(plan.rail)?.wall_mm ?? d.tube.wall_mm;
  const standing = wall <= STANDING_TO_WALL;
  const grown = standing ? GROWN.thin : GROWN.thick;
  const halves = halvesOf(slitNumbers(plan));
  const tops = topsOf(plan);
  const others = s.ramp.rails.filter(rail => rail !== plan.rail);
  const fills: Fills = {
    rail: plan.rail,
    round: ROUND,
    'hand-warm': { v: HAND_WARM_C, as: 'temperature' },
    'hand-off': length(HAND_OFF),
    'grown-low': length(grown[0]),
    'grown-high': length(grown[1]),
    stitch: length(STITCH),
    'wrap-low': length(WRAP[0]),
    'wrap-high': length(WRAP[1]),
    first: halves.first.length,
    rest: halves.rest.length,
    odd: tops.odd.length,
    even: tops.even.length,
    count: plan.slits.length,
    limit: length(SMOOTH_LIMIT[d.tolerance]),
    sideways: length(SIDEWAYS_LIMIT),
    watch: { v: WATCH_s, as: 'time' },
    'look-again': { v: LOOK_AGAIN_s, as: 'time' },
    other: others.join(', '),
    tacked: angle(tackedBend(s, plan)),
    leg: length(LEG),
    rise: length(1),
    step: angle(1 / LEG),
  };
  return {
    s,
    plan,
    index,
    standing,
    inStep: d.sequence === 'in step' && others.length > 0,
    common: { stage: 'weld', fills },
    set: settingTall(s),
  };
};

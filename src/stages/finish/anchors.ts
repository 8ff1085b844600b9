import { readingKey } from '../../build/fold.ts';
import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { PULL_TEST } from '../../reckon/strength/anchors.ts';
import { TURN } from '../order.ts';
import type { Figure, Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { anchorsAnEnd, standingStill } from '../standing-still.ts';
import { MATTERS } from './limits.ts';

/** No anchor is trusted for less than a firm tug by hand, N (common practice). */
const LEAST_PULL = 500;

export type AnchorNeed = Readonly<{ slide_N: number; lift_N: number; pull_N: number }>;

/**
 * What the rider of the plan does to the ramp on its ground, and what each anchor that plan wants is pulled to before he does: its share
 * of sliding and, at the entry edge, of lifting, both at once, half as much again. Nothing is allowed for feet that dig in. Null
 * where the reckoning refuses the ramp.
 */
export const anchorNeed = (s: Situation): AnchorNeed | null => {
  const still = standingStill(s);
  if (still === null) return null;
  const { slide_N: along, sideways_N, lift_N: up, sideLift_N } = still.standing.held;
  const each = anchorsAnEnd(s);
  const slide_N = Math.hypot(along, sideways_N) / (2 * each);
  // A rider at a corner of the lip lifts the entry edge and one side at once.
  const lift_N = up / each + sideLift_N / each;
  return { slide_N, lift_N, pull_N: Math.max(LEAST_PULL, PULL_TEST * Math.hypot(slide_N, lift_N)) };
};

const pulls = (s: Situation): readonly (number | null)[] =>
  Array.from(
    { length: 2 * anchorsAnEnd(s) },
    (_, k) => s.build.readings.get(readingKey('finish/anchors', `pull${k + 1}`))?.value ?? null,
  );

/** No anchors, no riding: nothing opens it but a pull of every one that plan wants, and that held. */
export const anchorGate = (s: Situation): Gate => {
  const need = anchorNeed(s)?.pull_N ?? Number.MAX_VALUE;
  const weak = pulls(s).filter(p => p === null || p < need).length;
  return {
    id: 'anchors',
    shut: weak > 0,
    never: true,
    fills: { weak, all: 2 * anchorsAnEnd(s), need: { v: need === Number.MAX_VALUE ? 0 : need, as: 'force' } },
    measure: 'finish/anchors',
  };
};

export const anchorSteps = (s: Situation): readonly StepDraft[] => {
  const need = anchorNeed(s)?.pull_N ?? LEAST_PULL;
  const each = anchorsAnEnd(s);
  return [
    {
      key: 'finish/anchors',
      stage: 'finish',
      words: 'anchors',
      fills: {
        all: 2 * each,
        each,
        // What a luggage scale shows, rounded up.
        scale: { v: Math.ceil(need / GRAVITY_m_s2), as: 'mass', step: 1 },
      },
      turn: TURN.finish + 140,
      needs: ['finish/deck', 'assemble/move-out'],
      uses: ['anchor-pull', 'anchor-slide', 'anchor-lift'],
      tall: ['anchor-pull'],
      asks: Array.from({ length: 2 * each }, (_, k) => ({
        ask: `pull${k + 1}`,
        as: 'force',
        expected: [need, 3 * need],
        possible: [0, 20_000],
      })),
      minutes: [60, 120],
    },
  ];
};

export const anchorFigures = (s: Situation): readonly Figure[] => {
  const need = anchorNeed(s);
  const force = (id: string, v: number | undefined): Figure => ({
    id,
    kind: 'size',
    as: 'force',
    value: v === undefined ? { is: 'unknown', needs: 'plan/curve' } : { is: 'exact', v },
    matters: MATTERS.force,
  });
  return [
    force('anchor-slide', need?.slide_N),
    force('anchor-lift', need?.lift_N),
    force('anchor-pull', need?.pull_N),
  ];
};

import { readingKey } from '../../build/fold.ts';
import { memberMass } from '../../ramp/mass.ts';
import { FRICTION } from '../../reckon/handling/slide.ts';
import { GRAVITY_m_s2 } from '../../reckon/ride/air-and-gravity.ts';
import { rampPush } from '../../reckon/ride/ramp-push.ts';
import { TURN } from '../order.ts';
import type { Figure, Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { MATTERS } from './limits.ts';
import { RIDE_FACTOR } from './proof.ts';

/** Two at the entry edge, which lifts as the lip is loaded, and two at the rear (bench rule; practice). */
const ANCHORS = 4;
const AT_ENTRY = 2;
/** Each is pulled to this over what it has to hold (common practice). */
const OVER = 1.5;
/** No anchor is trusted for less than a firm tug by hand, N (common practice). */
const LEAST_PULL = 500;

const centreX = (s: Situation): number => {
  const mass = s.ramp.members.reduce((sum, m) => sum + memberMass(m), 0);
  return s.ramp.members.reduce((sum, m) => sum + memberMass(m) * m.x_mm, 0) / mass;
};

export type AnchorNeed = Readonly<{ slide_N: number; lift_N: number; pull_N: number }>;

/**
 * What a rider at three times his weight does to the ramp, and what each of four anchors is pulled to before he does: its share
 * of sliding and, at the entry edge, of lifting, both at once, half as much again. Friction is the least of dry grass; nothing
 * is allowed for feet that dig in. Null where the reckoning refuses the ramp.
 */
export const anchorNeed = (s: Situation): AnchorNeed | null => {
  const { design: d, lip, entry, masses } = s.ramp;
  const radius_m = d.arc.radius_mm / 1000;
  const push = rampPush({
    rider_kg: d.rider,
    speed_m_s: Math.sqrt((RIDE_FACTOR - 1) * GRAVITY_m_s2 * radius_m),
    radius_m,
    exit_rad: d.arc.exit_rad,
    ramp_kg: masses.all_kg,
    friction: FRICTION['dry grass'].low,
    base_m: (lip.x_mm - entry.length_mm) / 1000,
    lip_m: lip.y_mm / 1000,
    centre_m: Math.max(0, lip.x_mm - centreX(s)) / 1000,
  });
  if (!push.ok) return null;
  const slide_N = push.value.slide_short_N / ANCHORS;
  const lift_N = push.value.hold_down_N / AT_ENTRY;
  return { slide_N, lift_N, pull_N: Math.max(LEAST_PULL, OVER * Math.hypot(slide_N, lift_N)) };
};

const pulls = (s: Situation): readonly (number | null)[] =>
  Array.from(
    { length: ANCHORS },
    (_, k) => s.build.readings.get(readingKey('finish/anchors', `pull${k + 1}`))?.value ?? null,
  );

/** No anchors, no riding: nothing opens it but four pulls that held. */
export const anchorGate = (s: Situation): Gate => {
  const need = anchorNeed(s)?.pull_N ?? Number.MAX_VALUE;
  const weak = pulls(s).filter(p => p === null || p < need).length;
  return {
    id: 'anchors',
    shut: weak > 0,
    never: true,
    fills: { weak, all: ANCHORS, need: { v: need === Number.MAX_VALUE ? 0 : need, as: 'force' } },
    measure: 'finish/anchors',
  };
};

export const anchorSteps = (s: Situation): readonly StepDraft[] => {
  const need = anchorNeed(s)?.pull_N ?? LEAST_PULL;
  return [
    {
      key: 'finish/anchors',
      stage: 'finish',
      words: 'anchors',
      fills: { all: ANCHORS },
      turn: TURN.finish + 140,
      needs: ['finish/deck', 'assemble/move-out'],
      uses: ['anchor-pull', 'anchor-slide', 'anchor-lift'],
      tall: ['anchor-pull'],
      asks: Array.from({ length: ANCHORS }, (_, k) => ({
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

import { GRAVITY_m_s2 } from '../quantity/gravity.ts';
import { faceOffset, spotAtSlope } from '../ramp/curve.ts';
import { memberMass } from '../ramp/mass.ts';
import { curveOf } from '../ramp/rail-plan.ts';
import {
  ANCHORS,
  type AnchorPlan,
  anchorPlan,
  type Ballast,
  ballast,
  LEAST_ANCHORS,
  MOST_AN_END,
} from '../reckon/strength/anchors.ts';
import { GROUNDS } from '../reckon/strength/ground.ts';
import { type RiderPlace, type Standing, standing } from '../reckon/strength/standing.ts';
import { keptByInput } from './kept-by-input.ts';
import { loadsOf, readingOf } from './riding.ts';
import type { Situation } from './situation.ts';

const keptStanding = keptByInput(standing);

/** Places of the rider that are looked at, from the rail's start to the lip. */
const PLACES = 13;

/** Ground in which a stake is counted at half: soaked, or never packed. */
const SOAKS: ReadonlySet<string> = new Set(['wet lawn', 'soft or filled ground']);
const SOAKED = 'stake 900 mm, soaked ground';

/** The ramp under its rider on this ground: what moves it, what four anchors or more must hold, what weight would do instead. */
export type StandingStill = Readonly<{
  standing: Standing;
  anchors: AnchorPlan | null;
  ballast: Ballast | null;
}>;

/**
 * Anchors at each of the two ends, as plan wants them of this ramp on this ground; even, for left and right. Where no number of
 * stakes would do, as many as were said or the fewest there may be: each then has to hold its share of all when it is pulled.
 */
export const anchorsAnEnd = (s: Situation): number => {
  const planned = standingStill(s)?.anchors?.entry;
  const said = readingOf(s, 'plan/ground', 'anchors') ?? 0;
  return planned ?? Math.min(MOST_AN_END, Math.max(LEAST_ANCHORS / 2, 2 * Math.floor(said / 4)));
};

/** Several pages ask it of one situation. */
const known = new WeakMap<Situation, { still: StandingStill | null }>();

/** Null where the kernel knows no such ramp. */
export const standingStill = (s: Situation): StandingStill | null => {
  const kept = known.get(s);
  if (kept !== undefined) return kept.still;
  const still = reckoned(s);
  known.set(s, { still });
  return still;
};

const reckoned = (s: Situation): StandingStill | null => {
  const { design: d, entry, masses, members } = s.ramp;
  const loads = loadsOf(s);
  if (loads === null) return null;
  const c = curveOf(d);
  const from = Math.asin(Math.min(1, entry.length_mm / (c.radius_mm + faceOffset(c, 'deck top'))));
  const places = Array.from({ length: PLACES }, (_, k): RiderPlace => {
    const slope = from + ((c.exit_rad - from) * k) / (PLACES - 1);
    const spot = spotAtSlope(c, 0, slope, k === PLACES - 1 ? c.straight_mm : 0);
    return { x_mm: spot.x, y_mm: Math.max(0, spot.y), slope_rad: slope, normal_N: loads.riding_N };
  });
  const steel = members.reduce((sum, m) => sum + memberMass(m), 0);
  const base = members.filter(m => m.kind === 'base rail');
  const rear = Math.max(...base.map(m => m.x_mm + m.long_mm / 2));
  const { friction } = GROUNDS[d.ground];
  const still = keptStanding({
    places,
    along_share: loads.along_share,
    side_share: loads.side_share,
    weight_N: masses.all_kg * GRAVITY_m_s2,
    centre_x_mm: members.reduce((sum, m) => sum + memberMass(m) * m.x_mm, 0) / steel,
    front_x_mm: entry.length_mm,
    rear_x_mm: rear,
    track_mm: d.width - d.tube.width_mm,
    deck_mm: d.width,
    friction,
  });
  if (!still.ok) return null;
  return {
    standing: still.value,
    anchors: anchorPlan(still.value, ANCHORS[SOAKS.has(d.ground) ? SOAKED : 'stake 900 mm']),
    ballast: ballast(still.value, friction),
  };
};

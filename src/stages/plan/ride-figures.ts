import { climb } from '../../reckon/ride/climb.ts';
import { arcOnset } from '../../reckon/ride/onset.ts';
import { footPressure, GROUNDS } from '../../reckon/strength/ground.ts';
import type { Standing } from '../../reckon/strength/standing.ts';
import { transitionOf } from '../flight-band.ts';
import { loadSpeed, loadsOf, MACHINES } from '../riding.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { standingStill } from '../standing-still.ts';
import { flightFigures } from './flight-figures.ts';
import type { Ride } from './ride-facts.ts';
import { size } from './ride-size.ts';
import type { Strength } from './strength-asks.ts';
import { deckUse } from './strength-deck.ts';

/** Side of the board or paver asked for under a foot, mm (bench rule; practice). */
const BOARD = 300;

const loadFigures = (s: Situation): readonly Figure[] => {
  const loads = loadsOf(s);
  const needs = 'plan/curve';
  const transition = transitionOf(s);
  const speed_m_s = loadSpeed(s);
  const climbed = climb({ ...transition, speed_m_s });
  const onset = arcOnset(speed_m_s, transition.radius_m, MACHINES[s.ramp.design.use].wheelbase_m);
  return [
    size('load-factor', 'ratio', loads?.load_factor, needs),
    size('load-at-lip', 'ratio', climbed.ok ? climbed.value.load_factor_end : null, needs),
    size('load-onset', 'ratio', onset.ok ? onset.value.rate_1_s : null, needs),
    size('load-counted', 'ratio', loads?.riding_factor, needs),
    size('load-ride', 'force', loads?.riding_N, needs),
    size('load-drop', 'force', loads?.drop_N, needs),
    size('load-wheel', 'force', loads?.wheel_N, needs),
    size('load-lip', 'force', loads?.lip_push_N, needs),
    size('load-along', 'force', loads === null ? null : loads.along_share * loads.riding_N, needs),
    size('load-side', 'force', loads === null ? null : loads.side_share * loads.riding_N, needs),
    // N/mm² are MPa; kilonewtons a square metre read better as newtons.
    size('load-people', 'force', loads === null ? null : loads.standing_N_mm2 * 1e6, needs),
  ];
};

const share = (id: string, v: number | null | undefined, pending: number | null): Figure =>
  ({
    id,
    kind: 'size',
    as: 'percent',
    matters: 2,
    value:
      v != null && Number.isFinite(v)
        ? { is: 'exact', v: 100 * v }
        : pending === null
          ? { is: 'pending' }
          : { is: 'pending', meanwhile: 100 * pending },
  }) as Figure;

const strengthFigures = (s: Situation, strength: Strength): readonly Figure[] => {
  const held = strength.is === 'known' ? strength.held : null;
  const meanwhile = strength.is === 'pending' ? strength.meanwhile : null;
  const deck = deckUse(s);
  return [
    share('use-frame', held?.governing.utilisation, meanwhile),
    share('use-members', held?.shares.member, null),
    share('use-slits', held?.shares.slit, null),
    share('use-range', held?.shares.range, null),
    share('use-joints', held?.shares.joint, null),
    share('use-sag', held?.shares.sag, null),
    share('use-deck', deck?.utilisation, null),
    size('deck-span', 'length', deck?.span_mm, 'plan/curve'),
    size('deck-span-most', 'length', deck?.largest_mm, 'plan/curve'),
  ];
};

/** Safety against one way to move; where nothing pushes it is as safe as a ramp gets. */
const SAFE = 10;
const safety = (of: Standing['slide'] | undefined): number | null =>
  of === undefined ? null : Math.min(SAFE, of.safety ?? SAFE);

const standFigures = (s: Situation, strength: Strength): readonly Figure[] => {
  const still = standingStill(s);
  const needs = 'plan/curve';
  const held = strength.is === 'known' ? strength.held : null;
  const pressed =
    held === null ? null : footPressure(held.foot_N, BOARD, BOARD, GROUNDS[s.ramp.design.ground]);
  return [
    size('safe-slide', 'ratio', safety(still?.standing.slide), needs),
    size('safe-sideways', 'ratio', safety(still?.standing.sideways), needs),
    size('safe-tip', 'ratio', safety(still?.standing.tipForward), needs),
    size('safe-tip-side', 'ratio', safety(still?.standing.tipSideways), needs),
    size(
      'anchor-count',
      'count',
      still?.anchors == null ? null : still.anchors.entry + still.anchors.rear,
      needs,
    ),
    size('anchor-entry-holds', 'force', still?.anchors?.entryEach_N, needs),
    size('anchor-rear-holds', 'force', still?.anchors?.rearEach_N, needs),
    size('ballast', 'mass', still?.ballast == null ? null : still.ballast.slide_kg, needs),
    size('ballast-entry', 'mass', still?.ballast == null ? null : still.ballast.entry_kg, needs),
    share('use-ground', pressed?.utilisation, null),
    size('foot-board', 'length', pressed?.side_mm, needs),
  ];
};

/** Where the ride goes, what it loads, how far everything is used: the margins, on one page. */
export const rideFigures = (s: Situation, ride: Ride, strength: Strength): readonly Figure[] => [
  ...flightFigures(s, ride),
  ...loadFigures(s),
  ...strengthFigures(s, strength),
  ...standFigures(s, strength),
];

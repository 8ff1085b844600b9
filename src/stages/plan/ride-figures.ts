import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { climb } from '../../reckon/ride/climb.ts';
import { arcOnset } from '../../reckon/ride/onset.ts';
import { runIn } from '../../reckon/ride/run-in.ts';
import { footPressure, GROUNDS } from '../../reckon/strength/ground.ts';
import type { Standing } from '../../reckon/strength/standing.ts';
import { groundOf, lipSpeed, plainFlight, transitionOf } from '../flight-band.ts';
import { loadSpeed, loadsOf, MACHINES } from '../riding.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { standingStill } from '../standing-still.ts';
import type { Ride } from './ride-facts.ts';
import type { Strength } from './strength-asks.ts';
import { deckUse } from './strength-deck.ts';

/** A run-in as a garden may have: how steep, and how far level before the ramp (common practice). */
const RUN_IN = { slope_rad: (15 * Math.PI) / 180, flat_m: 5 } as const;
/** Fall that a landing slope is suggested for, m: hardly felt [judgement]. */
const KIND_FALL = 0.3;
/** Side of the board or paver asked for under a foot, mm (bench rule; practice). */
const BOARD = 300;

type As = Figure['as'];

/** Changes that matter here: speed m/s, distance m, force N, ratio, per cent, angle rad, length mm. */
const MATTERS: Readonly<Partial<Record<As, number>>> = {
  speed: 0.15,
  distance: 0.05,
  force: 20,
  ratio: 0.05,
  percent: 2,
  angle: 0.02,
  length: 5,
};

const size = (id: string, as: As, v: number | null | undefined, needs = 'plan/ride'): Figure =>
  ({
    id,
    kind: 'size',
    as,
    value: v == null || !Number.isFinite(v) ? { is: 'unknown', needs } : { is: 'exact', v },
    matters: MATTERS[as] ?? 0.5,
  }) as Figure;

/** Least slope of a landing on which the flight falls no harder than it is wanted to: β − asin(√(2gh)/v) [derived]; level at the least. */
const kindSlope = (landing_rad: number, speed_m_s: number): number =>
  Math.max(0, landing_rad - Math.asin(Math.min(1, Math.sqrt(2 * GRAVITY_m_s2 * KIND_FALL) / speed_m_s)));

const flightFigures = (s: Situation, ride: Ride): readonly Figure[] => {
  const { launch, landing, flight, band, window } = ride;
  const ground = landing === null ? null : groundOf(landing);
  const plain = launch === null || ground === null ? null : plainFlight(s, launch, ground);
  const dragged = launch === null || ground === null ? null : plainFlight(s, launch, ground, true);
  const faster = launch === null ? null : lipSpeed(s, launch.foot_m_s + 1 / 3.6);
  const farther =
    launch === null || faster === null || ground === null
      ? null
      : plainFlight(s, { ...launch, lip_m_s: faster }, ground);
  const { rolling, drag_m2, wheelbase_m } = MACHINES[s.ramp.design.use];
  const from =
    launch === null
      ? null
      : runIn({
          ...RUN_IN,
          speed_m_s: launch.foot_m_s,
          rolling,
          drag_area_m2: drag_m2,
          mass_kg: s.ramp.design.rider,
        });
  const needs = launch === null ? 'plan/ride' : 'plan/landing';
  return [
    size('entry-speed', 'speed', launch?.foot_m_s),
    size('lip-speed', 'speed', launch?.lip_m_s),
    size('run-in-drop', 'distance', from?.ok === true ? from.value.drop_m : null),
    {
      id: 'lands',
      kind: 'size',
      as: 'distance',
      matters: 0.05,
      value:
        band === null
          ? { is: 'unknown', needs }
          : { is: 'band', low: band.all.near_m, likely: band.plain_m, high: band.all.far_m },
    },
    size('launch-lag', 'angle', band?.lag_rad, needs),
    size('rise', 'distance', flight?.rise_m, needs),
    {
      id: 'fall',
      kind: 'size',
      as: 'distance',
      matters: 0.05,
      value:
        band === null || flight === null
          ? { is: 'unknown', needs }
          : {
              is: 'band',
              low: Math.min(flight.fall_height_m, band.worst_fall_m),
              likely: flight.fall_height_m,
              high: Math.max(flight.fall_height_m, band.worst_fall_m),
            },
    },
    size(
      'per-km-h',
      'distance',
      plain === null || farther === null ? null : farther.distance_m - plain.distance_m,
      needs,
    ),
    size(
      'drag-takes',
      'distance',
      plain === null || dragged === null ? null : plain.distance_m - dragged.distance_m,
      needs,
    ),
    size(
      'kind-slope',
      'angle',
      flight === null ? null : kindSlope(flight.landing_rad, flight.landing_speed_m_s),
      needs,
    ),
    size('straight-lip', 'length', 1000 * wheelbase_m),
    ...(window === null
      ? []
      : [
          size('window-low', 'speed', window.entry.least_m_s),
          size('window-high', 'speed', window.entry.most_m_s),
          size('window-wide', 'speed', window.width_m_s),
        ]),
  ];
};

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

import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { runIn } from '../../reckon/ride/run-in.ts';
import { groundOf, lipSpeed, plainFlight } from '../flight-band.ts';
import { MACHINES } from '../riding.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import type { Ride } from './ride-facts.ts';
import { size } from './ride-size.ts';

/** A run-in as a garden may have: how steep, and how far level before the ramp (common practice). */
const RUN_IN = { slope_rad: (15 * Math.PI) / 180, flat_m: 5 } as const;
/** Fall that a landing slope is suggested for, m: hardly felt [judgement]. */
const KIND_FALL = 0.3;
/** Least slope of a landing on which the flight falls no harder than it is wanted to: β − asin(√(2gh)/v) [derived]; level at the least. */
const kindSlope = (landing_rad: number, speed_m_s: number): number =>
  Math.max(0, landing_rad - Math.asin(Math.min(1, Math.sqrt(2 * GRAVITY_m_s2 * KIND_FALL) / speed_m_s)));

/** Where the flight goes, how hard it lands, and what gives the speed for it. */
export const flightFigures = (s: Situation, ride: Ride): readonly Figure[] => {
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
    size('run-in-drop', 'reach', from?.ok === true ? from.value.drop_m : null),
    {
      id: 'lands',
      kind: 'size',
      as: 'reach',
      matters: 0.05,
      value:
        band === null
          ? { is: 'unknown', needs }
          : { is: 'band', low: band.all.near_m, likely: band.plain_m, high: band.all.far_m },
    },
    size('launch-lag', 'angle', band?.lag_rad, needs),
    size('rise', 'reach', flight?.rise_m, needs),
    {
      id: 'fall',
      kind: 'size',
      as: 'reach',
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
      'reach',
      plain === null || farther === null ? null : farther.distance_m - plain.distance_m,
      needs,
    ),
    size(
      'drag-takes',
      'reach',
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

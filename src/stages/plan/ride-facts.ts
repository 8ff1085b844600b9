import type { Flight } from '../../reckon/ride/flight.ts';
import type { LandingBand } from '../../reckon/ride/landing-band.ts';
import { type SpeedWindow, speedWindow } from '../../reckon/ride/speed-window.ts';
import { rideVerdicts, type Verdict } from '../../reckon/strength/limits.ts';
import type { RideFacts as Facts } from '../../reckon/strength/ride-facts.ts';
import {
  bandOf,
  groundOf,
  type Launch,
  launchOf,
  leastSpeed,
  plainFlight,
  type SaidLanding,
  saidLanding,
} from '../flight-band.ts';
import { keptByInput } from '../kept-by-input.ts';
import { loadsOf, MACHINES, readingOf, saidSpeed } from '../riding.ts';
import type { Situation } from '../situation.ts';
import { standingStill } from '../standing-still.ts';
import { deckUse } from './strength-deck.ts';

const keptWindow = keptByInput(speedWindow);

/** The ride as far as it was said. */
export type Ride = Readonly<{
  landing: SaidLanding | null;
  launch: Launch | null;
  flight: Flight | null;
  band: LandingBand | null;
  window: SpeedWindow | null;
  /** A landing no speed comes down on, or one shorter than its margins. */
  noWindow: boolean;
  /** At the speed said the rider does not come over the lip, and the least that does, m/s. */
  stalls: boolean;
  least_m_s: number;
}>;

export const rideOf = (s: Situation): Ride => {
  const landing = saidLanding(s);
  const ground = landing === null ? null : groundOf(landing);
  const launch = launchOf(s, ground);
  const flown = launch === null || ground === null ? null : plainFlight(s, launch, ground);
  const sloped = landing !== null && landing.kind !== 'flat ground' && landing.length_m > 0;
  const window = sloped
    ? // Without drag in the air: it takes 2 % of a short flight, and steps of it would cost more than a key press.
      keptWindow({
        radius_m: s.ramp.design.arc.radius_mm / 1000,
        exit_rad: s.ramp.design.arc.exit_rad,
        rolling: MACHINES[s.ramp.design.use].rolling,
        gap_m: groundOf(landing).gap_m ?? 0.01,
        drop_m: landing.drop_m,
        slope_rad: landing.slope_rad,
        landing_m: landing.length_m,
      })
    : null;
  return {
    landing,
    launch,
    flight: flown,
    band: launch === null || ground === null ? null : bandOf(s, launch, ground),
    window: window?.ok === true ? window.value : null,
    noWindow: window !== null && !window.ok,
    stalls: saidSpeed(s) !== null && launch === null,
    least_m_s: leastSpeed(s),
  };
};

/** Everything a limit may be held against. What was not said is left out, and is not judged. */
export const factsOf = (s: Situation, ride: Ride, utilisation?: number): Facts => {
  const { design: d, lip } = s.ramp;
  const speed_m_s = saidSpeed(s);
  const loads = loadsOf(s);
  const { landing, flight, band, window } = ride;
  const anchors = readingOf(s, 'plan/ground', 'anchors');
  const entryAnchors = readingOf(s, 'plan/ground', 'entry-anchors');
  const still = standingStill(s);
  return {
    novice: d.first,
    first: d.first,
    exit_rad: d.arc.exit_rad,
    radius_m: d.arc.radius_mm / 1000,
    straight_m: d.straight / 1000,
    width_mm: d.width,
    drop_m: lip.y_mm / 1000,
    wheelbase_m: MACHINES[d.use].wheelbase_m,
    ...(speed_m_s === null
      ? {}
      : { speed_m_s, speed_cap_m_s: loads?.speed_cap_m_s ?? null, load_factor: loads?.load_factor }),
    ...(landing === null ? {} : { landing: landing.kind }),
    ...(landing?.kind === 'flat ground' && flight !== null ? { apex_m: landing.drop_m + flight.rise_m } : {}),
    ...(band === null ? {} : { fall_m: band.worst_fall_m }),
    ...(window !== null ? { window_m_s: window.width_m_s } : ride.noWindow ? { window_m_s: 0 } : {}),
    ...(anchors === null ? {} : { anchors }),
    ...(entryAnchors === null ? {} : { entryAnchors }),
    ...(still === null
      ? {}
      : {
          anchorable: still.anchors !== null,
          ...(still.anchors === null ? {} : { anchorsWanted: still.anchors.entry + still.anchors.rear }),
        }),
    ...(utilisation === undefined ? {} : { utilisation }),
    deck_utilisation: deckUse(s)?.utilisation,
  };
};

/** Advice that the page of the flight gives in words and numbers, so that it is no finding of its own. */
const ADVICE = new Set(['lip-curved', 'fall-felt', 'guard']);

/** The limits this ride breaks, refusals first. */
export const verdictsOf = (s: Situation, ride: Ride, utilisation?: number): readonly Verdict[] =>
  rideVerdicts(factsOf(s, ride, utilisation)).filter(v => !ADVICE.has(v.code));

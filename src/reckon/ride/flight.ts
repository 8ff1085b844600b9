import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { type Drag, dragPerMetre } from './air.ts';
import { type FlightPath, flightPath } from './flight-path.ts';
import { descent, fallHeight, type Ground, landingOf } from './landing.ts';
import { dragFields, RIDE_LIMITS, withinRideLimits } from './ride-limits.ts';

export type FlightInput = Ground &
  Drag &
  Readonly<{
    /** Along the lip as the rider leaves it. */
    speed_m_s: number;
    /** Above horizontal. */
    exit_rad: number;
  }>;

export type Flight = Readonly<{
  time_s: number;
  /** Ahead of the lip. */
  distance_m: number;
  landing_speed_m_s: number;
  /** Path angle at landing, below horizontal +. */
  landing_rad: number;
  /** Highest point above the lip. */
  rise_m: number;
  /** Equivalent fall height on the ground that is met. It says nothing of a landing short, rotated or off the side. */
  fall_height_m: number;
  /** How far before the knuckle; left out when the gap is cleared. The landing is then at the knuckle's level. */
  short_m?: number;
}>;

/**
 * The flight of a point mass off a lip: no wind, no lift, no rider's own jump. A single landing point is never the
 * truth; see landing-band for the band.
 * Refuses out-of-range for each value past its limit, missing-field for drag without a mass, and no-solution for a speed that never comes over a landing
 * (with the least that does) or a start that is already on it.
 * Formulas: textbook ballistics; with drag x″ = −kVx′, y″ = −g − kVy′ [textbook], stepped to 1e-10.
 */
export const flight = (input: FlightInput): Outcome<Flight> => {
  const { speed_m_s, exit_rad, drop_m, gap_m, slope_rad } = input;
  const checked = withinRideLimits({
    speed_m_s,
    exit_deg: degrees(exit_rad),
    drop_m,
    gap_m,
    slope_deg: slope_rad === undefined ? undefined : degrees(slope_rad),
    ...dragFields(input),
  });
  if (!checked.ok) return checked;
  const path = pathAt(input, speed_m_s);
  const landing = landingOf(path, input);
  if (landing.ends === 'below') return tooSlow(input);

  const { at } = landing;
  if (at.x_m < NO_FLIGHT_m)
    return refuse(
      'no-solution',
      'exit_deg',
      'The lip lies on the landing: there is no flight.',
      'an exit angle above 0°, or a drop of more than 0 m',
    );
  const crest = path.crest(0);
  return good({
    time_s: at.time_s,
    distance_m: at.x_m,
    landing_speed_m_s: Math.hypot(at.forward_m_s, at.up_m_s),
    landing_rad: descent(at),
    // Up a rising slope a rider may land before the path is at its highest.
    rise_m: crest.time_s < at.time_s ? crest.y_m : Math.max(0, at.y_m),
    fall_height_m: fallHeight(at, landing.slope_rad),
    ...(landing.ends === 'short' ? { short_m: landing.short_m } : {}),
  });
};

/** A rider who is down again within this has not flown, m. */
const NO_FLIGHT_m = 1e-9;

const pathAt = (input: FlightInput, speed_m_s: number): FlightPath =>
  flightPath(speed_m_s * Math.cos(input.exit_rad), speed_m_s * Math.sin(input.exit_rad), dragPerMetre(input));

/** Halvings of the range of speeds: to the last bit that is said. */
const HALVINGS = 50;

/** The refusal of a speed that stays under the landing, with the least speed that comes down on it. */
const tooSlow = (input: FlightInput) => {
  const lands = (speed_m_s: number): boolean => landingOf(pathAt(input, speed_m_s), input).ends === 'lands';
  const message = `At ${input.speed_m_s} m/s the path never comes over the landing.`;
  let fast: number = RIDE_LIMITS.speed_m_s.atMost;
  if (!lands(fast))
    return refuse('no-solution', 'exit_deg', message, 'a steeper exit, a lower landing or a shorter gap');
  let slow = input.speed_m_s;
  for (let n = 0; n < HALVINGS; n += 1) {
    const middle = (slow + fast) / 2;
    if (lands(middle)) fast = middle;
    else slow = middle;
  }
  return refuse('no-solution', 'speed_m_s', message, `${Math.ceil(fast * 1000) / 1000} m/s or more`);
};

import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { type Drag, dragPerMetre } from './air.ts';
import { dragFields, RIDE_LIMITS, withinRideLimits } from './ride-limits.ts';

/** An arc that leaves the ground level, as the tyres or wheels go over it, and what a rider loses on it. */
export type Transition = Drag &
  Readonly<{
    radius_m: number;
    /** What the arc turns through; the exit angle above horizontal. */
    exit_rad: number;
    /** Rolling resistance as a share of the normal force; 0 when left out. */
    rolling?: number | undefined;
  }>;

export type ClimbInput = Transition & Readonly<{ /** At the foot of the arc. */ speed_m_s: number }>;

export type Climb = Readonly<{
  exit_speed_m_s: number;
  /** Normal force ÷ weight where the arc begins: the greatest on it. */
  load_factor_start: number;
  /** The same at the lip. */
  load_factor_end: number;
  /** Less at the foot and the rider does not come over the lip. */
  least_speed_m_s: number;
}>;

/**
 * The climb of an arc by a point at the tyres (the rider stretches as the arc tilts him: the lowest exit speed, so the
 * one to clear a gap with; a stiff rider is in stiff-rider).
 * Refuses out-of-range for each value past its limit, missing-field for drag without a mass, and no-solution for a speed that stalls or, past 90°, falls off
 * the arc, with the least that would do.
 * d(v²)/dφ = −2gR sinφ − 2gR·rolling·cosφ − c·v², c = 2·rolling + density·drag area·R/mass, in closed form [derived].
 */
export const climb = (input: ClimbInput): Outcome<Climb> => {
  const { speed_m_s, exit_rad, radius_m } = input;
  const checked = withinRideLimits({
    speed_m_s,
    radius_m,
    climb_deg: degrees(exit_rad),
    rolling: input.rolling,
    ...dragFields(input),
  });
  if (!checked.ok) return checked;

  const least = entrySpeedFor(input, Math.sqrt(leastSquareAtLip(input)));
  const square = squareAtLip(input, speed_m_s * speed_m_s);
  if (least === undefined || square < leastSquareAtLip(input))
    return refuse(
      'no-solution',
      'speed_m_s',
      `At ${speed_m_s} m/s a rider does not come over the lip.`,
      least === undefined ? 'a lower or gentler arc' : `${Math.ceil(least * 1000) / 1000} m/s or more`,
    );
  return good({
    exit_speed_m_s: Math.sqrt(square),
    load_factor_start: loadFactor(speed_m_s * speed_m_s, radius_m, 0),
    load_factor_end: loadFactor(square, radius_m, exit_rad),
    least_speed_m_s: least,
  });
};

/**
 * The speed at the foot of an arc that leaves its lip at a given speed, m/s: the climb read backwards. Undefined when
 * it would be past every limit.
 * @param exit_speed_m_s at the lip, 0 or more
 */
export const entrySpeedFor = (transition: Transition, exit_speed_m_s: number): number | undefined => {
  const atLip = exit_speed_m_s * exit_speed_m_s;
  const square = (atLip + work(transition)) * Math.exp(fading(transition) * transition.exit_rad);
  return square <= RIDE_LIMITS.speed_m_s.atMost ** 2 ? Math.sqrt(square) : undefined;
};

/**
 * Normal force ÷ weight on an arc, cosφ + v²/(gR) [textbook].
 * @param square_m2_s2 speed squared there
 * @param turned_rad what the arc has turned from level
 */
export const loadFactor = (square_m2_s2: number, radius_m: number, turned_rad: number): number =>
  Math.cos(turned_rad) + square_m2_s2 / (GRAVITY_m_s2 * radius_m);

/** At the lip a rider must still move and, past 90°, still be pressed on. */
const leastSquareAtLip = ({ radius_m, exit_rad }: Transition): number =>
  Math.max(0, -GRAVITY_m_s2 * radius_m * Math.cos(exit_rad));

const squareAtLip = (transition: Transition, atFoot: number): number =>
  Math.exp(-fading(transition) * transition.exit_rad) * atFoot - work(transition);

/** Share of v² lost per radian to drag and to the rolling of the centripetal force. */
const fading = (transition: Transition): number =>
  2 * (transition.rolling ?? 0) + 2 * dragPerMetre(transition) * transition.radius_m;

/**
 * Twice the work per mass against weight and its rolling, as v² misses it at the lip. The exponential falls, never
 * grows: with much drag the other way round overflows.
 */
const work = (transition: Transition): number => {
  const { radius_m, exit_rad, rolling = 0 } = transition;
  const c = fading(transition);
  const upTo = (turned: number): number =>
    (c * Math.sin(turned) - Math.cos(turned) + rolling * (c * Math.cos(turned) + Math.sin(turned))) /
    (1 + c * c);
  const square = 2 * GRAVITY_m_s2 * radius_m * (upTo(exit_rad) - Math.exp(-c * exit_rad) * upTo(0));
  // On an arc of next to no turn the difference is rounding, of either sign.
  return Math.max(0, square);
};

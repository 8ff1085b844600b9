import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { type Drag, dragPerMetre } from './air.ts';
import { dragFields, withinRideLimits } from './ride-limits.ts';

export type RunInInput = Drag &
  Readonly<{
    /** Wanted where the flat ends. */
    speed_m_s: number;
    /** Of the run-in, down +. */
    slope_rad: number;
    /** Level ground between the slope and the ramp. */
    flat_m: number;
    /** Rolling resistance as a share of the normal force. */
    rolling: number;
  }>;

export type RunIn = Readonly<{
  drop_m: number;
  slope_length_m: number;
  /** At the foot of the slope, before the flat takes its share. */
  foot_speed_m_s: number;
}>;

/**
 * How high a start a rider needs, rolling from rest down an even slope and over a flat, without pedalling.
 * The wheels' own spin (1 to 2 % more inertia on a bike [memory]) is left out.
 * Refuses out-of-range for each value past its limit, missing-field for drag without a mass, and no-solution for a slope too gentle to roll, or on which drag
 * holds the speed below the one wanted.
 * v² = (a/b)(1 − e^(−bs)), a = 2g(sinα − rolling·cosα), b = density·drag area/mass, read backwards [derived].
 */
export const runIn = (input: RunInInput): Outcome<RunIn> => {
  const { speed_m_s, slope_rad, flat_m, rolling } = input;
  const checked = withinRideLimits({
    speed_m_s,
    run_in_slope_deg: degrees(slope_rad),
    flat_m,
    rolling,
    ...dragFields(input),
  });
  if (!checked.ok) return checked;

  const gain = 2 * GRAVITY_m_s2 * (Math.sin(slope_rad) - rolling * Math.cos(slope_rad));
  if (gain <= 0)
    return refuse(
      'no-solution',
      'slope_deg',
      'On so gentle a slope the wheels do not roll by themselves.',
      `more than ${Math.ceil(degrees(Math.atan(rolling)) * 1000) / 1000}°`,
    );
  const fading = 2 * dragPerMetre(input);
  const onFlat = 2 * GRAVITY_m_s2 * rolling;
  const square = speed_m_s * speed_m_s * Math.exp(fading * flat_m) + onFlat * stretched(flat_m, fading);
  const share = (square / gain) * fading;
  if (!(share < 1)) return slowedTo(gain, fading, onFlat, flat_m);

  // Written as a share of the way without drag: divided by the drag itself it loses its digits as drag goes to none.
  const slope_length_m = (square / gain) * (share === 0 ? 1 : -Math.log1p(-share) / share);
  return good({
    drop_m: slope_length_m * Math.sin(slope_rad),
    slope_length_m,
    foot_speed_m_s: Math.sqrt(square),
  });
};

/** (e^(bL) − 1)/b, which is L without drag. */
const stretched = (flat_m: number, fading: number): number => {
  const share = fading * flat_m;
  return share === 0 ? flat_m : flat_m * (Math.expm1(share) / share);
};

/** The refusal of a speed that drag does not let a rider have, with the one that an endless slope gives. */
const slowedTo = (gain: number, fading: number, onFlat: number, flat_m: number) => {
  const atFoot = gain / fading;
  const left = (atFoot - onFlat * stretched(flat_m, fading)) / Math.exp(fading * flat_m);
  return left > 0
    ? refuse(
        'no-solution',
        'speed_m_s',
        'Drag keeps a rider below this speed, however long the slope.',
        `less than ${Math.floor(Math.sqrt(left) * 1000) / 1000} m/s, or a steeper slope`,
      )
    : refuse(
        'no-solution',
        'flat_m',
        'A rider does not roll across so long a flat, however long the slope.',
        'a shorter flat or a steeper slope',
      );
};

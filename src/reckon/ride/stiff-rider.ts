import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { loadFactor } from './climb.ts';
import { withinRideLimits } from './ride-limits.ts';

export type StiffRiderInput = Readonly<{
  speed_m_s: number;
  radius_m: number;
  exit_rad: number;
  /** Centre of mass above the wheels. */
  body_height_m: number;
  /** Radius of gyration of rider and bike in pitch, about 0.5 m [memory]; 0 leaves the turning out. */
  gyration_m?: number | undefined;
}>;

export type StiffRider = Readonly<{
  exit_speed_m_s: number;
  load_factor_start: number;
  load_factor_end: number;
  /** How fast he turns backwards as he leaves the lip. */
  pitch_rad_s: number;
}>;

/**
 * The climb of a rider who does not move: his centre of mass goes round a smaller arc, R − h. The upper bound of load
 * on the ramp and, without the turning, of exit speed. No losses.
 * Refuses out-of-range for each value past its limit (a body as high as the curve's radius too) and no-solution for a
 * speed that stalls.
 * v just inside the arc is v/√f, f = 1 + k²/(R − h)²: a part of the energy goes into turning [derived].
 */
export const stiffRider = (input: StiffRiderInput): Outcome<StiffRider> => {
  const { speed_m_s, radius_m, exit_rad, body_height_m, gyration_m = 0 } = input;
  const checked = withinRideLimits({ speed_m_s, radius_m, climb_deg: degrees(exit_rad) });
  if (!checked.ok) return checked;
  const path_m = radius_m - body_height_m;
  // Nearer to the centre than this, the load says more of the model than of a rider [judgement].
  if (!(body_height_m >= 0 && path_m >= LEAST_PATH_m))
    return refuse(
      'out-of-range',
      'body_height_m',
      `A body ${body_height_m} m high has no room in a curve of radius ${radius_m} m.`,
      `0 m to ${LEAST_PATH_m} m less than the radius`,
    );
  if (!(gyration_m >= 0 && gyration_m <= 10))
    return refuse('out-of-range', 'gyration_m', `${gyration_m} m is no radius of gyration.`, '0 to 10 m');

  const share = 1 + (gyration_m / path_m) ** 2;
  const climbed = 2 * GRAVITY_m_s2 * path_m * (1 - Math.cos(exit_rad));
  const start = (speed_m_s * speed_m_s) / share;
  const end = start - climbed / share;
  const least = Math.max(0, -GRAVITY_m_s2 * path_m * Math.cos(exit_rad));
  if (end < least)
    return refuse(
      'no-solution',
      'speed_m_s',
      `At ${speed_m_s} m/s a rider does not come over the lip.`,
      `${Math.ceil(Math.sqrt(climbed + least * share) * 1000) / 1000} m/s or more`,
    );
  return good({
    exit_speed_m_s: Math.sqrt(end),
    load_factor_start: loadFactor(start, path_m, 0),
    load_factor_end: loadFactor(end, path_m, exit_rad),
    pitch_rad_s: Math.sqrt(end) / path_m,
  });
};

/** Smallest path of a centre of mass that is reckoned with, m. */
const LEAST_PATH_m = 0.5;

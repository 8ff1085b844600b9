import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { withinRideLimits } from './ride-limits.ts';
import { speedThrough } from './speed-through.ts';

/** Landed past the knuckle to call it cleared with a margin, m [practice]. */
export const PAST_KNUCKLE_m = 0.5;

export type ClearSpeedInput = Readonly<{
  exit_rad: number;
  gap_m: number;
  /** Lip above the knuckle +. */
  drop_m: number;
  /** Of the landing, down +. */
  slope_rad: number;
  /** Centre of mass of rider and bike above the wheels. */
  body_height_m: number;
  wheelbase_m: number;
  /** How far past the knuckle to come down. */
  past_m?: number | undefined;
}>;

export type ClearSpeed = Readonly<{
  /** A point that leaves the lip and meets the landing. */
  point_m_s: number;
  /** The rear wheel of a bike that turns from the lip's angle to the landing's: the one to ride by. */
  rear_wheel_m_s: number;
  /** The middle of its wheelbase: the most cautious. */
  mid_wheelbase_m_s: number;
}>;

/**
 * The exit speed that clears a gap when the bike turns in the air: the centre of mass stands off the wheels, so it has
 * farther to go than they have.
 * Refuses out-of-range for each value past its limit, and no-solution for a landing out of reach.
 * dx = G + h(sinθ + sinφ), dy = −D + h(cosφ − cosθ); the rear wheel adds (w/2)(cosφ − cosθ) and −(w/2)(sinθ + sinφ)
 * [derived].
 */
export const clearSpeed = (input: ClearSpeedInput): Outcome<ClearSpeed> => {
  const { exit_rad, slope_rad, body_height_m: h, wheelbase_m: w, past_m = PAST_KNUCKLE_m } = input;
  const checked = withinRideLimits({
    exit_deg: degrees(exit_rad),
    gap_m: input.gap_m,
    drop_m: input.drop_m,
    slope_deg: degrees(slope_rad),
  });
  if (!checked.ok) return checked;
  for (const [field, value] of Object.entries({ body_height_m: h, wheelbase_m: w, past_m }))
    if (!(value >= 0 && value <= 10))
      return refuse('out-of-range', field, `${value} m is no such length of a rider on wheels.`, '0 to 10 m');

  const x_m = input.gap_m + past_m;
  const y_m = -input.drop_m - past_m * Math.tan(slope_rad);
  const turn = Math.sin(exit_rad) + Math.sin(slope_rad);
  const tip = Math.cos(slope_rad) - Math.cos(exit_rad);
  const at = (dx: number, dy: number): number | undefined => speedThrough(x_m + dx, y_m + dy, exit_rad, 0);
  const point = at(0, 0);
  const mid = at(h * turn, h * tip);
  const rear = at(h * turn + (w / 2) * tip, h * tip - (w / 2) * turn);
  return point === undefined || mid === undefined || rear === undefined
    ? refuse(
        'no-solution',
        'exit_deg',
        'The landing lies above the line of the lip.',
        'a steeper exit, a longer gap or a lower landing',
      )
    : good({ point_m_s: point, rear_wheel_m_s: rear, mid_wheelbase_m_s: mid });
};

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { dragPerMetre } from './air.ts';
import { entrySpeedFor, type Transition } from './climb.ts';
import { dragFields, withinRideLimits } from './ride-limits.ts';
import { speedThrough } from './speed-through.ts';

/** Kept free at either end of the landing, m: half a metre past the knuckle and before its end [practice]. */
export const LANDING_MARGIN_m = 0.5;

/** A window narrower than this, km/h, is no target for a rider who reads his speed to 1 to 2 [judgement]. */
export const LEAST_WINDOW_km_h = 3;

export type SpeedWindowInput = Transition &
  Readonly<{
    /** From the lip ahead to the knuckle. */
    gap_m: number;
    /** Lip above the knuckle +. */
    drop_m: number;
    /** Of the landing, down +. */
    slope_rad: number;
    /** Of the landing behind its knuckle, measured level. */
    landing_m: number;
    /** Kept free at either end. */
    margin_m?: number | undefined;
  }>;

export type Speeds = Readonly<{ least_m_s: number; most_m_s: number }>;

export type SpeedWindow = Readonly<{
  /** Along the lip. */
  exit: Speeds;
  /** At the foot of the ramp. */
  entry: Speeds;
  /** At the foot, just over the knuckle with no margin. */
  bare_entry_m_s: number;
  width_m_s: number;
  /** Narrower than a rider can hit. */
  narrow: boolean;
}>;

/**
 * The entry speeds that come down inside a landing, by plain ballistics; landing-band says how far off that may be,
 * clear-speed what the turning of the bike asks beyond it.
 * Refuses out-of-range for each value past its limit, and no-solution for a landing no speed comes down on, or one
 * shorter than its margins.
 */
export const speedWindow = (input: SpeedWindowInput): Outcome<SpeedWindow> => {
  const { gap_m, drop_m, slope_rad, exit_rad, landing_m, margin_m = LANDING_MARGIN_m } = input;
  const checked = withinRideLimits({
    radius_m: input.radius_m,
    exit_deg: degrees(exit_rad),
    gap_m,
    drop_m,
    slope_deg: degrees(slope_rad),
    rolling: input.rolling,
    ...dragFields(input),
  });
  if (!checked.ok) return checked;
  if (!(margin_m >= 0))
    return refuse('out-of-range', 'margin_m', `A margin of ${margin_m} m is none.`, '0 m or more');
  if (!(landing_m > 2 * margin_m && landing_m <= 200))
    return refuse(
      'out-of-range',
      'landing_m',
      `A landing ${landing_m} m long leaves nothing between its margins.`,
      `more than ${2 * margin_m} m, at most 200 m`,
    );

  const drag = dragPerMetre(input);
  const through = (past_m: number): number | undefined =>
    speedThrough(gap_m + past_m, -drop_m - past_m * Math.tan(slope_rad), exit_rad, drag);
  const speeds = [0, margin_m, landing_m - margin_m].map(past_m => {
    const exit = through(past_m);
    const entry = exit === undefined ? undefined : entrySpeedFor(input, exit);
    return exit === undefined || entry === undefined ? undefined : { exit, entry };
  });
  const [bare, near, far] = speeds;
  if (bare === undefined || near === undefined || far === undefined || !(near.exit < far.exit))
    return refuse(
      'no-solution',
      'gap_m',
      'No speed comes down inside this landing.',
      'a shorter gap, a lower or longer landing, or a steeper exit',
    );
  const width_m_s = far.entry - near.entry;
  return good({
    exit: { least_m_s: near.exit, most_m_s: far.exit },
    entry: { least_m_s: near.entry, most_m_s: far.entry },
    bare_entry_m_s: bare.entry,
    width_m_s,
    narrow: width_m_s * 3.6 < LEAST_WINDOW_km_h,
  });
};

import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { withinRideLimits } from './ride-limits.ts';

export type Onset = Readonly<{
  /** Weight that is added, as a share of weight. */
  step: number;
  time_s: number;
  /** Weights per second. */
  rate_1_s: number;
}>;

/**
 * How suddenly the curve takes hold where flat ground goes straight into an arc: all of v²/R while both wheels roll
 * onto it [derived].
 * Refuses out-of-range for a speed, radius or wheelbase that is none.
 * @param speed_m_s at the foot
 * @param radius_m of the line the tyres follow
 * @param wheelbase_m between the axles
 */
export const arcOnset = (speed_m_s: number, radius_m: number, wheelbase_m: number): Outcome<Onset> => {
  const checked = withinRideLimits({ speed_m_s, radius_m });
  if (!checked.ok) return checked;
  if (!(wheelbase_m >= 0.01 && wheelbase_m <= 10))
    return refuse('out-of-range', 'wheelbase_m', `${wheelbase_m} m is no wheelbase.`, '0.01 to 10 m');
  const step = (speed_m_s * speed_m_s) / (radius_m * GRAVITY_m_s2);
  const time_s = wheelbase_m / speed_m_s;
  return good({ step, time_s, rate_1_s: step / time_s });
};

export type LeadIn = Readonly<{
  /** Of the arc behind the lead-in. */
  radius_m: number;
  /** From the start of the lead-in to the lip, level. */
  base_m: number;
  /** The same along the curve. */
  path_m: number;
  /** What the lead-in itself turns. */
  turn_rad: number;
  /** Curvature gained per metre of lead-in, 1/m²; × speed³ it is the jerk, the same all along. 0 without a lead-in. */
  sharpening_1_m2: number;
}>;

/** Simpson's rule over this many strips: far below a hundredth of a millimetre for any turn up to 90°. */
const STRIPS = 200;

/** A curve whose turn grows with the square of the way: its end from its start, per metre of its length [textbook]. */
const spiralEnd = (turn_rad: number): readonly [along: number, up: number] => {
  const sum = (of: (angle: number) => number): number => {
    let total = of(0) + of(turn_rad);
    for (let n = 1; n < STRIPS; n += 1) total += (n % 2 === 1 ? 4 : 2) * of(turn_rad * (n / STRIPS) ** 2);
    return total / (3 * STRIPS);
  };
  return [sum(Math.cos), sum(Math.sin)];
};

/** Halvings of the range of radii. */
const HALVINGS = 80;

/**
 * An arc with an easy start: a lead-in whose curvature grows evenly from nothing, then an arc to the lip, of the same
 * height and exit angle as the plain arc it stands in for. A lead-in over the whole turn is the pure spiral, whose
 * tightest place is the lip: not wanted there.
 * Refuses out-of-range for a height, exit angle or lead-in that is none, and no-solution for a lead-in longer than the
 * pure spiral.
 * @param height_m of the lip
 * @param exit_rad above horizontal, up to 90°
 * @param lead_in_m length of the lead-in along the curve
 */
export const leadIn = (height_m: number, exit_rad: number, lead_in_m: number): Outcome<LeadIn> => {
  if (!(height_m > 0 && height_m <= 100))
    return refuse(
      'out-of-range',
      'height_m',
      `${height_m} m is no height of a lip.`,
      'more than 0, at most 100 m',
    );
  if (!(exit_rad > 0 && exit_rad <= Math.PI / 2))
    return refuse('out-of-range', 'exit_deg', 'There is no such exit angle.', 'more than 0°, at most 90°');
  const spiral_m = height_m / spiralEnd(exit_rad)[1];
  if (!(lead_in_m >= 0 && lead_in_m <= spiral_m))
    return refuse(
      'no-solution',
      'lead_in_m',
      `A lead-in of ${lead_in_m} m does not fit under this lip.`,
      `0 to ${Math.floor(spiral_m * 1000) / 1000} m`,
    );

  const shape = (radius_m: number): Readonly<{ height: number; base: number; turn: number }> => {
    const turn = lead_in_m / (2 * radius_m);
    const [along, up] = spiralEnd(turn);
    return {
      height: lead_in_m * up + radius_m * (Math.cos(turn) - Math.cos(exit_rad)),
      base: lead_in_m * along + radius_m * (Math.sin(exit_rad) - Math.sin(turn)),
      turn,
    };
  };
  // The plain arc is the largest radius, the pure spiral's end the smallest.
  let small = lead_in_m / (2 * exit_rad);
  let large = height_m / (2 * Math.sin(exit_rad / 2) ** 2);
  for (let n = 0; n < HALVINGS && small > 0; n += 1) {
    const middle = (small + large) / 2;
    if (shape(middle).height < height_m) small = middle;
    else large = middle;
  }
  const { base, turn } = shape(large);
  return good({
    radius_m: large,
    base_m: base,
    path_m: lead_in_m + large * (exit_rad - turn),
    turn_rad: turn,
    sharpening_1_m2: lead_in_m > 0 ? 1 / (large * lead_in_m) : 0,
  });
};

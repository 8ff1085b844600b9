import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** A point of a landing, from the lip ahead and up, and the slope there, up + (a landing's is mostly −). */
export type SurfacePoint = Readonly<{ x_m: number; y_m: number; slope_rad: number }>;

export type LandingSurfaceInput = Readonly<{
  exit_rad: number;
  /** Equivalent fall height wanted all along. */
  fall_height_m: number;
  /** Far end of the landing, from the lip: ahead, and up (− below). */
  end: Readonly<{ x_m: number; y_m: number }>;
  /** Where its near end is to be, ahead of the lip. */
  near_m: number;
}>;

/** Steps of the integration; halving them moves nothing by 1e-8 m on landings of some metres. */
const STEPS = 400;

/**
 * A landing on which every speed comes down with the same equivalent fall height, for a rider who adds nothing at the
 * lip. Worked from its far end towards the lip: that way the family of such surfaces runs together, the other way apart.
 * dy/dx = tan(γ + asin√(2gh/v²)), γ and v the path's angle and speed at the point; form Hubbard, J. ASTM Int. 2009
 * [memory], derived again.
 * Refuses out-of-range for an angle, height or place that is none, no-solution where the wanted height is more than the
 * fall there (nothing can be that hard) or no path passes.
 */
export const landingSurface = (input: LandingSurfaceInput): Outcome<readonly SurfacePoint[]> => {
  const { exit_rad, fall_height_m, end, near_m } = input;
  if (!(exit_rad > 0 && exit_rad < Math.PI / 2))
    return refuse('out-of-range', 'exit_deg', 'There is no such exit angle.', 'more than 0°, less than 90°');
  if (!(fall_height_m > 0 && fall_height_m <= 10))
    return refuse(
      'out-of-range',
      'fall_height_m',
      `${fall_height_m} m is no such height.`,
      'more than 0, at most 10 m',
    );
  if (!(end.x_m > 0 && end.x_m <= 200 && Math.abs(end.y_m) <= 100))
    return refuse(
      'out-of-range',
      'end',
      'A landing does not end so far away.',
      'up to 200 m ahead, 100 m up or down',
    );
  if (!(near_m > 0 && near_m < end.x_m))
    return refuse(
      'out-of-range',
      'near_m',
      `${near_m} m is not before the landing's end.`,
      `more than 0, less than ${end.x_m} m`,
    );

  const slopeAt = (x_m: number, y_m: number): number => {
    const under = x_m * Math.tan(exit_rad) - y_m;
    const square =
      (GRAVITY_m_s2 * x_m * x_m) / (2 * Math.cos(exit_rad) ** 2 * under) - 2 * GRAVITY_m_s2 * y_m;
    const share = (2 * GRAVITY_m_s2 * fall_height_m) / square;
    if (!(under > 0 && share > 0 && share < 1)) return Number.NaN;
    return Math.atan((2 * y_m) / x_m - Math.tan(exit_rad)) + Math.asin(Math.sqrt(share));
  };
  const rise = (x_m: number, y_m: number): number => Math.tan(slopeAt(x_m, y_m));

  const step = (near_m - end.x_m) / STEPS;
  const points: SurfacePoint[] = [];
  let y_m = end.y_m;
  for (let n = 0; n <= STEPS; n += 1) {
    const x_m = end.x_m + step * n;
    const slope_rad = slopeAt(x_m, y_m);
    if (!Number.isFinite(slope_rad))
      return refuse(
        'no-solution',
        'fall_height_m',
        `No landing at ${Math.round(x_m * 100) / 100} m is met with a fall of ${fall_height_m} m.`,
        'a smaller fall height, or a near end farther from the lip',
      );
    points.push({ x_m, y_m, slope_rad });
    const k1 = rise(x_m, y_m);
    const k2 = rise(x_m + step / 2, y_m + (step / 2) * k1);
    const k3 = rise(x_m + step / 2, y_m + (step / 2) * k2);
    const k4 = rise(x_m + step, y_m + step * k3);
    y_m += (step / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
  }
  return good(points);
};

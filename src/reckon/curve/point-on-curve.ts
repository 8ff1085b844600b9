import { asinGuarded } from '../numeric/guarded-trig.ts';
import { tangentOrdinate } from './layout.ts';

/**
 * A line that starts level at the origin, rises round a centre above it, and may go on straight to its lip.
 * `radius_mm` is this line's own radius, `exit_rad` the angle at the end of the arc, `straight_mm` the last part.
 */
export type Curve = Readonly<{ radius_mm: number; exit_rad: number; straight_mm?: number }>;

export type CurvePoint = Readonly<{ x_mm: number; y_mm: number; slope_rad: number }>;

/** The length of the whole line, arc and straight part. */
export const curveLength = ({ radius_mm, exit_rad, straight_mm = 0 }: Curve): number =>
  radius_mm * exit_rad + straight_mm;

/**
 * The point `along_mm` from the start, with the slope there. Past either end the line goes on straight in the
 * direction it has: rails are cut longer than their line. Hold `along_mm` against `curveLength` to stay on it.
 */
export const pointAt = (curve: Curve, along_mm: number): CurvePoint => {
  const { radius_mm, exit_rad } = curve;
  if (along_mm <= 0) return { x_mm: along_mm, y_mm: 0, slope_rad: 0 };
  const slope_rad = Math.min(along_mm / radius_mm, exit_rad);
  const past_mm = Math.max(0, along_mm - radius_mm * exit_rad);
  return {
    x_mm: radius_mm * Math.sin(slope_rad) + past_mm * Math.cos(slope_rad),
    y_mm: 2 * radius_mm * Math.sin(slope_rad / 2) ** 2 + past_mm * Math.sin(slope_rad),
    slope_rad,
  };
};

/**
 * How far along the line its first point over `x_mm` lies; undefined where the line has none, which only happens
 * beyond one radius on a line that turns to 90° or more. Ends go on straight as in `pointAt`.
 */
export const alongAtX = ({ radius_mm, exit_rad }: Curve, x_mm: number): number | undefined => {
  if (x_mm <= 0) return x_mm;
  const run_mm = radius_mm * Math.sin(Math.min(exit_rad, Math.PI / 2));
  if (x_mm <= run_mm) return radius_mm * asinGuarded(x_mm / radius_mm);
  if (exit_rad >= Math.PI / 2) return undefined;
  return radius_mm * exit_rad + (x_mm - run_mm) / Math.cos(exit_rad);
};

/** The height of the line's first point over `x_mm`; undefined where `alongAtX` is. */
export const yAtX = (curve: Curve, x_mm: number): number | undefined => {
  const { radius_mm, exit_rad } = curve;
  if (x_mm <= 0) return 0;
  const run_mm = radius_mm * Math.sin(Math.min(exit_rad, Math.PI / 2));
  if (x_mm <= run_mm) return tangentOrdinate(radius_mm, x_mm);
  if (exit_rad >= Math.PI / 2) return undefined;
  return tangentOrdinate(radius_mm, run_mm) + (x_mm - run_mm) * Math.tan(exit_rad);
};

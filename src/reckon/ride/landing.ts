import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import type { FlightPath, Moment } from './flight-path.ts';

/**
 * Where a rider comes down, from the lip. Level ground lies `drop_m` below the lip (− above it). With a gap, the ground
 * begins behind it at its knuckle, `drop_m` below the lip, and falls at the slope from there. A slope without a gap
 * is the ground at the landing point, `drop_m` below the lip.
 */
export type Ground = Readonly<{
  drop_m: number;
  gap_m?: number | undefined;
  /** Falling forward +, rad. */
  slope_rad?: number | undefined;
}>;

export type Landing =
  | Readonly<{ ends: 'lands'; at: Moment; slope_rad: number }>
  /** Down to the level of the knuckle before the gap ends, by `short_m`. */
  | Readonly<{ ends: 'short'; at: Moment; slope_rad: 0; short_m: number }>
  /** Never up to the landing, or still under it where it begins. */
  | Readonly<{ ends: 'below' }>;

/** A path that meets the knuckle itself counts as over it; its height is known no better than this, m. */
const TOUCH_m = 1e-9;

/** Where a path meets the ground. */
export const landingOf = (path: FlightPath, { drop_m, gap_m, slope_rad = 0 }: Ground): Landing => {
  const level = path.touchDown({ x_m: 0, y_m: -drop_m, slope_rad: 0 });
  if (gap_m === undefined)
    return level === undefined ? { ends: 'below' } : { ends: 'lands', at: level, slope_rad };

  const height = path.heightAt(gap_m);
  if (height !== undefined && height >= -drop_m - TOUCH_m) {
    const at = path.touchDown({ x_m: gap_m, y_m: -drop_m, slope_rad }) ?? level;
    if (at !== undefined && at.x_m >= gap_m - TOUCH_m) return { ends: 'lands', at, slope_rad };
  }
  return level !== undefined && level.x_m < gap_m
    ? { ends: 'short', at: level, slope_rad: 0, short_m: gap_m - level.x_m }
    : { ends: 'below' };
};

/** Path angle at a moment, below horizontal +, rad. */
export const descent = (at: Moment): number => Math.atan2(-at.up_m_s, at.forward_m_s);

/**
 * Equivalent fall height, m: the height of a straight drop that meets level ground as hard as this landing meets its
 * slope, (speed across the slope)² ÷ 2g. Hubbard, J. ASTM Int. 2009 (idea found, form memory). On level ground it
 * is the height of the crest above the landing [derived].
 */
export const fallHeight = (at: Moment, slope_rad: number): number => {
  const across_m_s = at.up_m_s * Math.cos(slope_rad) + at.forward_m_s * Math.sin(slope_rad);
  return (across_m_s * across_m_s) / (2 * GRAVITY_m_s2);
};

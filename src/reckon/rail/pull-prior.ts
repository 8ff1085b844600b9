/**
 * What is believed of the weld pull before anything of one's own is measured, and the three ways of setting a rail so that
 * the pull brings it to its line.
 *
 * No published test of slit thin tube was found: the range is a factor eight from end to end, so a test piece comes before
 * the first rail. [derived from shrinkage formulas, found and memory: 0.2 A/t + 0.05 d (Spraragen and Ettinger
 * 1950), 0.1 A/t (Blodgett), 0.5 αq/(ρc t); they differ by two]
 */

/** Median turn of one slit of 40 mm tube, rad, at a lever of 38.5 mm: shrinkage 0.25 mm on a ring factor of 0.7 [derived]. */
export const PULL_MEDIAN = 0.0045;
export const PULL_MEDIAN_LEVER = 38.5;
/** Its spread, log-sd [derived]. */
export const PULL_SPREAD = 0.6;

export type PullPrior = Readonly<{ pull_rad: number; spread: number; low_rad: number; high_rad: number }>;

/**
 * The pull of one slit: ln φ ~ N(ln(4.5 mrad · 38.5/h), 0.6²); low and high hold 95 %. It falls with the lever: φ = κS/h.
 *
 * @param lever_mm from the middle of the back wall to the slit face: depth less half the wall, mm
 */
export function pullPrior(lever_mm: number): PullPrior {
  const pull_rad = (PULL_MEDIAN * PULL_MEDIAN_LEVER) / lever_mm;
  const apart = Math.exp(1.959964 * PULL_SPREAD);
  return { pull_rad, spread: PULL_SPREAD, low_rad: pull_rad / apart, high_rad: pull_rad * apart };
}

/**
 * Way one: fewer slits. The least whole number that closes to no less than the gap and is brought home by the pull,
 * ⌈Θ h / (k − g + h φ)⌉. [derived]
 *
 * @param bend_rad bend the slits make in all, rad
 * @param lever_mm lever, mm
 * @param kerf_mm kerf as it closes, mm
 * @param gap_mm least gap left at the face, mm
 * @param pull_rad turn of one slit as its weld cools, rad
 */
export function slitsWithPull(
  bend_rad: number,
  lever_mm: number,
  kerf_mm: number,
  gap_mm: number,
  pull_rad: number,
): number {
  const count = (bend_rad * lever_mm) / (kerf_mm - gap_mm + lever_mm * pull_rad);
  return Math.max(1, Math.ceil(count - 1e-9));
}

/**
 * Way two: close and tack to a larger radius, 1/R₁ = 1/R − φ/p. Radius and pitch are of one line; taken on the hinge line, which
 * keeps its length, the answer is exact. [derived] Null when the pull alone bends more than the line.
 */
export function tackRadius(radius_mm: number, pitch_mm: number, pull_rad: number): number | null {
  const curve = 1 / radius_mm - pull_rad / pitch_mm;
  return curve > 0 ? 1 / curve : null;
}

/** Way three: leave a gap g = h φ at every face, mm, for the weld to draw shut. [derived] */
export const gapForPull = (lever_mm: number, pull_rad: number): number => lever_mm * pull_rad;

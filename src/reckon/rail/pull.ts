/** How far one slit turns as its weld cools, learned from what one rail did. */
export type PullBelief = Readonly<{
  /** Median turn of one slit, in the unit of what was given (rad or degrees). */
  pull: number;
  /** Spread as the sd of its natural log. */
  spread: number;
  /** Where the next rail's pull lies with 95 %. */
  next_low: number;
  next_high: number;
}>;

/** Scatter from rail to rail, log-sd, same welder and settings [practice]. */
export const RAIL_SPREAD = 0.15;

const TWO_SIDED_95 = 1.959964;

/**
 * Log-normal update of the pull by one measured rail: v = τ² + (σ/φ̂)², w = s₀²/(s₀² + v), ln φ₁ = w ln φ̂ + (1 − w) ln φ₀,
 * s₁² = (1/s₀² + 1/v)⁻¹; the next rail has spread √(s₁² + τ²). [derived]
 *
 * @param prior median turn of one slit believed before, > 0
 * @param prior_spread its log-sd, > 0
 * @param measured turn of one slit as measured, > 0, same unit
 * @param measured_sd sd of that measurement, ≥ 0
 * @param rail_spread scatter from rail to rail, log-sd, ≥ 0
 */
export function updatePull(
  prior: number,
  prior_spread: number,
  measured: number,
  measured_sd: number,
  rail_spread: number = RAIL_SPREAD,
): PullBelief {
  const before = prior_spread ** 2;
  const seen = rail_spread ** 2 + (measured_sd / measured) ** 2;
  const weight = before + seen > 0 ? before / (before + seen) : 0.5;
  const pull = Math.exp(weight * Math.log(measured) + (1 - weight) * Math.log(prior));
  const spread = 1 / Math.sqrt(1 / before + 1 / seen);
  const next = TWO_SIDED_95 * Math.hypot(spread, rail_spread);
  return { pull, spread, next_low: pull * Math.exp(-next), next_high: pull * Math.exp(next) };
}

/**
 * How much the rise of an arc of fixed length grows for each radian its bend grows, mm/rad:
 * s [sin(Θ/2)/(2Θ) − (1 − cos(Θ/2))/Θ²]. The rule s/8 is 4 % off at 45°. [derived]
 *
 * @param arc_mm length along the arc
 * @param bend_rad bend of the arc, > 0
 */
export const risePerBend = (arc_mm: number, bend_rad: number): number =>
  arc_mm * (Math.sin(bend_rad / 2) / (2 * bend_rad) - (2 * Math.sin(bend_rad / 4) ** 2) / bend_rad ** 2);

/** Pull of one slit from what the rise of the whole rail gained, rad. */
export const pullFromRise = (gained_mm: number, arc_mm: number, bend_rad: number, welded: number): number =>
  gained_mm / risePerBend(arc_mm, bend_rad) / welded;

import type { RailName } from './design.ts';
import type { Measured, Pull } from './measured.ts';
import type { Design } from './settle.ts';

/**
 * Prior of the bend one slit's weld adds as it cools: 4.5 mrad at a lever of 38.5 mm, log spread 0.6, inversely as the lever
 * (ring model, median shrinkage 0.25 mm; derived, no published test of slit-and-weld square tube is known).
 */
const PRIOR = { rad: 0.0045, lever_mm: 38.5, spread: 0.6 } as const;
/** Scatter between two rails welded by the same hand, log (common practice). */
export const RAIL_SPREAD = 0.15;
/** How far a test piece's reading is trusted, as a log spread: three slits, 0.1° gauge. */
const TEST_SPREAD = 0.2;

const update = (
  prior: { rad: number; spread: number },
  seen_rad: number,
  spread: number,
): { rad: number; spread: number } => {
  const v = RAIL_SPREAD ** 2 + spread ** 2;
  const w = prior.spread ** 2 / (prior.spread ** 2 + v);
  return {
    rad: Math.exp(w * Math.log(seen_rad) + (1 - w) * Math.log(prior.rad)),
    spread: 1 / Math.sqrt(1 / prior.spread ** 2 + 1 / v),
  };
};

/** The pull believed for a rail: the prior, then the test piece, then every other rail that was welded and read cold. */
export const believedPull = (d: Design, m: Measured, rail: RailName): Pull => {
  const lever = d.tube.depth_mm - d.tube.wall_mm / 2;
  let belief: { rad: number; spread: number } = {
    rad: (PRIOR.rad * PRIOR.lever_mm) / lever,
    spread: PRIOR.spread,
  };
  let from: Pull['from'] = 'prior';
  if (m.testPull_rad !== null && m.testPull_rad > 0) {
    belief = update(belief, m.testPull_rad, TEST_SPREAD);
    from = 'test piece';
  }
  for (const [other, rad] of m.weldedPull) {
    if (other === rail || rad <= 0) continue;
    belief = update(belief, rad, 0.05);
    from = 'welded rail';
  }
  return { ...belief, from };
};

import type { RailName } from '../../ramp/design.ts';
import { tubeSection } from '../../reckon/steel/section.ts';
import type { Situation } from '../situation.ts';
import { uprightsOf } from './side.ts';

/**
 * Bend that short welds off the neutral axis give: θ = 0.04·A·d·ℓ/I, the local form of the bow 0.005·A·d·L²/I
 * (Blodgett, Design of Welded Structures, 7.7 [memory]; local form derived).
 */
const BLODGETT = 0.04;
/** Least leg of a fillet on walls up to 6 mm: AISC 360 J2.4 [found]. */
export const LEAST_LEG = 3;
/** A novice's bead stands so much fuller than its leg says (common practice). */
const CONVEX = 1.15;
/** Welds move a frame by half as much to half as much again of what the rule says (the texts differ; practice). */
const SCATTER = 0.5;

/** Bend one welded upright takes out of its rail, rad: two beads of its depth along the back wall, half the rail's depth off its axis. */
export const openPerUpright = (s: Situation): number => {
  const { tube, post, standard } = s.ramp.design;
  const section = tubeSection({
    shape: 'rect',
    depth_mm: tube.depth_mm,
    width_mm: tube.width_mm,
    wall_mm: tube.wall_mm,
    rule: standard === 'AISC' ? 'AISC' : 'EN10219',
  });
  if (!section.ok) return 0;
  const leg = Math.max(LEAST_LEG, post.wall_mm);
  const bead_mm2 = ((leg * leg) / 2) * CONVEX;
  return (BLODGETT * bead_mm2 * (tube.depth_mm / 2) * (2 * post.depth_mm)) / section.value.inertia_mm4;
};

/** How much all uprights of a side open its rail: the rise at mid-length lost, mm, with its range. Spread evenly it is N·θ·L/8. */
export const openedRise = (s: Situation, rail: RailName): { low: number; likely: number; high: number } => {
  const along = s.ramp.plans.get(rail)?.toLip_mm ?? 0;
  const likely = (uprightsOf(s, rail).length * openPerUpright(s) * along) / 8;
  return { low: likely * (1 - SCATTER), likely, high: likely * (1 + SCATTER) };
};

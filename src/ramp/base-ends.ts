import { faceOffset, slopeAtHeight, spotAtSlope } from './curve.ts';
import { curveOf, type RailPlan } from './rail-plan.ts';
import type { RailShape } from './rail-shape.ts';
import type { Design } from './settle.ts';

/** Where the base rail's top meets the rail's bottom face: the base rail begins there, cut square. */
export const baseStartX = (d: Design): number => {
  const c = curveOf(d);
  const o = faceOffset(c, 'rail bottom face');
  return spotAtSlope(c, o, slopeAtHeight(c, o, d.tube.depth_mm)).x;
};

/** Where the base rail ends: under the lip mark, so that the rear foot stands there whatever flat the lip upright stands on. */
export const baseRearX = (d: Design, plan: RailPlan, base: RailShape): number => {
  const half = d.post.depth_mm / 2;
  return base.bottomAt(plan.toLip_mm - half / Math.cos(d.arc.exit_rad)).x + half;
};

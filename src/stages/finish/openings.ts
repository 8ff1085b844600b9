import { baseStartX } from '../../ramp/members.ts';
import type { Situation } from '../situation.ts';

/** Gaps that catch a finger and gaps that catch a head, mm: CPSC handbook, 3.5 and 9 in for heads [memory]; fingers [practice]. */
export const FINGER = { from_mm: 8, to_mm: 25 } as const;
export const HEAD = { from_mm: 89, to_mm: 230 } as const;

const HALVINGS = 24;

/** Where along the ground the opening between base rail and curved rail is so high, mm from the rail's entry end; null where it never is. */
const openingAt = (s: Situation, high_mm: number): number | null => {
  const rail = s.ramp.rails[0] ?? '';
  const plan = s.ramp.plans.get(rail);
  const shape = s.ramp.shapes.get(rail);
  if (plan === undefined || shape === undefined) return null;
  const base = s.ramp.design.tube.depth_mm;
  const high = (along: number): number => shape.bottomAt(along).y - base;
  if (high(plan.toLip_mm) < high_mm) return null;
  let [low, top] = [0, plan.toLip_mm];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + top) / 2;
    if (high(middle) < high_mm) low = middle;
    else top = middle;
  }
  return Math.max(shape.bottomAt(top).x, baseStartX(s.ramp.design)) - s.ramp.entry.length_mm;
};

/**
 * The stretch of each side that is closed with a panel, mm along the ground from the rail's entry end: from where a finger goes in to
 * where a head comes out again. A diagonal makes corners that catch a head all the way to the lip.
 */
export const sideToClose = (s: Situation): { from_mm: number; to_mm: number } => {
  const lip = s.ramp.lip.x_mm - s.ramp.entry.length_mm;
  const braced = s.ramp.members.some(m => m.kind === 'diagonal');
  return {
    from_mm: openingAt(s, FINGER.from_mm) ?? 0,
    to_mm: braced ? lip : (openingAt(s, HEAD.to_mm) ?? lip),
  };
};

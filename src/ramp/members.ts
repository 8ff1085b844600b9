import { crossMembers } from './cross-members.ts';
import type { Member } from './member.ts';
import { plates } from './plates.ts';
import type { RailPlan } from './rail-plan.ts';
import type { RailShape } from './rail-shape.ts';
import type { Design } from './settle.ts';
import { sideMembers } from './side-members.ts';

export { baseStartX } from './base-ends.ts';
export { entryLength } from './entry.ts';
export { CLEAR_OF_SLIT, type Member, type MemberKind, sectionName } from './member.ts';
export { clearWidth } from './rail-count.ts';
export { UPRIGHT_SPACING } from './settle.ts';

/** Every steel piece the design needs, each rail computed from its own shape (as drawn, or as measured). */
export const membersOf = (
  d: Design,
  plans: readonly RailPlan[],
  shapeOf: (plan: RailPlan) => RailShape,
  /** What the base rail under a rail is cut to: a rail only tacked moves no base rail. */
  baseOf: (plan: RailPlan) => RailShape = shapeOf,
): readonly Member[] => {
  const rails = plans.map(p => p.rail);
  const members = plans.flatMap(p => sideMembers(d, p, shapeOf(p), baseOf(p)));
  const first = plans[0];
  if (first !== undefined) members.push(...crossMembers(d, first, shapeOf(first), rails));
  return [...members, ...plates(d, rails)];
};

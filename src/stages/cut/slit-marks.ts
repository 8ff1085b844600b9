import { asShown } from '../../quantity/as-shown.ts';
import type { RailName } from '../../ramp/design.ts';
import type { RailPlan, SlitSpot } from '../../ramp/rail-plan.ts';
import type { Situation } from '../situation.ts';
import { stopLine } from './hinge.ts';

/** Which hand of the ramp a rail is, as seen by who rides up it. */
export type Hand = 'LEFT' | 'MIDDLE' | 'RIGHT';

/** The first rail lies left, the last one right: rails are handed by their seam and by what is fixed to their inner sides. */
export const handOf = (rails: readonly RailName[], rail: RailName): Hand =>
  rail === rails[0] ? 'LEFT' : rail === rails.at(-1) ? 'RIGHT' : 'MIDDLE';

/** The marks of a rail's slits as they go on the steel: what stands here adds up as a page shows it. All in mm, along the back wall. */
export type SlitMarks = Readonly<{
  rail: RailName;
  hand: Hand;
  slits: readonly SlitSpot[];
  /** Up from the back of the tube: what lies below it stays uncut. */
  stop_mm: number;
  /** Down from the slit face to the stop line. */
  down_mm: number;
  firstToLast_mm: number;
  lastToLip_mm: number;
  lipToEnd_mm: number;
  /** The blank, end to end: as cut, once it is. */
  blank_mm: number;
}>;

/** Back-wall length of a rail's blank: as cut, once it is. */
export const blankLength = (s: Pick<Situation, 'build'>, plan: RailPlan): number =>
  s.build.pieces.filter(p => p.serves === `curved rail@${plan.rail}` && p.fate !== 'spoiled').at(-1)
    ?.length_mm ?? plan.cut_mm;

/** From one mark to another as a tape reads it between the marks that are written, so that a check total closes. */
export const betweenMarks = (s: Pick<Situation, 'build'>, from_mm: number, to_mm: number): number =>
  asShown(to_mm, 'slit', s.build.system) - asShown(from_mm, 'slit', s.build.system);

/** The strip of one rail's marks with its check; null for a rail without slits. */
export const slitMarks = (s: Pick<Situation, 'build' | 'ramp'>, rail: RailName): SlitMarks | null => {
  const plan = s.ramp.plans.get(rail);
  const first = plan?.slits[0];
  const last = plan?.slits.at(-1);
  if (plan === undefined || first === undefined || last === undefined) return null;
  const { system } = s.build;
  const blank = asShown(blankLength(s, plan), 'length', system);
  const stop = asShown(stopLine(plan.tube), 'length', system);
  return {
    rail,
    hand: handOf(s.ramp.rails, rail),
    slits: plan.slits,
    stop_mm: stop,
    down_mm: asShown(plan.tube.depth_mm, 'length', system) - stop,
    firstToLast_mm: betweenMarks(s, first.at_mm, last.at_mm),
    lastToLip_mm: betweenMarks(s, last.at_mm, plan.toLip_mm),
    lipToEnd_mm: blank - asShown(plan.toLip_mm, 'slit', system),
    blank_mm: blank,
  };
};

import type { Survey } from '../../build/fold.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import type { Situation } from '../situation.ts';
import { halvesOf, pulledSlits, SIDES_SHARE } from '../weld-order.ts';

/** Slits of a rail ticked in some steps before a survey was opened. Items that are no slit (a pause, a look) do not count. */
const tickedSlits = (s: Situation, survey: Survey, steps: readonly string[]): ReadonlySet<number> => {
  const keys = steps.map(step => `weld/${step}@${survey.rail}#`);
  const slits = new Set<number>();
  for (const e of s.build.live) {
    if (e.kind !== 'step-ticked' || e.n > survey.n || !keys.some(k => e.step.startsWith(k))) continue;
    const number = /#(\d+)$/.exec(e.step)?.[1];
    if (number !== undefined) slits.add(Number(number));
  }
  return slits;
};

/**
 * Slits whose sides were welded when a survey was opened: those ticked until then. A half-welded rail on which nobody ticked
 * single slits has its first half welded.
 */
export const weldedSlits = (s: Situation, survey: Survey, plan: RailPlan): ReadonlySet<number> => {
  const numbers = plan.slits.map(slit => slit.number);
  if (survey.phase === 'tacked') return new Set();
  if (survey.phase !== 'half-welded') return new Set(numbers);
  const slits = tickedSlits(s, survey, ['sides-first', 'sides-rest']);
  return slits.size > 0 ? slits : new Set(halvesOf(numbers).first);
};

/**
 * Least and most of the welds' pull that was still to come when a survey was taken, as shares of all of it. How much of a slit's
 * pull its sides bring and how much its top is known within wide bounds only.
 */
export const outstanding = (s: Situation, survey: Survey, plan: RailPlan): readonly [number, number] => {
  const count = plan.slits.length;
  if (count === 0 || (survey.phase !== 'tacked' && survey.phase !== 'half-welded')) return [0, 0];
  if (survey.phase === 'tacked') return [1, 1];
  const sides = weldedSlits(s, survey, plan).size;
  const tops = tickedSlits(s, survey, ['tops-odd', 'tops-even']).size;
  const left = [SIDES_SHARE.low, SIDES_SHARE.high].map(share =>
    Math.max(0, 1 - pulledSlits(sides, tops, share) / count),
  );
  return [Math.min(...left), Math.max(...left)];
};

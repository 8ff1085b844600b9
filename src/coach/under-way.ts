import type { Chosen } from '../build/fold.ts';
import type { View } from './view.ts';
import type { Step } from './walk.ts';
import { broughtBy } from './with-remedies.ts';

/** A remedy that was chosen and is not done: what is next of it, and how many of its own steps are open. */
export type UnderWay = Readonly<{ chosen: Chosen; next: Step; open: number }>;

const isOpen = (s: Step): boolean => s.state !== 'done' && s.state !== 'skipped';

/**
 * Remedies under way: chosen, and with steps still open, or done and not read since. What is wrong stays wrong until then, though
 * nothing is left to decide about it.
 */
export const underWay = (view: View): readonly UnderWay[] =>
  view.build.chosen.flatMap((chosen): readonly UnderWay[] => {
    const brought = view.steps.filter(s => broughtBy(s, chosen));
    if (brought.length === 0) return [];
    const own = brought.filter(isOpen);
    const last = brought.at(-1);
    const reading = view.steps.find(
      s =>
        s.led === true &&
        s.survey !== undefined &&
        s.survey.rail === chosen.plan.rail &&
        s.stage === last?.stage &&
        isOpen(s),
    );
    const next = own[0] ?? reading;
    return next === undefined ? [] : [{ chosen, next, open: own.length }];
  });

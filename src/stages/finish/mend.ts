import type { Chosen } from '../../build/fold.ts';
import { TURN } from '../order.ts';
import type { Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { DEFECTS, failing } from './failing.ts';
import { acrossGroups, sideGroups } from './joint-groups.ts';

/** Remedies that strike an arc, by the words of the step they give. */
const ARC_REMEDIES: Readonly<Record<string, 'mend' | 'mend-crack' | 'mend-upright'>> = {
  ...Object.fromEntries(DEFECTS.map(defect => [defect, 'mend' as const])),
  'crack-grind-out': 'mend-crack',
  'proof-more-uprights': 'mend-upright',
};

/** Minutes for one place ground out, welded and cold (common practice). */
const MINUTES = [15, 40] as const;

/** Where the welds are that a finding was about, and how many were said to fail. */
const placeOf = (s: Situation, chosen: Chosen): Fills => {
  const [, step = '', ask = ''] = /^([^#]+)#([^:]+):/.exec(chosen.finding) ?? [];
  const rail = step.split('@')[1];
  const groups = rail === undefined ? acrossGroups(s) : sideGroups(s, rail);
  const name = groups.find(g => g.ask === ask)?.name ?? 'welds';
  const { plan } = chosen;
  const count =
    typeof plan.welds === 'number' ? plan.welds : typeof plan.cracks === 'number' ? plan.cracks : 1;
  return {
    where: rail === undefined ? name : `${name} of ${rail}`,
    count,
    rail: typeof plan.rail === 'string' ? plan.rail : '',
  };
};

/** Whether what was chosen about is still open: it is not read as sound since. */
const stillOpen = (s: Situation, chosen: Chosen): boolean =>
  ARC_REMEDIES[chosen.remedy] !== 'mend' || failing(s).some(f => f.key === chosen.finding);

/**
 * Welds to be made once more: a step for each mend that was chosen, so that its arc waits for the weather and for what bars an arc as
 * every other does. The look after it opens what waits, not its tick.
 */
export const mendSteps = (s: Situation): readonly StepDraft[] => {
  const last = s.build.chosen.filter(
    c => !s.build.chosen.some(later => later.n > c.n && later.finding === c.finding),
  );
  return last.flatMap((chosen, k): readonly StepDraft[] => {
    const words = ARC_REMEDIES[chosen.remedy];
    if (words === undefined) return [];
    const key = `finish/mend@${chosen.entry}`;
    const settled = s.build.ticks.has(key) || s.build.skips.has(key);
    if (!settled && !stillOpen(s, chosen)) return [];
    const fills = placeOf(s, chosen);
    const count = Number(fills.count);
    return [
      {
        key,
        stage: 'finish',
        words,
        fills,
        // Before anything else of the page: bare, and in nobody's way.
        turn: TURN.finish - 2 + k / 100,
        needs: [],
        uses: [],
        minutes: [MINUTES[0] * count, MINUTES[1] * count],
      },
    ];
  });
};

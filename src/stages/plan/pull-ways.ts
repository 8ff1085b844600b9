import type { RailPlan } from '../../ramp/rail-plan.ts';
import { gapForPull, slitsWithPull, tackRadius } from '../../reckon/rail/pull-prior.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** The rail whose slits are marked next; the last one when all are. */
const nextRail = (s: Situation): RailPlan | undefined => {
  const plans = s.ramp.rails.flatMap(rail => s.ramp.plans.get(rail) ?? []);
  return plans.find(plan => plan.slits.some(slit => slit.marked === null)) ?? plans.at(-1);
};

/**
 * What the pull asks of the next rail, by each of three ways alone: fewer slits closed to the stop; as many as without it, tacked to a
 * larger radius; those left open at every face. The plan takes the first, rounded up, and what rounding leaves it takes by the others.
 */
export const pullWays = (s: Situation): readonly Figure[] => {
  const plan = nextRail(s);
  if (plan === undefined || plan.slits.length === 0 || plan.kerf_mm <= 0) return [];
  const { turn_rad, bend_mm, kerf_mm, tube } = plan;
  const lever_mm = tube.depth_mm - tube.wall_mm / 2;
  const without = slitsWithPull(turn_rad, lever_mm, kerf_mm, 0, 0);
  const radius_mm = tackRadius(bend_mm / turn_rad, bend_mm / without, plan.pull.rad);
  const gap_mm = kerf_mm - (lever_mm * turn_rad) / without + gapForPull(lever_mm, plan.pull.rad);
  const size = (id: string, as: Figure['as'], v: number, matters: number): Figure => ({
    id,
    kind: 'size',
    as,
    value: { is: 'exact', v },
    matters,
  });
  return [
    size('way-slits', 'count', slitsWithPull(turn_rad, lever_mm, kerf_mm, 0, plan.pull.rad), 0.5),
    // A pull that bends more than the whole line leaves no radius to tack to, and no gap.
    ...(radius_mm === null
      ? []
      : [
          {
            id: 'way-radius',
            kind: 'dimension' as const,
            as: 'length' as const,
            line: { face: 'rail bottom face', rail: plan.rail } as const,
            value: { is: 'exact' as const, v: radius_mm + tube.wall_mm / 2 },
            // Told beside the way that is taken: less than a twentieth more or less changes nothing that was marked.
            matters: 0.05 * radius_mm,
          },
          size('way-gap', 'thickness', gap_mm, 0.2),
        ]),
  ];
};

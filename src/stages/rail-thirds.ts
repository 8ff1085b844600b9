import type { RailName } from '../ramp/design.ts';
import type { SlitSpot } from '../ramp/rail-plan.ts';
import type { Situation } from './situation.ts';

export type Third = Readonly<{ third: number; slits: readonly SlitSpot[] }>;

/** The thirds of a rail that have slits, in order; a short bend may have fewer than three. */
export const thirdsOf = (s: Situation, rail: RailName): readonly Third[] => {
  const slits = s.ramp.plans.get(rail)?.slits ?? [];
  return [...new Set(slits.map(slit => slit.third))]
    .sort((a, b) => a - b)
    .map(third => ({ third, slits: slits.filter(slit => slit.third === third) }));
};

import { readingKey } from '../../build/fold.ts';
import type { Situation } from '../situation.ts';

/**
 * Longest lead between socket and welder, m, by its copper: 25 ft of 12 AWG, 50 ft of 10 AWG on a 120 V circuit of 15 to 20 A (one
 * garage-welding page [found]). 3.3 and 5.3 mm²; at 230 V the same lead loses a quarter of it (derived), and is held to no more.
 */
export const LONGEST_LEAD_m = { thin: 7.62, thick: 15.24 } as const;

const PLANNED = ['plan/power', 'lead'] as const;
const HERE = ['prep/lead', 'lead'] as const;

export type Lead = Readonly<{
  /** null until it is read. */
  m: number | null;
  /** The step where it is read, and read again. */
  step: string;
  /** It is asked for on this page: the plan never got it. */
  askHere: boolean;
}>;

/** The lead as it was told in the plan, or here where the plan never asked. */
export const leadOf = (s: Situation): Lead => {
  const here = s.build.readings.get(readingKey(...HERE));
  const planned = s.build.readings.get(readingKey(...PLANNED));
  if (here !== undefined) return { m: here.value, step: HERE[0], askHere: true };
  if (planned !== undefined) return { m: planned.value, step: PLANNED[0], askHere: false };
  return { m: null, step: HERE[0], askHere: true };
};

import { type Reading, readingKey } from '../../build/fold.ts';
import type { Situation } from '../situation.ts';

/** A number as it was last read at a step, with when; undefined until it is. */
export const readAt = (s: Situation, step: string, ask: string): Reading | undefined =>
  s.build.readings.get(readingKey(step, ask));

export const valueAt = (s: Situation, step: string, ask: string): number | undefined =>
  readAt(s, step, ask)?.value;

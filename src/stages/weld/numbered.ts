import type { Ask } from '../sheet.ts';

/**
 * A thing told by its number in a short list, looked at and then told: none is lit beforehand. None of the list is a surprise to read,
 * the good one is the middle of what is expected.
 * @param good number of the good case, from 1 to most
 */
export const numbered = (ask: string, good: number, most: number): Ask => {
  const around = Math.max(most - good, good - 1);
  return { ask, as: 'count', expected: [good - around, good + around], possible: [1, most], unlit: true };
};

import { describe, expect, test } from 'vitest';
import { GLOVE_MS, NO_GLOVE, pressed } from '../../../src/screen/terminal/glove.ts';

/** Which presses count, given as [key, time in ms]. */
const counted = (...presses: [string, number][]): boolean[] => {
  let glove = NO_GLOVE;
  return presses.map(([key, at]) => {
    const result = pressed(glove, key, at);
    glove = result.glove;
    return result.counts;
  });
};

describe('a glove leaning on a key', () => {
  test('counts once, however long it leans', () => {
    const repeats = Array.from({ length: 100 }, (_, index): [string, number] => ['space', index * 33]);
    expect(counted(...repeats).filter(Boolean)).toHaveLength(1);
  });

  test('the next press counts when the key was let go for long enough', () => {
    expect(counted(['space', 0], ['space', GLOVE_MS - 1], ['space', 2 * GLOVE_MS - 1])).toEqual([
      true,
      false,
      true,
    ]);
  });

  test('two of the same key in one chunk are one', () => {
    expect(counted(['space', 50], ['space', 50])).toEqual([true, false]);
  });

  test('another key is another finger', () => {
    expect(counted(['space', 0], ['enter', 10], ['space', 20], ['enter', 30])).toEqual([
      true,
      true,
      false,
      false,
    ]);
  });

  test('a clock set back locks no key', () => {
    expect(counted(['space', 10_000], ['space', 0])).toEqual([true, true]);
  });
});

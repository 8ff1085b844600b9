import { expect, test } from 'vitest';
import { discReach } from '../../src/ramp/disc-reach.ts';

test('a disc under its guard cuts as deep as the bench rule has it, never as deep as a bare disc', () => {
  // Bench rule [practice]: 115 mm reaches 28 to 32 mm, 125 mm reaches 33 to 37 mm.
  expect(discReach(115)).toEqual({ least: 28, most: 32 });
  expect(discReach(125)).toEqual({ least: 33, most: 37 });
  // The stop line of a 40 × 3 tube lies 34 mm below its top: a disc of 125 mm does not surely get there.
  expect(discReach(125).least).toBeLessThan(40 - 2 * 3);
});

test('one worn to the flange cuts nothing', () => {
  expect(discReach(45)).toEqual({ least: 0, most: 0 });
});

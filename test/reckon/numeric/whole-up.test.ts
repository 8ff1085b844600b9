import { expect, test } from 'vitest';
import { wholeUp } from '../../../src/reckon/numeric/whole-up.ts';

test('last-bit noise makes no extra slit', () => {
  // 0.7 / 0.1 is 6.999999999999999 and 0.3 / 0.1 rounds the other way round.
  expect(wholeUp(25.000000000000004)).toBe(25);
  expect(wholeUp(24.999999999999996)).toBe(25);
  expect(wholeUp(1e6 + 1e-10)).toBe(1e6);
});

test('what is really more than whole goes up', () => {
  expect(wholeUp(25.0001)).toBe(26);
  expect(wholeUp(25.2)).toBe(26);
  expect(wholeUp(0.2)).toBe(1);
});

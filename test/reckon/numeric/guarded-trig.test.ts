import { expect, test } from 'vitest';
import { acosGuarded, asinGuarded } from '../../../src/reckon/numeric/guarded-trig.ts';

test('a ratio a last bit past one is one, not NaN', () => {
  expect(asinGuarded(1 + Number.EPSILON)).toBe(Math.PI / 2);
  expect(acosGuarded(-1 - 2 * Number.EPSILON)).toBe(Math.PI);
  expect(asinGuarded(0.5)).toBeCloseTo(Math.PI / 6, 15);
});

test('a ratio that no angle has is a bug and is not hidden', () => {
  expect(() => asinGuarded(1.01)).toThrow(RangeError);
  expect(() => acosGuarded(Number.NaN)).toThrow(RangeError);
});

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { saidNumber } from '../../../src/reckon/numeric/said-number.ts';

test('a number is said without trailing zeros or an exponent', () => {
  expect(saidNumber(3000)).toBe('3000');
  expect(saidNumber(0.1 + 0.2)).toBe('0.3');
  expect(saidNumber(5196.152422706632)).toBe('5196.1524');
  expect(saidNumber(0)).toBe('0');
  expect(saidNumber(-2.5)).toBe('-2.5');
});

test('a limit is rounded to its safe side and stays near', () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-5, max: 1e14, noNaN: true }), value => {
      const down = Number(saidNumber(value, 'down'));
      const up = Number(saidNumber(value, 'up'));
      expect(down).toBeLessThanOrEqual(value);
      expect(up).toBeGreaterThanOrEqual(value);
      expect(up - down).toBeLessThanOrEqual(value * 3e-7);
    }),
  );
});

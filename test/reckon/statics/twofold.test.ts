import fc from 'fast-check';
import { expect, test } from 'vitest';
import { minus, plain, plus, type Twofold, times } from '../../../src/reckon/statics/twofold.ts';

/** A number as whole units of 2^-600, exact. */
const exact = (value: number): bigint => {
  if (value === 0) return 0n;
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, value);
  const bits = view.getBigUint64(0);
  const power = Number((bits >> 52n) & 0x7ffn);
  const digits = (bits & 0xfffffffffffffn) | (power === 0 ? 0n : 0x10000000000000n);
  const size = digits << BigInt(Math.max(1, power) - 1075 + 600);
  return value < 0 ? -size : size;
};

const number = fc
  .double({ min: -1e9, max: 1e9, noNaN: true })
  .filter(value => value === 0 || Math.abs(value) > 1e-9);
const whole = ([head, tail]: Twofold) => exact(head) + exact(tail);

test('the difference of two nearly equal sums keeps what a plain difference loses', () => {
  const big: Twofold = [1e16, 0];
  const sum = plus(big, [0.125, 0]);
  expect(plain(minus(sum, big))).toBe(0.125);
  expect(1e16 + 0.125 - 1e16).toBe(0);
});

test('sums of two numbers are exact', () => {
  fc.assert(
    fc.property(number, number, (a, b) => {
      expect(whole(plus([a, 0], [b, 0]))).toBe(exact(a) + exact(b));
    }),
  );
});

test('products of two numbers are exact', () => {
  fc.assert(
    fc.property(number, number, (a, b) => {
      // Both sides in units of 2^-1200.
      expect(whole(times([a, 0], b)) << 600n).toBe(exact(a) * exact(b));
    }),
  );
});

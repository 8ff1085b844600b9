import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Band } from '../../../src/reckon/strength/band-factor.ts';

describe('a band', () => {
  test('answers what was multiplied', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 30 }),
        fc.integer({ min: 0, max: 6 }),
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 240, maxLength: 240 }),
        (size, wide, numbers) => {
          const half = Math.min(wide, size - 1);
          const band = new Band(size, half);
          const whole = Array.from({ length: size }, () => new Float64Array(size));
          const put = (i: number, j: number, value: number) => {
            band.add(i, j, value);
            whole[i]![j]! += value;
            if (i !== j) whole[j]![i]! += value;
          };
          for (let i = 0; i < size; i++) {
            put(i, i, 2 * half + 2);
            for (let j = Math.max(0, i - half); j < i; j++) put(i, j, numbers[(7 * i + j) % 240]!);
          }
          const answer = Float64Array.from({ length: size }, (_, k) => numbers[k]! + 1);
          const right = Float64Array.from(whole, row =>
            row.reduce((sum, value, k) => sum + value * answer[k]!, 0),
          );
          const got = band.factor()!.solve(right);
          for (const [k, value] of answer.entries()) expect(got[k]).toBeCloseTo(value, 9);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('takes an entry from either half', () => {
    const band = new Band(2, 1);
    band.add(0, 0, 2);
    band.add(1, 1, 2);
    band.add(0, 1, 1);
    expect([...band.factor()!.solve(Float64Array.from([4, 5]))]).toEqual([
      expect.closeTo(1, 12),
      expect.closeTo(2, 12),
    ]);
  });

  test('without a sound pivot there is no answer', () => {
    const band = new Band(2, 1);
    band.add(0, 0, 1);
    band.add(1, 1, 1);
    band.add(1, 0, 1 - 1e-12);
    expect(band.factor()).toBeNull();
    expect(new Band(1, 0).factor()).toBeNull();
  });
});

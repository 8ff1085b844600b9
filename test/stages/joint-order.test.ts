import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FACES, firstEnd, jointTacks, skipAround } from '../../src/stages/joint-order.ts';

const row = (n: number) => Array.from({ length: n }, (_, k) => k + 1);

describe('the order of joints round a frame', () => {
  test('eight are welded 1-5-3-7-2-6-4-8 (common practice of small frame shops)', () => {
    expect(skipAround(row(8))).toEqual([1, 5, 3, 7, 2, 6, 4, 8]);
  });

  test('rows too short to skip begin at the first all the same', () => {
    expect(skipAround([])).toEqual([]);
    expect(skipAround(['lip'])).toEqual(['lip']);
    expect(skipAround(row(2))).toEqual([1, 2]);
    expect(skipAround(row(4))).toEqual([1, 3, 2, 4]);
  });

  test('every joint once, the first first, and from five on no two neighbours one after the other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 60 }), n => {
        const order = skipAround(row(n));
        expect([...order].sort((a, b) => a - b)).toEqual(row(n));
        expect(order[0]).toBe(1);
        for (let k = 1; k < n; k++)
          expect(Math.abs((order[k] ?? 0) - (order[k - 1] ?? 0))).toBeGreaterThan(1);
      }),
    );
  });

  test('ends by turns', () => {
    expect(row(4).map(k => firstEnd(k - 1, 'rail', 'foot'))).toEqual(['rail', 'foot', 'rail', 'foot']);
  });
});

describe('the faces of a joint', () => {
  test('are four, the pair that would swing the piece first', () => {
    for (const faces of Object.values(FACES)) expect(new Set(faces).size).toBe(4);
    expect(FACES.upright.slice(0, 2)).toEqual(['lip side', 'entry side']);
  });
});

describe('tacks', () => {
  test('four times the thicker wall, EN 1011-2 as two texts quote it: 6.4 at 1.6 mm, 12 at 3, 19 at 4.8', () => {
    expect(jointTacks(1.6, 1.6, 40).long_mm).toBeCloseTo(6.4, 9);
    expect(jointTacks(2, 3, 30).long_mm).toBe(12);
    expect(jointTacks(4.8, 4.8, 60).long_mm).toBeCloseTo(19.2, 9);
  });

  test('never onto the corners of a narrow tube', () => {
    expect(jointTacks(3, 3, 20).long_mm).toBe(8);
    expect(jointTacks(3, 3, 10).long_mm).toBe(0);
  });

  test('along a seam 25 to 35 walls apart, within the 75 to 100 mm of common practice at 3.2 mm', () => {
    const [low, high] = jointTacks(3, 5, 100).apart_mm;
    expect([low, high]).toEqual([75, 105]);
  });

  test('no bead longer than 50 in one go', () => {
    expect(jointTacks(2, 3, 30).goes).toBe(1);
    expect(jointTacks(3, 3, 60).goes).toBe(2);
  });
});

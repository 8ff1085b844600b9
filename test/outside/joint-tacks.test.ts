import { describe, expect, test } from 'vitest';
import { jointTacks, skipAround } from '../../src/stages/joint-order.ts';

// EN 1011-2, clause 13 [found, in two welding texts that quote it]: a tack is at least four times the thickness of the thicker
// part long, for parts under 12 mm.
const EN_1011_2 = [
  { wall: 1.6, least: 6.4 },
  { wall: 3.0, least: 12 },
  { wall: 4.8, least: 19.2 },
  { wall: 6.0, least: 24 },
] as const;

describe('tack lengths of EN 1011-2, clause 13 [found, quoted in two texts]', () => {
  test.each(EN_1011_2)('$wall mm wall: $least mm', ({ wall, least }) => {
    expect(jointTacks(wall, wall, 100).long_mm).toBeCloseTo(least, 9);
  });

  test('the thicker part counts, whichever it is', () => {
    expect(jointTacks(2, 3, 60).long_mm).toBe(12);
    expect(jointTacks(3, 2, 60).long_mm).toBe(12);
  });
});

// Spacing of tacks along a seam [practice]: 16 ga (1.5 mm) 40 to 60 mm, 1/8 in (3.2 mm) 75 to 100 mm, 1/4 in (6.35 mm) 150 mm.
describe('tacks along a seam, common practice', () => {
  test.each([
    { wall: 1.52, low: 40, high: 60 },
    { wall: 3.18, low: 75, high: 100 },
    { wall: 6.35, low: 150, high: 150 },
  ])('$wall mm wall: $low to $high mm lies in the band, or within a fifth of it', ({ wall, low, high }) => {
    const [from, to] = jointTacks(wall, wall, 100).apart_mm;
    expect(from).toBeGreaterThan(0.8 * low);
    expect(from).toBeLessThanOrEqual(1.1 * high);
    expect(to).toBeGreaterThan(0.85 * low);
    expect(to).toBeLessThan(1.5 * high);
  });
});

test('the skip order of eight nodes, 1-5-3-7-2-6-4-8 [practice]', () => {
  expect(skipAround([1, 2, 3, 4, 5, 6, 7, 8]).join('-')).toBe('1-5-3-7-2-6-4-8');
});

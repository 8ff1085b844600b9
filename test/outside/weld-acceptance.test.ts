import { describe, expect, test } from 'vitest';
import { weldLimits } from '../../src/stages/finish/weld-limits.ts';

const INCH = 25.4;

// AWS D1.1 table 6.1 (to 2015), 8.1 (from 2020), visual. Undersize and convexity as quoted in a public text [found]; undercut
// across a changing pull and pores along fillets that are loaded again and again [memory].
describe('AWS D1.1, visual', () => {
  test('undercut across a changing pull: 0.01 in at most, whatever the wall [memory]', () => {
    for (const wall of [1.5, 2, 3, 4, 6])
      expect(weldLimits(wall).undercut_mm).toBeLessThanOrEqual(0.01 * INCH);
    expect(weldLimits(6).undercut_mm).toBeCloseTo(0.254, 9);
  });

  test('a pore is no wider than 3/32 in [memory]', () => {
    for (const wall of [2, 3, 6, 16]) expect(weldLimits(wall).pore_mm).toBeLessThanOrEqual((3 / 32) * INCH);
  });

  test('undersize is allowed over a tenth of the length and no more than 1/16 in [found]', () => {
    for (const wall of [1.5, 3, 4.7]) {
      expect(weldLimits(wall).short_share).toBe(0.1);
      expect(weldLimits(wall).short_mm).toBeLessThan(INCH / 16);
    }
  });

  test('a face up to 5/16 in wide stands proud by 1/16 in at most [found]', () => {
    expect(weldLimits(3).proud_mm).toBeCloseTo(INCH / 16, 9);
  });
});

// ISO 5817, level C [memory]: undercut 0.1 t up to 0.5 mm; surface pore 0.2 a up to 2 mm; throat short by 0.2 mm (walls to
// 3 mm), 0.3 mm + 0.1 a up to 1 mm over that; linear misalignment 0.2 mm + 0.15 t (to 3 mm), 0.15 t over that.
describe('ISO 5817 level C', () => {
  test.each([
    [1.5, 0.15],
    [2, 0.2],
    [2.5, 0.25],
  ])('wall %d: undercut %d, a tenth of it, tighter than 0.01 in', (wall, most) => {
    expect(weldLimits(wall).undercut_mm).toBeCloseTo(most, 9);
  });

  test('a fillet with a leg of 3 has a throat of 2.12: pores to 0.42', () => {
    expect(weldLimits(3)).toMatchObject({ leg_mm: 3 });
    expect(weldLimits(3).pore_mm).toBeCloseTo(0.424, 3);
  });

  test.each([
    [2, 0.5],
    [3, 0.65],
    [4, 0.6],
    [6, 0.9],
  ])('wall %d: faces out of line by %d', (wall, most) => {
    expect(weldLimits(wall).step_mm).toBeCloseTo(most, 9);
  });

  test('throat short by 0.2 at 3 mm of wall, 0.3 and a tenth of the throat at 4', () => {
    expect(weldLimits(3).short_mm).toBe(0.2);
    expect(weldLimits(4).short_mm).toBeCloseTo(0.3 + 0.1 * 4 * Math.SQRT1_2, 9);
  });
});

// What a tube bears in bending, pressed and bent. AISC Design Examples v14 and v15 F.6 and F.7, in a verification manual [found];
// EN 1993-1-1 6.2 and 6.3 by hand [formula memory; curve c found]. Kip, inch and foot as printed.
import { describe, expect, test } from 'vitest';
import { memberCapacity } from '../../src/reckon/strength/member-check.ts';
import { tubeStrength } from '../../src/reckon/strength/tube-strength.ts';
import { kept } from '../quantity/expect-outcome.ts';

const INCH = 25.4;
const KSI = 6.894757293;
const KIP = 4448.2216153;
const KIP_FT = KIP * 12 * INCH;

/** Wall as sold, so that 0.93 of it is the design wall printed. */
const hss = (depth: number, width: number, designWall: number, fy: number) =>
  kept(
    tubeStrength(
      { depth_mm: depth * INCH, width_mm: width * INCH, wall_mm: (designWall / 0.93) * INCH },
      'AISC',
      { yield_MPa: fy * KSI, tensile_MPa: 58 * KSI },
    ),
  );

describe('AISC 360 chapter F, allowable moments', () => {
  test('v14 F.6, HSS3-1/2×3-1/2×1/8, Fy 46: b/t 27.2, 4.44 (4.43) kip·ft [found]', () => {
    const tube = hss(3.5, 3.5, 0.116, 46);
    expect(Math.abs(tube.flatness - 27.2)).toBeLessThan(0.05);
    expect(tube.bends).toBe('fully');
    expect(tube.section.plastic_mm3 / INCH ** 3).toBeCloseTo(1.93, 2);
    expect(Math.abs(tube.moment_Nmm / KIP_FT - 4.435)).toBeLessThan(0.02);
  });

  test('v15 F.6, the same, Fy 50: just noncompact, 4.80 kip·ft [found]', () => {
    const tube = hss(3.5, 3.5, 0.116, 50);
    expect(tube.bends).toBe('nearly');
    expect(Math.abs(tube.moment_Nmm / KIP_FT - 4.8)).toBeLessThan(0.02);
  });

  test('F.7, HSS10×6×3/16, Fy 46: b/t 31.5, noncompact, 37.9 kip·ft [found]', () => {
    const tube = hss(10, 6, 0.174, 46);
    expect(Math.abs(tube.flatness - 31.5)).toBeLessThan(0.05);
    expect(tube.bends).toBe('nearly');
    expect(Math.abs(tube.moment_Nmm / KIP_FT - 37.9)).toBeLessThan(0.15);
  });

  test.each([
    [1.5, 0.083, 0.545],
    [1.5, 0.12, 0.727],
    [2, 0.083, 1.01],
    [2, 0.116, 1.34],
  ])('%d in square, design wall %d, Fy 46: %d kip·ft [calc]', (side, wall, moment) => {
    expect(hss(side, side, wall, 46).moment_Nmm / KIP_FT / moment).toBeCloseTo(1, 2);
  });
});

describe('AISC 360 chapter E, allowable pushes of pinned A500 B tubes, kip [calc]', () => {
  test.each([
    [1.5, 0.12, [15.2, 13.0, 10.4, 7.8, 5.6]],
    [1.5, 0.083, [11.1, 9.6, 7.8, 6.0, 4.3]],
    [2, 0.083, [16.0, 14.8, 13.2, 11.4, 9.6]],
    [2, 0.116, [21.6, 19.9, 17.7, 15.2, 12.7]],
  ])('%d in square, design wall %d, 24 to 72 in', (side, wall, pushes) => {
    for (const [k, push] of pushes.entries()) {
      const length = (24 + 12 * k) * INCH;
      const { compression_N } = kept(memberCapacity(hss(side, side, wall, 46), length, length));
      expect(Math.abs(compression_N / KIP - push)).toBeLessThan(0.06);
    }
  });
});

describe('EN 1993-1-1, S235', () => {
  const S235 = { yield_MPa: 235, tensile_MPa: 360 };
  const tube = (side: number, wall_mm: number) =>
    kept(tubeStrength({ depth_mm: side, width_mm: side, wall_mm }, 'EN', S235));

  test('bending: Wpl fy of 40×40×3, 5.72 cm³ by a maker’s brochure [found], 1.344 kN·m', () => {
    expect(tube(40, 3).moment_Nmm / 1e6).toBeCloseTo(5.72 * 0.235, 2);
  });

  test('shear: A/2 · fy/√3 of 40×40×3, 421 mm² [found area, formula memory], 28.6 kN', () => {
    expect(tube(40, 3).shear_N / 1000).toBeCloseTo(((421 / 2) * 235) / Math.sqrt(3) / 1000, 1);
  });

  test.each([
    [40, 2, [63.9, 50.3, 35.7, 24.5]],
    [40, 3, [90.9, 70.7, 49.3, 33.4]],
    [50, 3, [121.9, 102.7, 80.8, 60.0]],
  ])('pushes of %d square × %d mm, pinned, 0.5 to 2 m, kN [calc]', (side, wall, pushes) => {
    for (const [k, push] of pushes.entries()) {
      const length = 500 * (k + 1);
      const { compression_N } = kept(memberCapacity(tube(side, wall), length, length));
      expect(Math.abs(compression_N / 1000 - push)).toBeLessThan(0.15);
    }
  });

  test('across its weak side a flat tube buckles first: 40×20×2, i 7.9 mm by a maker’s page [found]', () => {
    const flat = kept(tubeStrength({ depth_mm: 40, width_mm: 20, wall_mm: 2 }, 'EN', S235));
    expect(flat.sideGyration_mm).toBeCloseTo(7.9, 1);
    const { slenderness } = kept(memberCapacity(flat, 790, 790));
    expect(slenderness).toBeCloseTo(100, 0);
  });

  test('classes end at 33, 38 and 42 ε [memory]: 80 mm of 2 mm is the second, of 1.8 mm the third, of 1.7 mm none', () => {
    expect(tube(80, 2.3).bends).toBe('fully');
    expect(tube(80, 2).bends).toBe('nearly');
    expect(tube(80, 1.8).bends).toBe('to yield');
    expect(tubeStrength({ depth_mm: 80, width_mm: 80, wall_mm: 1.7 }, 'EN', S235).ok).toBe(false);
  });
});

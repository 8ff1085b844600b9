// The welded slit of a rail. No published test of slit-and-weld square tube is known: the shares and spacings are the trade's
// [practice, calc], the fatigue curve is EN 1993-1-9 7.1 with category 36 of its table 8.3 [memory].
import { describe, expect, test } from 'vitest';
import { tubeSection } from '../../src/reckon/steel/section.ts';
import { momentAtCap } from '../../src/reckon/strength/slit-check.ts';
import { PASSES_A_SUMMER, passesAt, slitSection } from '../../src/reckon/strength/slit-section.ts';
import { kept } from '../quantity/expect-outcome.ts';

const square = (side: number, wall: number) =>
  ({ shape: 'square', depth_mm: side, wall_mm: wall, rule: 'EN10219' }) as const;
const slit = (opened: boolean) => kept(slitSection(square(40, 3), opened));

describe('40 × 40 × 3 at a closed slit, section moduli over the tube’s own [practice, calc]', () => {
  test.each([
    ['closed square, 0.5 of the wall', false, 0.57, 0.84],
    ['with a V, 0.7 of the wall', true, 0.76, 0.91],
  ])('%s: slit face × %d, back wall × %d', (_, opened, top, back) => {
    const { of_tube } = slit(opened);
    // Printed to two digits; 0.845 is printed 0.84.
    expect(Math.abs(of_tube.top - top)).toBeLessThanOrEqual(0.0055);
    expect(Math.abs(of_tube.back - back)).toBeLessThanOrEqual(0.0055);
  });

  test('the same from the area itself, cut into small squares (independent integration, derived)', () => {
    // Wall of 3 mm with corners 6 outside and 3 inside; over 6 mm of height only the middle half of it is there.
    const step = 0.05;
    const within = (x: number, y: number, inset: number, round: number): boolean => {
      const across = Math.abs(x - 20) - (20 - inset - round);
      const up = Math.abs(y - 20) - (20 - inset - round);
      const out = Math.hypot(Math.max(across, 0), Math.max(up, 0)) + Math.min(Math.max(across, up), 0);
      return out < round;
    };
    let [area, first, second] = [0, 0, 0];
    for (let y = step / 2; y < 40; y += step)
      for (let x = step / 2; x < 40; x += step) {
        const steel =
          y < 6
            ? within(x, y, 0, 6) && !within(x, y, 3, 3)
            : within(x, y, 0.75, 5.25) && !within(x, y, 2.25, 3.75);
        if (!steel) continue;
        area += step ** 2;
        first += y * step ** 2;
        second += y * y * step ** 2;
      }
    const axis = first / area;
    const section = slit(false);
    expect(section.area_mm2 / area).toBeCloseTo(1, 2);
    expect(section.axis_mm / axis).toBeCloseTo(1, 2);
    expect(section.inertia_mm4 / (second - area * axis ** 2)).toBeCloseTo(1, 2);
  });
});

describe('repeated riding', () => {
  test.each([
    [80, 74_000],
    [100, 38_000],
    [150, 11_000],
  ])('category 36 over 1.35 at %d MPa: %d passes [memory, calc]', (range, passes) => {
    expect(Math.abs(passesAt(range) / passes - 1)).toBeLessThan(0.03);
  });

  test('at 80 MPa that is six summers of a keen family', () => {
    expect(passesAt(80) / PASSES_A_SUMMER).toBeGreaterThan(6);
  });

  test('a moment of 213 N·m uses the cap of a closed slit up [practice, calc]', () => {
    expect(momentAtCap(slit(false)) / 1000 / 213).toBeCloseTo(1, 2);
  });

  test('so 2.65 kN on one rail asks uprights at 320 mm as single spans, 400 mm as a continuous rail [practice, calc]', () => {
    const moment = momentAtCap(slit(false));
    expect((4 * moment) / 2650).toBeGreaterThan(320);
    expect((4 * moment) / 2650).toBeLessThan(325);
    expect((4 * moment) / 0.8 / 2650).toBeGreaterThan(400);
    expect((4 * moment) / 0.8 / 2650).toBeLessThan(406);
  });

  test('the tube that the shares are of: 4.66 cm³, EN 10219-2 by a maker’s brochure [found]', () => {
    expect(kept(tubeSection(square(40, 3))).elastic_mm3 / 1000).toBeCloseTo(4.66, 2);
    const { top_mm3, of_tube } = slit(false);
    expect(top_mm3 / of_tube.top / 1000).toBeCloseTo(4.66, 2);
  });
});

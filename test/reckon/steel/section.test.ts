import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Tube, tubeSection } from '../../../src/reckon/steel/section.ts';

const tube = (change: Partial<Tube> = {}) =>
  tubeSection({ shape: 'square', depth_mm: 40, width_mm: 40, wall_mm: 3, rule: 'EN10219', ...change });

const faultOf = (change: Partial<Tube>) => {
  const section = tube(change);
  return section.ok ? null : section.fault;
};

describe('a tube that cannot be', () => {
  test.each([20, 25])('a wall of %d in a side of 40 leaves no hole, and what would fit is told', wall_mm => {
    expect(faultOf({ wall_mm })).toMatchObject({
      code: 'out-of-range',
      field: 'wall_mm',
      accepted: 'at most 8 mm for this side',
    });
  });

  test('a rect tube goes by its lesser side', () => {
    expect(faultOf({ shape: 'rect', width_mm: 12, wall_mm: 6 })).toMatchObject({ field: 'wall_mm' });
  });

  test('a wall whose corner radius is more than half the side is refused, with the thickest that fits', () => {
    const fault = faultOf({ depth_mm: 20, width_mm: 20, wall_mm: 5.5 });
    expect(fault).toMatchObject({
      code: 'out-of-range',
      field: 'wall_mm',
      accepted: 'at most 5 mm for this side',
    });
    expect(tube({ depth_mm: 20, width_mm: 20, wall_mm: 5 }).ok).toBe(true);
  });

  test('over 6 mm the corners grow, so a side that takes 6 may not take 6.1', () => {
    expect(faultOf({ depth_mm: 26, width_mm: 26, wall_mm: 6.1 })?.accepted).toBe(
      'at most 6 mm for this side',
    );
    expect(tube({ depth_mm: 26, width_mm: 26, wall_mm: 6 }).ok).toBe(true);
  });

  test('a square tube with two sides is a contradiction', () => {
    expect(faultOf({ width_mm: 30 })).toMatchObject({ code: 'contradiction', field: 'width_mm' });
  });

  test('a rect tube needs its width, a square one does not', () => {
    expect(faultOf({ shape: 'rect', width_mm: undefined })).toMatchObject({
      code: 'missing-field',
      field: 'width_mm',
    });
    expect(tube({ width_mm: undefined })).toEqual(tube());
  });

  test.each([
    [{ depth_mm: 0 }, 'depth_mm', 'out-of-range'],
    [{ shape: 'rect' as const, width_mm: -3 }, 'width_mm', 'out-of-range'],
    [{ wall_mm: Number.NaN }, 'wall_mm', 'not-a-number'],
    [{ depth_mm: Number.POSITIVE_INFINITY }, 'depth_mm', 'not-a-number'],
  ])('%j is told at its field', (change, field, code) => {
    expect(faultOf(change)).toMatchObject({ field, code });
  });
});

describe('the wall', () => {
  test('a caliper reading is the wall itself: 2.8 lies between 2.5 and 3', () => {
    const [thin, real, thick] = [2.5, 2.8, 3].map(wall_mm => {
      const section = tube({ wall_mm });
      return section.ok ? section.value : null;
    });
    expect(real!.area_mm2).toBeGreaterThan(thin!.area_mm2);
    expect(real!.inertia_mm4).toBeLessThan(thick!.inertia_mm4);
    expect(real!.designWall_mm).toBe(2.8);
  });

  test('AISC reckons strength with 0.93 of the wall and weighs all of it', () => {
    const aisc = tube({ rule: 'AISC' });
    const thinner = tube({ rule: 'EN10219', wall_mm: 3 * 0.93 });
    const whole = tube({ rule: 'EN10219' });
    if (!aisc.ok || !thinner.ok || !whole.ok) throw new Error('all are tubes');
    expect(aisc.value.area_mm2).toBeCloseTo(thinner.value.area_mm2, 9);
    expect(aisc.value.inertia_mm4).toBeCloseTo(thinner.value.inertia_mm4, 6);
    expect(aisc.value.massPerM_kg).toBeCloseTo(whole.value.massPerM_kg, 9);
  });
});

test('any tube agrees with its outline added up strip by strip', () => {
  const sizes = fc.record({
    depth: fc.double({ min: 15, max: 200, noNaN: true }),
    ratio: fc.double({ min: 0.4, max: 1, noNaN: true }),
    wall: fc.double({ min: 0.08, max: 0.2, noNaN: true }),
  });
  fc.assert(
    fc.property(sizes, ({ depth, ratio, wall: share }) => {
      const width = depth * ratio;
      const wall = Math.min(6, share * width);
      const section = tube({ shape: 'rect', depth_mm: depth, width_mm: width, wall_mm: wall });
      if (!section.ok) throw new Error(section.fault.message);
      const whole = { area: 0, inertia: 0, plastic: 0 };
      const STRIPS = 40_000;
      const chord = (side: number, height: number, radius: number, y: number) => {
        const into = y - (height / 2 - radius);
        if (y >= height / 2) return 0;
        return side - (into > 0 ? 2 * (radius - Math.sqrt(radius ** 2 - into ** 2)) : 0);
      };
      for (let k = 0; k < STRIPS; k++) {
        const y = ((k + 0.5) * depth) / 2 / STRIPS;
        const solid = chord(width, depth, 2 * wall, y) - chord(width - 2 * wall, depth - 2 * wall, wall, y);
        const strip = (2 * solid * depth) / 2 / STRIPS;
        whole.area += strip;
        whole.inertia += strip * y ** 2;
        whole.plastic += strip * y;
      }
      expect(section.value.area_mm2 / whole.area).toBeCloseTo(1, 3);
      expect(section.value.inertia_mm4 / whole.inertia).toBeCloseTo(1, 3);
      expect(section.value.plastic_mm3 / whole.plastic).toBeCloseTo(1, 3);
      expect(section.value.elastic_mm3).toBeCloseTo(section.value.inertia_mm4 / (depth / 2), 6);
      expect(section.value.gyration_mm ** 2 * section.value.area_mm2).toBeCloseTo(
        section.value.inertia_mm4,
        4,
      );
    }),
    { numRuns: 20 },
  );
});

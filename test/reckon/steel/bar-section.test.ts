import { describe, expect, test } from 'vitest';
import { angleSection, flatSection } from '../../../src/reckon/steel/bar-section.ts';

describe('flat', () => {
  test('40 × 5 on edge: bd, bd³/12, and it buckles about its thickness', () => {
    const flat = flatSection(40, 5);
    if (!flat.ok) throw new Error(flat.fault.message);
    expect(flat.value.area_mm2).toBe(200);
    expect(flat.value.massPerM_kg).toBeCloseTo(1.57, 9);
    expect(flat.value.inertia_mm4).toBeCloseTo((5 * 40 ** 3) / 12, 6);
    expect(flat.value.elastic_mm3).toBeCloseTo((5 * 40 ** 2) / 6, 6);
    expect(flat.value.leastGyration_mm).toBeCloseTo(5 / Math.sqrt(12), 9);
  });

  test.each([
    [0, 5, 'depth_mm'],
    [40, Number.NaN, 'width_mm'],
  ])('%d × %d is refused', (depth, width, field) => {
    expect(flatSection(depth, width)).toMatchObject({ ok: false, fault: { field } });
  });
});

describe('angle', () => {
  const angle = (leg: number, other: number, thickness: number, root = 0, toe = 0) => {
    const section = angleSection({
      leg_mm: leg,
      otherLeg_mm: other,
      thickness_mm: thickness,
      root_mm: root,
      toe_mm: toe,
    });
    if (!section.ok) throw new Error(section.fault.message);
    return section.value;
  };

  test('sharp-cornered, its area is t(2b − t)', () => expect(angle(30, 30, 3).area_mm2).toBe(3 * 57));

  test('unequal legs: stiffer in the plane of the longer, weakest about neither', () => {
    const tall = angle(60, 30, 5, 6, 3);
    const flat = angle(30, 60, 5, 6, 3);
    expect(tall.inertia_mm4).toBeGreaterThan(3 * flat.inertia_mm4);
    expect(tall.leastInertia_mm4).toBeCloseTo(flat.leastInertia_mm4, 6);
    expect(tall.leastInertia_mm4).toBeLessThan(flat.inertia_mm4);
  });

  test('agrees with the metal counted in small squares', () => {
    const [leg, other, thick, root, toe] = [50, 40, 5, 7, 3.5];
    const GRAIN = 0.05;
    const inCorner = (dx: number, dy: number, radius: number) =>
      Math.hypot(radius - dx, radius - dy) > radius;
    const metal = (x: number, y: number): boolean => {
      if (x < thick) return !(y > leg - toe && x > thick - toe && inCorner(thick - x, leg - y, toe));
      if (y < thick) return !(x > other - toe && y > thick - toe && inCorner(other - x, thick - y, toe));
      return x < thick + root && y < thick + root && inCorner(x - thick, y - thick, root);
    };
    let [area, mx, my, xx, yy, xy] = [0, 0, 0, 0, 0, 0];
    for (let x = GRAIN / 2; x < other; x += GRAIN) {
      for (let y = GRAIN / 2; y < leg; y += GRAIN) {
        if (!metal(x, y)) continue;
        area += GRAIN ** 2;
        mx += y * GRAIN ** 2;
        my += x * GRAIN ** 2;
        xx += y ** 2 * GRAIN ** 2;
        yy += x ** 2 * GRAIN ** 2;
        xy += x * y * GRAIN ** 2;
      }
    }
    const [ix, iy, product] = [xx - mx ** 2 / area, yy - my ** 2 / area, xy - (mx * my) / area];
    const section = angle(leg, other, thick, root, toe);
    expect(section.area_mm2 / area).toBeCloseTo(1, 3);
    expect(section.inertia_mm4 / ix).toBeCloseTo(1, 3);
    expect(section.leastInertia_mm4 / ((ix + iy) / 2 - Math.hypot((ix - iy) / 2, product))).toBeCloseTo(1, 3);
  });

  test.each([
    [30, 30, 30, 0, 'thickness_mm'],
    [30, 0, 3, 0, 'otherLeg_mm'],
    [30, 30, 3, 28, 'root_mm'],
  ])('%d × %d × %d with a root of %d is refused', (leg, other, thickness, root, field) => {
    const section = angleSection({ leg_mm: leg, otherLeg_mm: other, thickness_mm: thickness, root_mm: root });
    expect(section).toMatchObject({ ok: false, fault: { field } });
  });
});

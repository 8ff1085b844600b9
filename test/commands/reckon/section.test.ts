import { describe, expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/section.ts';

const section = async (input: Record<string, unknown>) => {
  const outcome = await topic.run(input);
  if (!outcome.ok) throw new Error(outcome.fault.message);
  return outcome.value as Record<string, number>;
};
const fault = async (input: Record<string, unknown>) => {
  const outcome = await topic.run(input);
  return outcome.ok ? null : outcome.fault;
};

describe('tube, angle and flat', () => {
  test('a flat on edge and lying', async () => {
    const edge = await section({ shape: 'flat', depth_mm: 50, width_mm: 5 });
    expect(edge).toMatchObject({ area_mm2: 250, plastic_mm3: 3125 });
    expect(edge.elastic_mm3).toBeCloseTo(2083.333, 3);
    const lying = await section({ shape: 'flat', depth_mm: 5, width_mm: 50 });
    expect(lying.inertia_mm4).toBeCloseTo((50 * 5 ** 3) / 12, 9);
    expect(lying.least_inertia_mm4).toBe(edge.least_inertia_mm4);
  });

  // EN 10056 L40×40×4, root 6, toes 3: 308 mm², 4.47 cm⁴, 2.42 kg/m [found: a mill's table of equal angles].
  test('an angle with its fillets, legs equal when one is named', async () => {
    const angle = await section({ shape: 'angle', depth_mm: 40, wall_mm: 4, root_mm: 6, toe_mm: 3 });
    expect(Math.round(angle.area_mm2 ?? 0)).toBe(308);
    expect((angle.inertia_mm4 ?? 0) / 1e4).toBeCloseTo(4.47, 2);
    expect(angle.mass_kg_m).toBeCloseTo(2.42, 2);
    expect(
      await section({ shape: 'angle', depth_mm: 40, width_mm: 40, wall_mm: 4, root_mm: 6, toe_mm: 3 }),
    ).toEqual(angle);
  });

  // AISC Manual table 1-7, L2×2×1/4 [found: a table copy of the AISC shapes data]: Z 0.440 in³. Its fillets are not in the table.
  test('plastic modulus of an angle: half of the metal on either side', async () => {
    const angle = await section({ shape: 'angle', depth_mm: 50.8, wall_mm: 6.35 });
    expect(Math.abs((angle.plastic_mm3 ?? 0) / 25.4 ** 3 / 0.44 - 1)).toBeLessThan(0.015);
  });

  test('the AISC rule takes 0.93 of the wall for strength and all of it for mass', async () => {
    const bought = await section({ shape: 'square', depth_mm: 50.8, wall_mm: 3.175, rule: 'AISC' });
    const read = await section({ shape: 'square', depth_mm: 50.8, wall_mm: 3.175 * 0.93, rule: 'EN10219' });
    expect(bought.design_wall_mm).toBeCloseTo(3.175 * 0.93, 9);
    expect(bought.inertia_mm4).toBeCloseTo(read.inertia_mm4 ?? 0, 6);
    expect(bought.mass_kg_m).toBeGreaterThan(read.mass_kg_m ?? 0);
  });
});

describe('what is no section', () => {
  test.each([
    [{ shape: 'square', depth_mm: 40, rule: 'EN10219' }, 'missing-field', 'wall_mm'],
    [{ shape: 'square', depth_mm: 40, wall_mm: 3 }, 'missing-field', 'rule'],
    [{ shape: 'rect', depth_mm: 40, wall_mm: 3, rule: 'EN10219' }, 'missing-field', 'width_mm'],
    [{ shape: 'flat', depth_mm: 40 }, 'missing-field', 'width_mm'],
    [{ shape: 'angle', depth_mm: 40 }, 'missing-field', 'wall_mm'],
    [{ shape: 'flat', depth_mm: 40, width_mm: 5, wall_mm: 5 }, 'contradiction', 'wall_mm'],
    [{ shape: 'angle', depth_mm: 40, wall_mm: 4, rule: 'AISC' }, 'contradiction', 'rule'],
    [{ shape: 'square', depth_mm: 40, wall_mm: 3, rule: 'EN10219', root_mm: 3 }, 'contradiction', 'root_mm'],
    [{ shape: 'angle', depth_mm: 40, width_mm: 30, wall_mm: 30 }, 'out-of-range', 'wall_mm'],
    [{ shape: 'angle', depth_mm: 0.001, wall_mm: 0.0001 }, 'out-of-range', 'depth_mm'],
    [{ shape: 'square', depth_mm: 40, wall_mm: 20, rule: 'EN10219' }, 'out-of-range', 'wall_mm'],
    [{ shape: 'square', depth_mm: 40, wall_mm: 1e9, rule: 'AISC' }, 'out-of-range', 'wall_mm'],
  ])('%j: %s at %s', async (input, code, field) => {
    expect(await fault(input)).toMatchObject({ code, field });
  });
});

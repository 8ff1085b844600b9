import { describe, expect, test } from 'vitest';
import { type ConsumptionInput, consumption } from '../../../src/reckon/welding/consumption.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const frame: ConsumptionInput = {
  process: 'gmaw',
  slits: 25,
  rails: 2,
  joints: 64,
  pieces: 30,
  depth_mm: 40,
  width_mm: 40,
  wall_mm: 3,
};

describe('a frame of two rails of 25 slits in 40×40×3', () => {
  const it = kept(consumption(frame));

  test('a slit is 108 mm long and cuts 324 mm²; with 2 mm wall 224 mm² (bench figures, derived)', () => {
    expect(it.slit_length_mm).toBe(108);
    expect(it.slit_area_mm2 / 50).toBe(324);
    expect(kept(consumption({ ...frame, wall_mm: 2 })).slit_area_mm2 / 50).toBe(224);
  });

  test('16 200 mm² wear 2 to 5 discs; ten are bought', () => {
    expect(it.slit_area_mm2).toBe(16_200);
    expect(it.thin_discs).toEqual({ low: 2, likely: 3, high: 5 });
    expect(it.buy.thin_discs).toBe(10);
  });

  test('a larger job buys by the rule: section × 2.5 ÷ 6000', () => {
    const large = kept(consumption({ ...frame, rails: 4 }));
    expect(large.buy.thin_discs).toBe(Math.ceil((2.5 * 32_400) / 6000));
  });

  test('wire by the bench rule, a kilogram of it for practice', () => {
    const laid = 50 * 0.108 * 0.05 + 64 * 0.2 * 0.041;
    expect(it.laid_kg).toBeCloseTo(laid, 12);
    expect(it.wire_kg?.likely).toBeCloseTo((laid / 0.9) * 1.3, 12);
    expect(it.buy.wire_kg).toBeCloseTo((laid / 0.9) * 1.3 + 1, 12);
    expect(it.wire_kg?.low).toBeCloseTo(laid / 0.93, 12);
  });

  test('the arc burns for its length at a beginner’s travel, the gas half as long again', () => {
    const length = 50 * 108 + 64 * 200;
    expect(it.arc_min.likely).toBeCloseTo(length / 250, 12);
    expect(it.gas_min?.likely).toBeCloseTo((length / 250) * 1.5, 12);
    expect(it.gas_l?.likely).toBeCloseTo((length / 250) * 1.5 * 12, 9);
  });

  test('flap, strip and chop discs', () => {
    expect(it.buy).toMatchObject({ flap_discs: 17, strip_discs: 2, chop_discs: 2 });
  });

  test('every band is in order', () => {
    for (const process of ['gmaw', 'fcaw-s', 'smaw'] as const) {
      const used = kept(consumption({ ...frame, process }));
      for (const band of [used.wire_kg, used.rods, used.arc_min, used.gas_min, used.gas_l, used.thin_discs]) {
        if (band === null) continue;
        expect(band.low).toBeLessThanOrEqual(band.likely);
        expect(band.likely).toBeLessThanOrEqual(band.high);
      }
    }
  });

  test('cored wire takes more wire and no gas; rods take rods', () => {
    const cored = kept(consumption({ ...frame, process: 'fcaw-s' }));
    expect(cored.gas_min).toBeNull();
    expect(cored.wire_kg?.likely).toBeGreaterThan(it.wire_kg?.likely ?? Number.NaN);
    const rods = kept(consumption({ ...frame, process: 'smaw' }));
    expect(rods.wire_kg).toBeNull();
    expect(rods.rods?.low).toBe(Math.ceil(it.laid_kg / 0.0096));
    expect(kept(consumption({ ...frame, process: 'smaw', rod_mm: 3.2 })).rods?.low).toBe(
      Math.ceil(it.laid_kg / 0.017),
    );
  });

  test('rolled rails have no slits and wear no thin discs', () => {
    const rolled = kept(consumption({ ...frame, slits: 0 }));
    expect(rolled.thin_discs).toEqual({ low: 0, likely: 0, high: 0 });
    expect(rolled.buy.thin_discs).toBe(0);
  });

  test.each([
    [{ slits: -1 }, 'slits'],
    [{ joints: 1.5 }, 'joints'],
    [{ depth_mm: 0 }, 'depth_mm'],
    [{ wall_mm: 0 }, 'wall_mm'],
    [{ wall_mm: 10 }, 'wall_mm'],
  ] as const)('%o is out of range', (bad, field) => {
    expect(refused(consumption({ ...frame, ...bad }))).toMatchObject({ code: 'out-of-range', field });
  });
});

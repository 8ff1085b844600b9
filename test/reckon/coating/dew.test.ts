import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dew, humidityFor } from '../../../src/reckon/coating/dew.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const air = fc.double({ min: -40, max: 60, noNaN: true });
const damp = fc.double({ min: Number.MIN_VALUE, max: 100, noNaN: true });

describe('the dew point', () => {
  test('of air with next to no water in it is a number still', () => {
    const { dew_C } = kept(dew({ air_C: 16, humidity_pct: Number.MIN_VALUE }));
    expect(dew_C).toBeLessThan(-200);
    expect(dew_C).toBeGreaterThan(-243.04);
  });

  test('is never above the air, and is the air in full damp', () => {
    fc.assert(
      fc.property(air, damp, (air_C, humidity_pct) => {
        const { dew_C } = kept(dew({ air_C, humidity_pct }));
        expect(dew_C).toBeLessThanOrEqual(air_C);
        expect(Number.isFinite(dew_C)).toBe(true);
        expect(kept(dew({ air_C, humidity_pct: 100 })).dew_C).toBeCloseTo(air_C, 9);
      }),
    );
  });

  test('rises with damp', () => {
    fc.assert(
      fc.property(air, fc.double({ min: 1, max: 98, noNaN: true }), (air_C, humidity_pct) => {
        const at = (pct: number) => kept(dew({ air_C, humidity_pct: pct })).dew_C;
        expect(at(humidity_pct + 1)).toBeGreaterThan(at(humidity_pct));
      }),
    );
  });

  test('read backwards it gives the damp it came from', () => {
    fc.assert(
      fc.property(air, fc.double({ min: 5, max: 100, noNaN: true }), (air_C, humidity_pct) => {
        expect(humidityFor(air_C, kept(dew({ air_C, humidity_pct })).dew_C)).toBeCloseTo(humidity_pct, 6);
      }),
    );
    expect(humidityFor(10, 20)).toBe(100);
  });
});

describe('paint', () => {
  test('steel three degrees above the dew point is painted, less is not', () => {
    const { dew_C } = kept(dew({ air_C: 16, humidity_pct: 70 }));
    const on = (steel_C: number) => kept(dew({ air_C: 16, humidity_pct: 70, steel_C }));
    expect(on(dew_C + 3.001).paint).toBe(true);
    expect(on(dew_C + 2.999)).toMatchObject({ paint: false, why: expect.stringContaining('less than 3 °C') });
    expect(on(dew_C - 1).why).toContain('colder than the dew point');
  });

  test('at 85 % warm steel is painted, above it nothing is', () => {
    expect(kept(dew({ air_C: 16, humidity_pct: 85, steel_C: 25 })).paint).toBe(true);
    expect(kept(dew({ air_C: 16, humidity_pct: 85.1, steel_C: 25 }))).toMatchObject({
      paint: false,
      why: 'The air is damper than 85 %.',
    });
  });

  test('both faults are told', () => {
    expect(kept(dew({ air_C: 16, humidity_pct: 95, steel_C: 14 })).why).toMatch(/colder.*damper/);
  });

  test('without the steel there is no word on paint', () => {
    expect(kept(dew({ air_C: 16, humidity_pct: 70 }))).toMatchObject({ margin_C: null, paint: null });
  });

  test('a dew point below freezing is told to be uncertain', () => {
    expect(kept(dew({ air_C: 2, humidity_pct: 60, steel_C: 10 })).why).toContain('below 0 °C');
  });
});

test.each([
  [{ humidity_pct: 0 }, 'humidity_pct'],
  [{ humidity_pct: 100.1 }, 'humidity_pct'],
  [{ humidity_pct: -5 }, 'humidity_pct'],
  [{ air_C: -243.04 }, 'air_C'],
  [{ air_C: Number.NaN }, 'air_C'],
  [{ steel_C: 900 }, 'steel_C'],
] as const)('%o is out of range', (bad, field) => {
  expect(refused(dew({ air_C: 16, humidity_pct: 70, ...bad }))).toMatchObject({
    code: 'out-of-range',
    field,
  });
});

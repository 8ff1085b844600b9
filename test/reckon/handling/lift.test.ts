import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frequencyMultiplier } from '../../../src/reckon/handling/frequency.ts';
import { type LiftInput, lift } from '../../../src/reckon/handling/lift.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const job: LiftInput = {
  load_kg: 18,
  hands_from_body_mm: 350,
  hands_height_mm: 400,
  raise_mm: 500,
  twist_rad: rad(20),
  lifts_per_min: 0.5,
  hours: 1,
  grip: 'fair',
};

describe('the lifting equation', () => {
  test('at its best place it lets 23 kg', () => {
    const best = kept(
      lift({
        ...job,
        hands_from_body_mm: 250,
        hands_height_mm: 750,
        raise_mm: 250,
        twist_rad: 0,
        lifts_per_min: 0.2,
        grip: 'good',
      }),
    );
    expect(best.limit_kg).toBeCloseTo(23, 12);
  });

  test('every multiplier lies in 0 to 1 and the limit is their product', () => {
    const anything = fc.record({
      load_kg: fc.double({ min: 0.1, max: 1000, noNaN: true }),
      hands_from_body_mm: fc.double({ min: 1, max: 3000, noNaN: true }),
      hands_height_mm: fc.double({ min: 0, max: 3000, noNaN: true }),
      raise_mm: fc.double({ min: 0, max: 3000, noNaN: true }),
      twist_rad: fc.double({ min: 0, max: Math.PI, noNaN: true }),
      lifts_per_min: fc.double({ min: 0, max: 60, noNaN: true }),
      hours: fc.double({ min: 0.01, max: 8, noNaN: true }),
      grip: fc.constantFrom('good' as const, 'fair' as const, 'poor' as const),
    });
    fc.assert(
      fc.property(anything, input => {
        const { limit_kg, index, ...multipliers } = kept(lift(input));
        for (const multiplier of Object.values(multipliers)) {
          expect(multiplier).toBeGreaterThanOrEqual(0);
          expect(multiplier).toBeLessThanOrEqual(1);
        }
        expect(limit_kg).toBeCloseTo(
          Object.values(multipliers).reduce((a, b) => a * b, 23),
          9,
        );
        if (limit_kg === 0) expect(index).toBeNull();
        else expect(index).toBeCloseTo(input.load_kg / limit_kg, 6);
      }),
    );
  });

  test.each([
    ['hands too far out', { hands_from_body_mm: 631 }, 'horizontal'],
    ['hands too high', { hands_height_mm: 1751 }, 'vertical'],
    ['too far up', { raise_mm: 1751 }, 'distance'],
    ['twisted too far', { twist_rad: rad(136) }, 'twist'],
    ['too often', { lifts_per_min: 16 }, 'frequency'],
  ] as const)('%s lets nothing be lifted', (_, bad, multiplier) => {
    const it = kept(lift({ ...job, ...bad }));
    expect(it[multiplier]).toBe(0);
    expect(it).toMatchObject({ limit_kg: 0, index: null });
  });

  test.each([
    ['hands', { hands_from_body_mm: 630 }, 'horizontal', 25 / 63],
    ['height', { hands_height_mm: 1750 }, 'vertical', 0.7],
    ['way', { raise_mm: 1750 }, 'distance', 0.82 + 4.5 / 175],
    ['twist', { twist_rad: rad(135) }, 'twist', 0.568],
  ] as const)('at the limit of %s something still may be', (_, at, multiplier, value) => {
    expect(kept(lift({ ...job, ...at }))[multiplier]).toBeCloseTo(value, 9);
  });

  test('letting down is as far as lifting', () => {
    const down = kept(lift({ ...job, hands_height_mm: 900, raise_mm: -500 }));
    expect(down.distance).toBe(kept(lift(job)).distance);
    expect(refused(lift({ ...job, raise_mm: -500 }))).toMatchObject({
      code: 'out-of-range',
      field: 'raise_mm',
    });
  });

  test('a grip with low hands and with high hands', () => {
    expect(kept(lift({ ...job, hands_height_mm: 749 })).coupling).toBe(0.95);
    expect(kept(lift({ ...job, hands_height_mm: 750 })).coupling).toBe(1);
    expect(kept(lift({ ...job, hands_height_mm: 900, grip: 'poor' })).coupling).toBe(0.9);
  });
});

describe('the frequency table', () => {
  test('its corners', () => {
    expect(frequencyMultiplier(0.1, 1, 500)).toBe(1);
    expect(frequencyMultiplier(0.2, 8, 500)).toBe(0.85);
    expect(frequencyMultiplier(15, 1, 800)).toBe(0.28);
    expect(frequencyMultiplier(15, 1, 700)).toBe(0);
    expect(frequencyMultiplier(15.01, 1, 800)).toBe(0);
    expect(frequencyMultiplier(10, 8, 800)).toBe(0.13);
    expect(frequencyMultiplier(12, 2, 800)).toBe(0.21);
    expect(frequencyMultiplier(13, 2, 800)).toBe(0);
  });

  test('straight between rows', () => {
    expect(frequencyMultiplier(2.5, 1, 500)).toBeCloseTo((0.91 + 0.88) / 2, 12);
    expect(frequencyMultiplier(0.35, 2, 500)).toBeCloseTo(0.935, 12);
  });

  test('up to an hour, up to two, up to a day', () => {
    expect(frequencyMultiplier(4, 1, 500)).toBe(0.84);
    expect(frequencyMultiplier(4, 1.01, 500)).toBe(0.72);
    expect(frequencyMultiplier(4, 2, 500)).toBe(0.72);
    expect(frequencyMultiplier(4, 2.01, 500)).toBe(0.45);
  });

  test('more often and longer never lets more', () => {
    const per_min = [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16];
    for (const hands of [500, 900])
      for (const [n, often] of per_min.entries()) {
        const at = (hours: number, lifts = often) => frequencyMultiplier(lifts, hours, hands);
        expect(at(2)).toBeLessThanOrEqual(at(1));
        expect(at(8)).toBeLessThanOrEqual(at(2));
        const rarer = per_min[n - 1];
        if (rarer !== undefined)
          for (const hours of [1, 2, 8]) expect(at(hours)).toBeLessThanOrEqual(at(hours, rarer));
      }
  });
});

test.each([
  [{ load_kg: 0 }, 'load_kg'],
  [{ hands_from_body_mm: 0 }, 'hands_from_body_mm'],
  [{ hands_height_mm: -1 }, 'hands_height_mm'],
  [{ twist_rad: -0.1 }, 'twist_deg'],
  [{ lifts_per_min: -1 }, 'lifts_per_min'],
  [{ hours: 0 }, 'hours'],
  [{ hours: 9 }, 'hours'],
  [{ load_kg: Number.NaN }, 'load_kg'],
] as const)('%o is out of range', (bad, field) => {
  expect(refused(lift({ ...job, ...bad }))).toMatchObject({ code: 'out-of-range', field });
});

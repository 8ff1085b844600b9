// Loads of a rider. Circular motion [textbook]; the tables and cases are arithmetic from it [calc]; standing loads and guards are
// EN 1991-1-1 table 6.2, ASCE 7 and IBC 1607.8 [memory]; the riding factor of at least 3 and the drop are judgement.
import { describe, expect, test } from 'vitest';
import {
  dropFactor,
  entryFactor,
  GUARD_N,
  GUARD_N_mm,
  RIDER_AND_MACHINE_KG,
  ridingLoads,
  STANDING_N_mm2,
} from '../../src/reckon/strength/loads.ts';
import { kept } from '../quantity/expect-outcome.ts';

const LBF = 4.4482216;
const FOOT = 304.8;

describe('n₀ = 1 + v²/(gR) [calc]', () => {
  test.each([
    [4, 1.5, 2.088],
    [5, 2.5, 2.02],
    [6, 2, 2.835],
    [7, 2.5, 2.999],
    [8, 2.5, 3.61],
    [9, 3, 3.753],
    [10, 4, 3.549],
  ])('%d m/s on %d m: %d', (speed, radius, factor) => {
    expect(entryFactor(speed, radius)).toBeCloseTo(factor, 3);
  });

  test('110 kg at 8 m/s on 2.5 m presses 3894.73 N where the curve begins', () => {
    expect(110 * 9.80665 * entryFactor(8, 2.5)).toBeCloseTo(3894.73, 2);
  });

  test('a stiff rider, 0.8 m and 1.0 m above the deck: 4.83893 and 5.35079', () => {
    expect(entryFactor(8, 2.5 - 0.8)).toBeCloseTo(4.83893, 5);
    expect(entryFactor(8, 2.5 - 1)).toBeCloseTo(5.35079, 5);
  });

  test('18 mph on 8 ft: 3.70777', () => {
    expect(entryFactor(8.04672, 2.4384)).toBeCloseTo(3.70777, 5);
  });
});

describe('a drop of half a metre [calc]', () => {
  test('stopped in 0.20 m 3.5, in 0.30 m 2.67; the middle is 3, as riding is', () => {
    expect(dropFactor(0.5, 0.2)).toBeCloseTo(3.5, 12);
    expect(dropFactor(0.5, 0.3)).toBeCloseTo(2.67, 2);
    const loads = kept(ridingLoads({ mass_kg: 90, speed_m_s: 5, radius_m: 4.5, exit_rad: 0.5 }));
    expect(loads.drop_N).toBeCloseTo(loads.riding_N, 9);
  });

  test('a spring that gives 0.2 m says nearly the same: 1 + √(1 + 2h/δ) = 3.449', () => {
    expect(1 + Math.sqrt(1 + (2 * 0.5) / 0.2)).toBeCloseTo(3.449, 3);
    expect(dropFactor(0.5, 0.2) / 3.449).toBeGreaterThan(1);
  });
});

describe('what 90 kg is reckoned with', () => {
  const loads = kept(ridingLoads({ mass_kg: 90, speed_m_s: 7, radius_m: 4.5, exit_rad: Math.PI / 6 }));

  test('three times the weight, 2.65 kN [practice, calc]', () => {
    expect(loads.riding_factor).toBe(3);
    expect(loads.riding_N / 1000).toBeCloseTo(2.65, 2);
  });

  test('a proof load of 1.25 of it, about 3.3 kN [practice, calc]', () => {
    expect(loads.proof_N / 1000).toBeCloseTo(3.3, 1);
  });

  test('the push at the lip is the share of it that is not vertical (statics)', () => {
    expect(loads.lip_push_N).toBeCloseTo(loads.riding_N / 2, 9);
  });
});

test('riders: 115 kg adult, 152 heavy, 61 child [practice]', () => {
  expect(RIDER_AND_MACHINE_KG).toEqual({ child: 61, adult: 115, heavy: 152 });
});

test('people: 5 kN/m² is no less than 100 lb/ft² [memory]', () => {
  expect((STANDING_N_mm2 * FOOT ** 2) / LBF).toBeGreaterThan(100);
});

test('a guard: 50 lb/ft and 200 lb [memory]', () => {
  expect((GUARD_N_mm * FOOT) / LBF).toBeCloseTo(50, 2);
  expect(GUARD_N / LBF).toBeCloseTo(200, 0);
});

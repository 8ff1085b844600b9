import { describe, expect, test } from 'vitest';
import { type RunInInput, runIn } from '../../src/reckon/ride/run-in.ts';
import { kept } from '../quantity/expect-outcome.ts';

// Worked apart from this code, in closed form and with the DOP853 integrator of SciPy (rtol 1e-12):
// [derived]. ride-integrated.test.ts rolls down again with an integrator library.

const G = 9.80665;
const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const down = (input: RunInInput) => kept(runIn(input));
const near = (actual: number, printed: number, digits: number): void =>
  expect(Math.abs(actual - printed)).toBeLessThanOrEqual(Math.abs(printed) * 10 ** (1 - digits));

const bike = { slope_rad: rad(15), flat_m: 5, rolling: 0.006, mass_kg: 90, drag_area_m2: 0.5 };

describe('the start a rider needs [derived]', () => {
  test('7 m/s off 15° and 5 m of flat', () => {
    const it = down({ ...bike, speed_m_s: 7 });
    near(it.drop_m, 2.77395, 7);
    near(it.slope_length_m, 10.71772, 7);
    near(it.foot_speed_m_s, 7.162023, 7);
  });

  test('a drop of 2 m gives 5.960622 m/s at the ramp', () => {
    const it = down({ ...bike, speed_m_s: 5.960622 });
    near(it.drop_m, 2, 6);
    near(it.foot_speed_m_s, 6.112063, 7);
  });

  test('a skateboard at 5 m/s', () => {
    const it = down({
      speed_m_s: 5,
      slope_rad: rad(15),
      flat_m: 3,
      rolling: 0.015,
      mass_kg: 75,
      drag_area_m2: 0.45,
    });
    near(it.drop_m, 1.458318, 7);
  });

  test('by speed, for boards, grass, and a gentle slope', () => {
    for (const [speed_m_s, boards, grass, gentle] of [
      [4, 0.905, 1.139, 1.133],
      [6, 2.027, 2.383, 2.477],
      [8, 3.655, 4.197, 4.519],
      [10, 5.856, 6.663, 7.486],
    ] as const) {
      expect(down({ ...bike, speed_m_s }).drop_m).toBeCloseTo(boards, 3);
      expect(down({ ...bike, rolling: 0.03, speed_m_s }).drop_m).toBeCloseTo(grass, 3);
      expect(down({ ...bike, rolling: 0.02, slope_rad: rad(8), speed_m_s }).drop_m).toBeCloseTo(gentle, 3);
    }
  });

  test('without losses it is v²/2g, as off an 8 m start hill (height found, Cowell et al. 2012): 12.526 m/s', () => {
    const it = down({
      speed_m_s: 12.526,
      slope_rad: rad(28),
      flat_m: 20,
      rolling: 0,
      mass_kg: 90,
      drag_area_m2: 0,
    });
    near(it.drop_m, 8, 4);
    expect(it.drop_m).toBeCloseTo(12.526 ** 2 / (2 * G), 10);
  });
});

import { describe, expect, test } from 'vitest';
import { climb, loadFactor } from '../../src/reckon/ride/climb.ts';
import { flight } from '../../src/reckon/ride/flight.ts';
import { arcOnset, leadIn } from '../../src/reckon/ride/onset.ts';
import { rampPush } from '../../src/reckon/ride/ramp-push.ts';
import { stiffRider } from '../../src/reckon/ride/stiff-rider.ts';
import { kept } from '../quantity/expect-outcome.ts';

// No published worked climb was to be had. The figures were worked apart from this code, in closed form and with the
// DOP853 integrator of SciPy (rtol 1e-12): [derived]. Losses are held to an integrator library in ride-integrated.test.ts.

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const deg = (radians: number): number => (radians * 180) / Math.PI;
const near = (actual: number, printed: number, digits: number): void =>
  expect(Math.abs(actual - printed)).toBeLessThanOrEqual(Math.abs(printed) * 10 ** (1 - digits));

const drag = { mass_kg: 90, drag_area_m2: 0.5 };

describe('8 m/s into 2.5 m × 40° [derived]', () => {
  const ramp = { speed_m_s: 8, radius_m: 2.5, exit_rad: rad(40) };

  test('a point at the tyres, without losses', () => {
    const it = kept(climb(ramp));
    near(it.exit_speed_m_s, 7.247648, 7);
    near(it.load_factor_start, 3.610474, 7);
    near(it.load_factor_end, 2.908607, 7);
  });

  test('with rolling 0.006, 0.5 m² and 90 kg', () => {
    near(kept(climb({ ...ramp, rolling: 0.006, ...drag })).exit_speed_m_s, 7.150965, 7);
  });

  test('a stiff rider is faster and heavier', () => {
    const at08 = kept(stiffRider({ ...ramp, body_height_m: 0.8 }));
    near(at08.exit_speed_m_s, 7.49662, 6);
    near(at08.load_factor_start, 4.83893, 6);
    const at10 = kept(stiffRider({ ...ramp, body_height_m: 1 }));
    near(at10.exit_speed_m_s, 7.55758, 6);
    near(at10.load_factor_start, 5.35079, 6);
  });

  test('a stiff rider who has to be turned', () => {
    const it = kept(stiffRider({ ...ramp, body_height_m: 0.9, gyration_m: 0.5 }));
    near(it.exit_speed_m_s, 7.184526, 7);
    near(it.load_factor_start, 4.715977, 7);
    near(it.load_factor_end, 4.055739, 7);
    near(it.pitch_rad_s, 4.490329, 7);
  });

  test('a spiral of the same height, and a 0.6 m lead-in', () => {
    const height = 2.5 * (1 - Math.cos(rad(40)));
    const spiral = kept(leadIn(height, rad(40), 2.602587 - 1e-6));
    near(spiral.base_m, 2.47857, 6);
    near(spiral.radius_m, 1.863965, 6);
    // A spiral is tightest at the lip: there it presses hardest.
    const { exit_speed_m_s } = kept(climb(ramp));
    near(loadFactor(exit_speed_m_s ** 2, spiral.radius_m, rad(40)), 3.639706, 6);
    const easy = kept(leadIn(height, rad(40), 0.6));
    near(easy.radius_m, 2.474099, 7);
    near(easy.base_m, 1.890173, 7);
    near(easy.path_m, 2.027247, 7);
    near(8 ** 3 * easy.sharpening_1_m2, 344.907, 6);
  });

  test('the spiral agrees with its power series [textbook]', () => {
    const angle = rad(40);
    const length = 2.602587 - 1e-6;
    const series = length * (1 - angle ** 2 / 10 + angle ** 4 / 216 - angle ** 6 / 9360);
    near(kept(leadIn(2.5 * (1 - Math.cos(angle)), angle, length)).base_m, series, 6);
  });

  test('the arc takes hold in one wheelbase', () => {
    const it = kept(arcOnset(8, 2.5, 1));
    near(it.step, 2.61, 4);
    near(it.time_s, 0.125, 6);
    near(it.rate_1_s, 20.88, 4);
  });

  test('110 kg push an 80 kg ramp forward and lift its entry', () => {
    const it = kept(
      rampPush({
        ...ramp,
        rider_kg: 110,
        ramp_kg: 80,
        friction: 0.4,
        base_m: 1.606969,
        lip_m: 0.584889,
        centre_m: 0.45 * 1.606969,
      }),
    );
    near(it.start.normal_N, 3894.73, 6);
    near(it.lip.normal_N, 3137.61, 6);
    near(it.lip.down_N, 2403.55, 6);
    near(it.lip.forward_N, 2016.81, 6);
    near(it.friction_needed, 0.632611, 6);
    near(it.slide_short_N, 741.58, 5);
    near(it.hold_down_N, 381.02, 5);
  });

  test('where the arc has turned 20° the same rider pushes so', () => {
    const ends = { rider_kg: 110, ramp_kg: 80, friction: 0.4, base_m: 1, lip_m: 0.1, centre_m: 0.4 };
    const { lip } = kept(rampPush({ ...ramp, ...ends, exit_rad: rad(20) }));
    near(lip.normal_N, 3699.57, 6);
    near(lip.down_N, 3476.45, 6);
    near(lip.forward_N, 1265.33, 6);
  });
});

describe('from the foot of a ramp to flat ground [derived]', () => {
  test('2.5 m × 40° at 7 m/s', () => {
    const ramp = { speed_m_s: 7, radius_m: 2.5, exit_rad: rad(40) };
    const up = kept(climb(ramp));
    near(up.exit_speed_m_s, 6.126043, 7);
    near(kept(climb({ ...ramp, rolling: 0.006, ...drag })).exit_speed_m_s, 6.036313, 7);
    near(up.load_factor_start, 2.99864, 6);
    near(up.load_factor_end, 2.29678, 6);
    const level = kept(flight({ speed_m_s: up.exit_speed_m_s, exit_rad: rad(40), drop_m: 0 }));
    near(level.rise_m, 0.790577, 6);
    near(level.time_s, 0.803076, 6);
    near(level.distance_m, 3.768693, 7);
    const ground = kept(flight({ speed_m_s: up.exit_speed_m_s, exit_rad: rad(40), drop_m: 0.584889 }));
    near(ground.time_s, 0.931177, 6);
    near(ground.distance_m, 4.369846, 6);
    near(deg(ground.landing_rad), 47.901825, 6);
    near(ground.fall_height_m, 1.375466, 6);
  });

  test('the same ramp onto a 25° slope behind 2.5 m, at three entry speeds', () => {
    for (const [entry, distance, fall] of [
      [6.5, 3.623376, 0.331426],
      [7, 4.763993, 0.614112],
      [7.5, 5.944814, 0.917738],
    ] as const) {
      const up = kept(climb({ speed_m_s: entry, radius_m: 2.5, exit_rad: rad(40) }));
      const landing = { drop_m: 0, gap_m: 2.5, slope_rad: rad(25) };
      const it = kept(flight({ speed_m_s: up.exit_speed_m_s, exit_rad: rad(40), ...landing }));
      near(it.distance_m, distance, 7);
      near(it.fall_height_m, fall, 6);
    }
  });

  test('8 ft × 45° at 18 mph', () => {
    const up = kept(climb({ speed_m_s: 8.04672, radius_m: 2.4384, exit_rad: rad(45) }));
    near(up.load_factor_start, 3.70777, 6);
    near(up.exit_speed_m_s, 7.12335, 6);
    const level = kept(flight({ speed_m_s: up.exit_speed_m_s, exit_rad: rad(45), drop_m: 0 }));
    near(level.distance_m, 5.17425, 6);
    near(level.rise_m / 0.3048, 4.244, 5);
    const ground = kept(flight({ speed_m_s: up.exit_speed_m_s, exit_rad: rad(45), drop_m: 0.714191 }));
    near(ground.distance_m, 5.81026, 6);
    near(deg(ground.landing_rad), 51.2469, 6);
    near(ground.fall_height_m / 0.3048, 6.5871, 5);
  });

  test('what presses a rider where the arc begins, by speed and radius', () => {
    for (const [speed, radius, factor] of [
      [4, 1.5, 2.088],
      [6, 2, 2.835],
      [7, 2.5, 2.999],
      [8, 3, 3.175],
      [10, 4, 3.549],
    ] as const)
      expect(
        kept(climb({ speed_m_s: speed, radius_m: radius, exit_rad: rad(20) })).load_factor_start,
      ).toBeCloseTo(factor, 3);
  });
});

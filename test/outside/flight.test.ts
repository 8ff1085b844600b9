import { describe, expect, test } from 'vitest';
import { clearSpeed } from '../../src/reckon/ride/clear-speed.ts';
import { flight } from '../../src/reckon/ride/flight.ts';
import { landingSurface } from '../../src/reckon/ride/landing-surface.ts';
import { speedThrough } from '../../src/reckon/ride/speed-through.ts';
import { speedWindow } from '../../src/reckon/ride/speed-window.ts';
import { wheelLag } from '../../src/reckon/ride/wheel-lag.ts';
import { kept } from '../quantity/expect-outcome.ts';

// No published table of a jump with speed, distance and fall height was to be had. The case figures below were worked
// apart from this code, with a closed form or with the DOP853 integrator of SciPy (rtol 1e-12): [derived].
// Where a check rests on a printed source, its title says so. Drag is held to an integrator library in ride-integrated.test.ts.

const G = 9.80665;
const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const deg = (radians: number): number => (radians * 180) / Math.PI;

/** A figure of so many digits is met to a unit of the last, as near as a share says it. */
const near = (actual: number, printed: number, digits: number): void =>
  expect(Math.abs(actual - printed)).toBeLessThanOrEqual(Math.abs(printed) * 10 ** (1 - digits));

describe('flat and sloping ground without drag, worked in closed form [derived]', () => {
  test('off a 0.9 m lip at 30° and 7 m/s to flat ground', () => {
    const it = kept(flight({ speed_m_s: 7, exit_rad: rad(30), drop_m: 0.9 }));
    near(it.time_s, 0.914509, 6);
    near(it.distance_m, 5.54392, 6);
    near(it.landing_speed_m_s, 8.16407, 6);
    near(deg(it.landing_rad), 42.0514, 6);
    near(it.rise_m, 0.624576, 6);
    near(it.fall_height_m, 1.52458, 6);
  });

  test('the same at lip level onto a 20° slope', () => {
    const it = kept(flight({ speed_m_s: 7, exit_rad: rad(30), drop_m: 0, slope_rad: rad(20) }));
    near(it.time_s, 0.713801, 6);
    near(it.distance_m, 4.32719, 6);
    near(it.landing_speed_m_s, 7, 6);
    near(deg(it.landing_rad), 30, 6);
    near(it.fall_height_m, 0.0753331, 6);
  });

  test('the least slope that brings the fall height down to a wanted one', () => {
    for (const [wanted, slope] of [
      [0.3, 24.7668],
      [0.5, 19.4959],
      [1, 9.2001],
      [1.5, 0.4169],
    ] as const) {
      const it = kept(flight({ speed_m_s: 7, exit_rad: rad(30), drop_m: 0.9, slope_rad: rad(slope) }));
      near(it.fall_height_m, wanted, 5);
    }
  });

  test('over a 3 m gap onto a 25° slope', () => {
    const landing = { exit_rad: rad(30), drop_m: 0, gap_m: 3, slope_rad: rad(25) };
    const at6 = kept(flight({ ...landing, speed_m_s: 6 }));
    near(at6.time_s, 0.696171, 6);
    near(at6.distance_m, 3.61741, 6);
    near(at6.landing_speed_m_s, 6.45343, 6);
    near(deg(at6.landing_rad), 36.3726, 6);
    near(at6.fall_height_m, 0.0825651, 6);
    for (const [speed_m_s, distance, fall] of [
      [6.5, 4.89935, 0.29639],
      [7, 6.1046, 0.527321],
      [7.5, 7.33959, 0.775358],
    ] as const) {
      const it = kept(flight({ ...landing, speed_m_s }));
      near(it.distance_m, distance, 6);
      near(it.fall_height_m, fall, 6);
    }
  });

  test('the speed that just makes 3 m at lip level, at five angles', () => {
    for (const [exit, speed] of [
      [20, 6.765302],
      [25, 6.197178],
      [30, 5.828485],
      [35, 5.59536],
      [40, 5.465693],
    ] as const)
      near(speedThrough(3, 0, rad(exit), 0) ?? 0, speed, 7);
  });

  test('a first jump 11 m long at 15.6 m/s (figures of the sport press [found]) is flown at 13.156° in 0.7241 s', () => {
    const it = kept(flight({ speed_m_s: 15.6, exit_rad: rad(13.156), drop_m: 0 }));
    near(it.distance_m, 11, 4);
    near(it.time_s, 0.7241, 4);
  });
});

describe('textbook ballistics, each formula written out again [textbook]', () => {
  const cases = [
    [5, 20, 0],
    [7.25, 40, 0.585],
    [9, 45, 1.2],
    [6, 60, -0.4],
  ] as const;

  test.each(cases)('%d m/s at %d° with the ground %d m below', (v, exit, h) => {
    const it = kept(flight({ speed_m_s: v, exit_rad: rad(exit), drop_m: h }));
    const up = v * Math.sin(rad(exit));
    const ahead = v * Math.cos(rad(exit));
    const down = Math.sqrt(up ** 2 + 2 * G * h);
    expect(it.time_s).toBeCloseTo((up + down) / G, 10);
    expect(it.distance_m).toBeCloseTo((ahead * (up + down)) / G, 10);
    expect(it.landing_speed_m_s).toBeCloseTo(Math.sqrt(v * v + 2 * G * h), 10);
    expect(it.landing_rad).toBeCloseTo(Math.atan2(down, ahead), 10);
    expect(it.rise_m).toBeCloseTo(up ** 2 / (2 * G), 10);
    // The flat-ground identity: as hard as a drop from the crest.
    expect(it.fall_height_m).toBeCloseTo(h + up ** 2 / (2 * G), 10);
    // The slope of the path at a point of it needs no speed.
    expect(Math.tan(it.landing_rad)).toBeCloseTo(Math.tan(rad(exit)) + (2 * h) / it.distance_m, 9);
  });

  test('level ground: range and its growth with speed', () => {
    const range = (v: number, exit: number) =>
      kept(flight({ speed_m_s: v, exit_rad: rad(exit), drop_m: 0 })).distance_m;
    expect(range(7, 30)).toBeCloseTo((49 * Math.sin(rad(60))) / G, 10);
    // Landing shift per km/h of exit speed [derived].
    for (const [v, at20, at30, at45] of [
      [5, 0.182, 0.245, 0.283],
      [8, 0.291, 0.392, 0.453],
      [10, 0.364, 0.491, 0.567],
    ] as const)
      for (const [exit, shift] of [
        [20, at20],
        [30, at30],
        [45, at45],
      ] as const)
        expect((range(v + 1e-4, exit) - range(v - 1e-4, exit)) / 2e-4 / 3.6).toBeCloseTo(shift, 3);
  });

  test('onto a 25° slope from the lip a km/h of exit speed shifts the landing farther than on level ground', () => {
    const range = (v: number) =>
      kept(flight({ speed_m_s: v, exit_rad: rad(30), drop_m: 0, gap_m: 0, slope_rad: rad(25) })).distance_m;
    // Landing shift per km/h [derived].
    for (const [v, shift] of [
      [5, 0.443],
      [7, 0.621],
      [10, 0.887],
    ] as const)
      expect((range(v + 1e-4) - range(v - 1e-4)) / 2e-4 / 3.6).toBeCloseTo(shift, 3);
  });
});

describe('drag', () => {
  const drag = { mass_kg: 85, drag_area_m2: 0.5 };

  test('10 m/s at 30° from 0.9 m, 85 kg and 0.5 m², by DOP853 [derived]', () => {
    const it = kept(flight({ speed_m_s: 10, exit_rad: rad(30), drop_m: 0.9, ...drag }));
    near(it.time_s, 1.171708496, 10);
    near(it.distance_m, 9.95626933, 9);
    near(it.landing_speed_m_s, 10.5425, 6);
    near(deg(it.landing_rad), 37.7785, 6);
    near(it.rise_m, 1.26009, 6);
  });

  test('slower and faster, by DOP853 [derived]', () => {
    const at7 = kept(flight({ speed_m_s: 7, exit_rad: rad(30), drop_m: 0.9, ...drag }));
    near(at7.distance_m, 5.48068, 6);
    near(at7.time_s, 0.913619, 6);
    near(kept(flight({ speed_m_s: 15, exit_rad: rad(30), drop_m: 0.9, ...drag })).distance_m, 20.3016, 6);
    near(kept(flight({ speed_m_s: 15, exit_rad: rad(30), drop_m: 0.9 })).distance_m, 21.3224, 6);
  });
});

describe('from ramp to landing [derived]', () => {
  test('two wheels on a curve lag by half the angle their wheelbase takes', () => {
    for (const [radius, lag] of [
      [1.8, 16.1],
      [2.5, 11.5],
      [3.5, 8.2],
    ] as const)
      expect(deg(kept(wheelLag(1, radius, 0)))).toBeCloseTo(lag, 0);
    expect(deg(kept(wheelLag(1, 2.5, 0)))).toBeCloseTo(deg(Math.asin(0.2)), 9);
  });

  test('a 0.9 m high 25° landing behind 3 m leaves a window of 1.25 km/h at the lip', () => {
    const it = kept(
      speedWindow({
        radius_m: 2.5,
        exit_rad: rad(30),
        gap_m: 3,
        drop_m: 0,
        slope_rad: rad(25),
        landing_m: 1.930056,
      }),
    );
    near(it.exit.least_m_s, 5.960976, 7);
    near(it.exit.most_m_s, 6.307976, 7);
    expect(it.narrow).toBe(true);
  });

  test('the window of a 2.5 m × 40° ramp from knuckle + 0.5 to + 2.5 m, behind a 2.5 m gap', () => {
    const ramp = {
      radius_m: 2.5,
      exit_rad: rad(40),
      gap_m: 2.5,
      drop_m: 0,
      slope_rad: rad(25),
      landing_m: 3,
    };
    const it = kept(speedWindow(ramp));
    near(it.exit.least_m_s, 5.2289, 6);
    near(it.exit.most_m_s, 6.24206, 6);
    near(it.entry.least_m_s, 6.23001, 6);
    near(it.entry.most_m_s, 7.10175, 6);
    near(it.bare_entry_m_s, 6.030459, 7);
    expect(it.width_m_s * 3.6).toBeCloseTo(3.138, 3);
    expect(it.narrow).toBe(false);
  });

  test('clearing 3 m onto 25° as a bike that turns asks more than a point does', () => {
    const it = kept(
      clearSpeed({
        exit_rad: rad(30),
        gap_m: 3,
        drop_m: 0,
        slope_rad: rad(25),
        body_height_m: 0.9,
        wheelbase_m: 1,
        past_m: 0,
      }),
    );
    near(it.point_m_s, 5.828, 4);
    near(it.rear_wheel_m_s, 6.05, 4);
    near(it.mid_wheelbase_m_s, 6.641, 4);
  });

  test('a landing of even fall height, by DOP853 backwards from its end', () => {
    const surface = (exit: number, fall: number, x: number, y: number, near_m: number) => {
      const points = kept(
        landingSurface({ exit_rad: rad(exit), fall_height_m: fall, end: { x_m: x, y_m: y }, near_m }),
      );
      return points.at(-1) ?? { x_m: 0, y_m: 0, slope_rad: 0 };
    };
    for (const [x, y, slope] of [
      [5, -0.821357, -18.3664],
      [4, -0.537974, -13.1525],
      [3, -0.356407, -7.3018],
      [2, -0.284684, -0.7797],
      [1.5, -0.293143, 2.7501],
    ] as const) {
      const at = surface(30, 0.5, 6, -1.2, x);
      expect(at.y_m).toBeCloseTo(y, 6);
      expect(deg(at.slope_rad)).toBeCloseTo(slope, 3);
    }
    for (const [x, y] of [
      [5, -0.993571],
      [4, -0.851388],
      [3, -0.777233],
      [2, -0.775904],
    ] as const)
      expect(surface(30, 1, 6, -1.2, x).y_m).toBeCloseTo(y, 6);
    for (const [x, y] of [
      [7, -1.540069],
      [5, -0.834855],
      [3, -0.438616],
      [2, -0.366964],
    ] as const)
      expect(surface(25, 0.5, 8, -2, x).y_m).toBeCloseTo(y, 6);
  });

  test('on that landing a flight of any speed comes down as hard as was wanted', () => {
    const points = kept(
      landingSurface({ exit_rad: rad(30), fall_height_m: 0.5, end: { x_m: 6, y_m: -1.2 }, near_m: 2 }),
    );
    for (const { x_m, y_m, slope_rad } of points.filter((_, n) => n % 50 === 0)) {
      const speed_m_s = speedThrough(x_m, y_m, rad(30), 0) ?? 0;
      const it = kept(flight({ speed_m_s, exit_rad: rad(30), drop_m: -y_m, slope_rad: -slope_rad }));
      expect(it.distance_m).toBeCloseTo(x_m, 9);
      expect(it.fall_height_m).toBeCloseTo(0.5, 6);
    }
  });
});

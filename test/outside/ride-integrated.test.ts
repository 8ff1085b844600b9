import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { climb } from '../../src/reckon/ride/climb.ts';
import { flight } from '../../src/reckon/ride/flight.ts';
import { runIn } from '../../src/reckon/ride/run-in.ts';
import { kept } from '../quantity/expect-outcome.ts';
import { integrated, type Slope } from './odex.ts';

// Only the equations of motion are ours [derived]; they are integrated by ODEX, a general-purpose library.

const G = 9.80665;
const AIR = 1.225;
const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/** Where `at` crosses nothing after `from`, looked for in strides and then by halving the last one. */
const crossing = (at: (t: number) => number, from: number, stride: number): number => {
  let [before, after] = [from, from + stride];
  while (at(after) > 0) [before, after] = [after, after + stride];
  for (let n = 0; n < 60; n++) {
    const middle = (before + after) / 2;
    if (at(middle) > 0) before = middle;
    else after = middle;
  }
  return (before + after) / 2;
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a flight with drag, by ODEX', () => {
  const flights = fc.record({
    speed_m_s: between(3, 16),
    exit_rad: between(rad(8), rad(60)),
    drop_m: between(0, 1.5),
    // From the knuckle down the slope; level where there is none.
    gap_m: fc.option(between(0, 1.5), { nil: undefined }),
    slope_rad: between(0, rad(35)),
    mass_kg: between(40, 150),
    drag_area_m2: between(0.3, 0.8),
    air_kg_m3: between(0.9, 1.3),
  });

  const flown = (run: Parameters<typeof flight>[0]) => {
    const k = ((run.air_kg_m3 ?? AIR) * (run.drag_area_m2 ?? 0)) / (2 * (run.mass_kg ?? 1));
    const slope: Slope = (_, [, , u = 0, w = 0]) => {
      const pull = k * Math.hypot(u, w);
      return [u, w, -pull * u, -G - pull * w];
    };
    const launch = [0, 0, run.speed_m_s * Math.cos(run.exit_rad), run.speed_m_s * Math.sin(run.exit_rad)];
    const at = (t: number) => integrated(slope, launch, 0, t);
    const fall = run.gap_m === undefined ? 0 : Math.tan(run.slope_rad ?? 0);
    const over = (t: number): number => {
      const [x = 0, y = 0] = at(t);
      return y + run.drop_m + fall * (x - (run.gap_m ?? 0));
    };
    // Over the crest first: a landing is on the way down.
    const crest = crossing(t => at(t)[3] ?? 0, 0, 0.1);
    const time = crossing(over, crest, 0.1);
    const [x = 0, , u = 0, w = 0] = at(time);
    const speed = Math.hypot(u, w);
    const down = Math.atan2(-w, u);
    return {
      time,
      x,
      speed,
      down,
      rise: at(crest)[1] ?? 0,
      fall: (speed * Math.sin(down - (run.slope_rad ?? 0))) ** 2 / (2 * G),
    };
  };

  test('comes down when, where and as hard as the integrator says', () => {
    fc.assert(
      fc.property(flights, ({ gap_m, ...all }) => {
        const run = gap_m === undefined ? all : { ...all, gap_m };
        const they = flown(run);
        fc.pre(they.x > (gap_m ?? 0));
        const it = kept(flight(run));
        expect(Math.abs(it.time_s - they.time)).toBeLessThan(1e-8);
        expect(Math.abs(it.distance_m - they.x)).toBeLessThan(1e-8);
        expect(Math.abs(it.landing_speed_m_s - they.speed)).toBeLessThan(1e-8);
        expect(Math.abs(it.landing_rad - they.down)).toBeLessThan(1e-8);
        expect(Math.abs(it.rise_m - they.rise)).toBeLessThan(1e-8);
        expect(Math.abs(it.fall_height_m - they.fall)).toBeLessThan(1e-7);
      }),
      { numRuns: 40 },
    );
  });

  test('drag is felt: without it the same flights go farther by more than the tolerance', () => {
    fc.assert(
      fc.property(flights, ({ gap_m: _, mass_kg, drag_area_m2, air_kg_m3, ...bare }) => {
        const dragged = flown({ ...bare, mass_kg, drag_area_m2, air_kg_m3 });
        expect(kept(flight(bare)).distance_m - dragged.x).toBeGreaterThan(1e-5);
      }),
      { numRuns: 10 },
    );
  });
});

/** dv²/ds of a rider who rolls on a line that rises at an angle and presses him at a radius (infinite where it is straight). */
const rolled = (rise: (s: number) => number, radius: number, rolling: number, drag: number): Slope => {
  return (s, [square = 0]) => [
    -2 * G * Math.sin(rise(s)) - 2 * rolling * (G * Math.cos(rise(s)) + square / radius) - drag * square,
  ];
};

test('a climb with losses ends at the speed that ODEX gives', () => {
  fc.assert(
    fc.property(
      fc.record({
        speed_m_s: between(6, 14),
        radius_m: between(1.5, 6),
        exit_rad: between(rad(5), rad(50)),
        mass_kg: between(40, 150),
        rolling: between(0, 0.05),
        drag_area_m2: between(0, 0.8),
        air_kg_m3: between(0.9, 1.3),
      }),
      run => {
        const { radius_m, exit_rad, rolling, mass_kg, drag_area_m2, air_kg_m3 } = run;
        const slope = rolled(s => s / radius_m, radius_m, rolling, (air_kg_m3 * drag_area_m2) / mass_kg);
        const [square = 0] = integrated(slope, [run.speed_m_s ** 2], 0, radius_m * exit_rad);
        fc.pre(square > 1);
        const it = kept(climb(run));
        expect(Math.abs(it.exit_speed_m_s - Math.sqrt(square))).toBeLessThan(1e-9);
        const pressed = Math.cos(exit_rad) + square / (G * radius_m);
        expect(Math.abs(it.load_factor_end - pressed)).toBeLessThan(1e-9);
      },
    ),
    { numRuns: 100 },
  );
});

test('rolled down again by ODEX, a run-in comes to the ramp at the speed asked', () => {
  fc.assert(
    fc.property(
      fc.record({
        speed_m_s: between(2, 11),
        slope_rad: between(rad(6), rad(35)),
        flat_m: between(0, 12),
        mass_kg: between(40, 150),
        rolling: between(0, 0.04),
        drag_area_m2: between(0, 0.8),
      }),
      run => {
        const answer = runIn(run);
        fc.pre(answer.ok);
        const it = kept(answer);
        const drag = (AIR * run.drag_area_m2) / run.mass_kg;
        const down = rolled(() => -run.slope_rad, Number.POSITIVE_INFINITY, run.rolling, drag);
        const level = rolled(() => 0, Number.POSITIVE_INFINITY, run.rolling, drag);
        const [foot = 0] = integrated(down, [0], 0, it.slope_length_m);
        const [ramp = 0] = run.flat_m > 0 ? integrated(level, [foot], 0, run.flat_m) : [foot];
        expect(Math.abs(Math.sqrt(foot) - it.foot_speed_m_s)).toBeLessThan(1e-8);
        expect(Math.abs(Math.sqrt(ramp) - run.speed_m_s)).toBeLessThan(1e-8);
      },
    ),
    { numRuns: 100 },
  );
});

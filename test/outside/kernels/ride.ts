import { climb } from '../../../src/reckon/ride/climb.ts';
import { flight } from '../../../src/reckon/ride/flight.ts';
import { landingSurface } from '../../../src/reckon/ride/landing-surface.ts';
import { runIn } from '../../../src/reckon/ride/run-in.ts';
import { stiffRider } from '../../../src/reckon/ride/stiff-rider.ts';
import { deg, type KernelCase, kept, rad } from '../kernel-case.ts';
import { integrated } from '../odex.ts';

const G = 9.80665;

/** Run-in, ramp, flight, landing. Nothing published to more digits was to be had: see flight, climb and run-in.test.ts. */
export const RIDE: readonly KernelCase[] = [
  {
    kernel: 'ride/flight',
    source: 'a jump in the sport press [found]',
    about: '15.6 m/s at 13.156°: 11 m',
    unit: '%',
    tolerance: 0.1,
    compared: () => [[kept(flight({ speed_m_s: 15.6, exit_rad: rad(13.156), drop_m: 0 })).distance_m, 11]],
  },
  {
    kernel: 'ride/flight',
    source: 'textbook ballistics, written out [derived]',
    about: 'time, reach and speed of four jumps',
    unit: '%',
    tolerance: 1e-8,
    compared: () =>
      (
        [
          [5, 20, 0],
          [7.25, 40, 0.585],
          [9, 45, 1.2],
          [6, 60, -0.4],
        ] as const
      ).flatMap(([v, exit, drop_m]) => {
        const it = kept(flight({ speed_m_s: v, exit_rad: rad(exit), drop_m }));
        const up = v * Math.sin(rad(exit));
        const time = (up + Math.sqrt(up ** 2 + 2 * G * drop_m)) / G;
        return [
          [it.time_s, time],
          [it.distance_m, v * Math.cos(rad(exit)) * time],
          [it.landing_speed_m_s, Math.sqrt(v * v + 2 * G * drop_m)],
        ] as const;
      }),
  },
  {
    kernel: 'ride/flight',
    source: 'DOP853 of SciPy, rtol 1e-12 [derived]',
    about: '10 m/s, 30°, 0.9 m down, 85 kg, 0.5 m²',
    unit: '%',
    tolerance: 1e-6,
    compared: () => {
      const run = { speed_m_s: 10, exit_rad: rad(30), drop_m: 0.9, mass_kg: 85, drag_area_m2: 0.5 };
      const it = kept(flight(run));
      return [
        [it.time_s, 1.171708496],
        [it.distance_m, 9.95626933],
      ];
    },
  },
  {
    kernel: 'ride/flight',
    source: 'ODEX, npm package odex 2.0.4 [derived]',
    about: 'three flights with drag, where they land',
    unit: 'm',
    tolerance: 1e-8,
    compared: () =>
      [
        { speed_m_s: 10, exit_rad: rad(30), drop_m: 0.9, mass_kg: 85, drag_area_m2: 0.5, air_kg_m3: 1.225 },
        { speed_m_s: 6.2, exit_rad: rad(48), drop_m: -0.3, mass_kg: 60, drag_area_m2: 0.7, air_kg_m3: 1.225 },
        { speed_m_s: 14, exit_rad: rad(20), drop_m: 2, mass_kg: 70, drag_area_m2: 0.6, air_kg_m3: 1.1 },
      ].flatMap(run => {
        const it = kept(flight(run));
        const k = (run.air_kg_m3 * run.drag_area_m2) / (2 * run.mass_kg);
        const launch = [0, 0, run.speed_m_s * Math.cos(run.exit_rad), run.speed_m_s * Math.sin(run.exit_rad)];
        const [x = 0, y = 0] = integrated(
          (_, [, , u = 0, w = 0]) => {
            const pull = k * Math.hypot(u, w);
            return [u, w, -pull * u, -G - pull * w];
          },
          launch,
          0,
          it.time_s,
        );
        return [
          [it.distance_m, x],
          [-run.drop_m, y],
        ] as const;
      }),
  },
  {
    kernel: 'ride/climb',
    source: 'DOP853 of SciPy, rtol 1e-12 [derived]',
    about: '8 m/s into 2.5 m × 40°, with losses',
    unit: '%',
    tolerance: 1e-4,
    compared: () => {
      const ramp = { speed_m_s: 8, radius_m: 2.5, exit_rad: rad(40) };
      const plain = kept(climb(ramp));
      const slowed = kept(climb({ ...ramp, rolling: 0.006, mass_kg: 90, drag_area_m2: 0.5 }));
      return [
        [plain.exit_speed_m_s, 7.247648],
        [plain.load_factor_start, 3.610474],
        [plain.load_factor_end, 2.908607],
        [slowed.exit_speed_m_s, 7.150965],
      ];
    },
  },
  {
    kernel: 'ride/stiff-rider',
    source: 'rigid body on an arc, worked apart [derived]',
    about: '8 m/s into 2.5 m × 40°, body at 0.9 m',
    unit: '%',
    tolerance: 1e-4,
    compared: () => {
      const it = kept(
        stiffRider({
          speed_m_s: 8,
          radius_m: 2.5,
          exit_rad: rad(40),
          body_height_m: 0.9,
          gyration_m: 0.5,
        }),
      );
      return [
        [it.exit_speed_m_s, 7.184526],
        [it.load_factor_start, 4.715977],
        [it.pitch_rad_s, 4.490329],
      ];
    },
  },
  {
    kernel: 'ride/run-in',
    source: 'DOP853 of SciPy, rtol 1e-12 [derived]',
    about: 'drop for 7 m/s, with losses',
    unit: '%',
    tolerance: 1e-3,
    compared: () => {
      const bike = { slope_rad: rad(15), flat_m: 5, rolling: 0.006, mass_kg: 90, drag_area_m2: 0.5 };
      return [[kept(runIn({ ...bike, speed_m_s: 7 })).drop_m, 2.77395]];
    },
  },
  {
    kernel: 'ride/landing-surface',
    source: 'DOP853 of SciPy, backwards [derived]',
    about: 'landing, 0.5 m fall height: slope at 3 m',
    unit: '°',
    tolerance: 1e-3,
    compared: () => {
      const points = kept(
        landingSurface({ exit_rad: rad(30), fall_height_m: 0.5, end: { x_m: 6, y_m: -1.2 }, near_m: 3 }),
      );
      return [[deg(points.at(-1)?.slope_rad ?? Number.NaN), -7.3018]];
    },
  },
];

import { dew } from '../../../src/reckon/coating/dew.ts';
import { paint } from '../../../src/reckon/coating/paint.ts';
import { frequencyMultiplier } from '../../../src/reckon/handling/frequency.ts';
import { lift } from '../../../src/reckon/handling/lift.ts';
import { standUp } from '../../../src/reckon/handling/stand-up.ts';
import { type KernelCase, kept, rad } from '../kernel-case.ts';

/** The manual's inch is 2.5 cm of the metric form, its 51 lb are 23 kg: see lifting.test.ts. */
const limit_lb = (H: number, V: number): number =>
  kept(
    lift({
      load_kg: (26 * 23) / 51,
      hands_from_body_mm: H * 25,
      hands_height_mm: V * 25,
      raise_mm: 37 * 25,
      twist_rad: 0,
      lifts_per_min: 3,
      hours: 1,
      grip: 'fair',
    }),
  ).limit_kg /
  (23 / 51);

const ft2_gal = (solids_pct: number, film_um: number, loss_pct: number): number =>
  (kept(paint({ area_m2: 1, solids_pct, film_um, coats: 1, loss_pct })).m2_per_litre * 3.785411784) /
  0.3048 ** 2;

/** Lifting and paint. The sources in full stand in lifting, dew-point and paint.test.ts. */
export const HANDLING_AND_COATING: readonly KernelCase[] = [
  {
    kernel: 'handling/lift',
    source: 'NIOSH 94-110, example 4 [found; memory]',
    about: 'package inspection: 34.9 and 15.2 lb',
    unit: '%',
    tolerance: 2.5,
    compared: () => [
      [limit_lb(10, 22), 34.9],
      [limit_lb(20, 59), 15.2],
    ],
  },
  {
    kernel: 'handling/frequency',
    source: 'NIOSH 94-110, table 5 [found]',
    about: 'hands below 75 cm, 1, 2 and 8 hours',
    unit: '',
    tolerance: 0,
    compared: () =>
      (
        [
          [0.2, 1, 0.95, 0.85],
          [1, 0.94, 0.88, 0.75],
          [4, 0.84, 0.72, 0.45],
          [7, 0.7, 0.42, 0.22],
          [10, 0.45, 0.26, 0],
        ] as const
      ).flatMap(([per_min, ...printed]) =>
        printed.map((value, n) => [frequencyMultiplier(per_min, [1, 2, 8][n] ?? 0, 700), value] as const),
      ),
  },
  {
    kernel: 'handling/stand-up',
    source: 'moments about the foot, by hand [derived]',
    about: '120 kg at 0, 30, 45, 60°: 54 to 6.2 kg',
    unit: 'kg',
    tolerance: 0.05,
    compared: () => {
      const { holds } = kept(standUp({ mass_kg: 120, along_mm: 900, above_mm: 400, hands_mm: 2000 }));
      return (
        [
          [0, 54],
          [30, 34.8],
          [45, 21.2],
          [60, 6.2],
        ] as const
      ).map(([angle, kg]) => [
        (holds.find(one => Math.abs(one.raised_rad - rad(angle)) < 1e-9)?.force_N ?? Number.NaN) / 9.80665,
        kg,
      ]);
    },
  },
  {
    kernel: 'coating/dew',
    source: "a paint maker's sheet 1650 [found]",
    about: 'dew points at 5 to 30 °C, 50 to 90 %',
    unit: '°C',
    tolerance: 0.11,
    compared: () =>
      (
        [
          [5, 80, 1.8],
          [10, 60, 2.6],
          [10, 90, 8.4],
          [15, 50, 4.7],
          [15, 85, 12.5],
          [20, 60, 12],
          [25, 50, 13.8],
          [30, 60, 21.4],
        ] as const
      ).map(([air_C, humidity_pct, printed]) => [kept(dew({ air_C, humidity_pct })).dew_C, printed]),
  },
  {
    kernel: 'coating/paint',
    source: 'worked examples of coating guides [found]',
    about: '208.5, 194.5 and 1604.2 ft²/gal',
    unit: '%',
    tolerance: 0.1,
    compared: () => [
      [ft2_gal(65, 5 * 25.4, 0), 208.5],
      [ft2_gal(52, 1.5 * 25.4, 65), 194.5],
      [ft2_gal(100, 25.4, 0), 1604.2],
    ],
  },
];

import { fitCircle } from '../../../src/reckon/rail/circle.ts';
import { offsetsAt } from '../../../src/reckon/rail/forward.ts';
import { hotSteel } from '../../../src/reckon/rail/hot-steel.ts';
import { updatePull } from '../../../src/reckon/rail/pull.ts';
import { evenSlits } from '../../../src/reckon/rail/rail-plan.ts';
import { distanceToPeak } from '../../../src/reckon/rail/soft-zone.ts';
import { greatestMoment, OVERHANG } from '../../../src/reckon/rail/supports.ts';
import { type Compared, type KernelCase, kept } from '../kernel-case.ts';

const circle = (points: readonly (readonly [number, number])[]) => {
  const { centre_mm, radius_mm, rms_mm } = kept(fitCircle(points));
  return [...centre_mm, radius_mm, rms_mm * Math.sqrt(points.length)];
};

const beside = (ours: readonly number[], published: readonly number[]): Compared =>
  published.map((value, k) => [ours[k] ?? Number.NaN, value]);

const R = 3000;
const bend_rad = Math.PI / 4;

/** The measured rail, and what heat does to it. The sources in full stand in circle, rail and weld-pull.test.ts. */
export const RAIL: readonly KernelCase[] = [
  {
    kernel: 'rail/circle',
    source: 'Gander et al., BIT 1994 [data found; memory]',
    about: 'six points: centre, radius, ‖d‖',
    unit: '',
    tolerance: 5e-5,
    compared: () =>
      beside(
        circle([
          [1, 7],
          [2, 6],
          [5, 8],
          [7, 7],
          [9, 5],
          [3, 7],
        ]),
        [4.7398, 2.9835, 4.7142, 1.108],
      ),
  },
  {
    kernel: 'rail/circle',
    source: 'Coope, JOTA 76, 1993 [memory]',
    about: 'eight points: centre, radius, ‖d‖',
    unit: '',
    tolerance: 5e-6,
    compared: () =>
      beside(
        circle([
          [0.7, 4],
          [3.3, 4.7],
          [5.6, 4],
          [7.5, 1.3],
          [6.4, -1.1],
          [4.4, -3],
          [0.3, -2.5],
          [-1.1, 1.3],
        ]),
        [3.04324, 0.74568, 4.10586, 0.54401],
      ),
  },
  {
    kernel: 'rail/soft-zone',
    source: 'AWS Welding Handbook, as quoted [found]',
    about: '730 and 430 °C in 5 mm at 720, 1080 J/mm',
    unit: 'mm',
    tolerance: 0.05,
    compared: () =>
      (
        [
          [720, 25, 730, 5.9],
          [720, 200, 430, 28.4],
          [720, 25, 430, 14.23],
          [1080, 25, 430, 21.34],
        ] as const
      ).map(([net_heat_J_mm, start_C, peak, distance]) => [
        distanceToPeak({ wall_mm: 5, net_heat_J_mm, start_C }, peak) ?? Number.NaN,
        distance,
      ]),
  },
  {
    kernel: 'rail/hot-steel',
    source: 'EN 1993-1-2 table 3.1, four copies [found]',
    about: 'yield, limit, modulus at 200 to 1000 °C',
    unit: '',
    tolerance: 1e-9,
    compared: () =>
      (
        [
          [200, 1, 0.807, 0.9],
          [400, 1, 0.42, 0.7],
          [500, 0.78, 0.36, 0.6],
          [600, 0.47, 0.18, 0.31],
          [800, 0.11, 0.05, 0.09],
          [1000, 0.04, 0.025, 0.045],
        ] as const
      ).flatMap(([at, ...published]) => {
        const steel = hotSteel(at);
        return beside([steel.yield, steel.proportional, steel.modulus], published);
      }),
  },
  {
    kernel: 'rail/supports',
    source: 'Airy and Bessel points [found]',
    about: 'spacing over length, greatest moments',
    unit: '',
    tolerance: 5e-5,
    compared: () => [
      [1 - 2 * OVERHANG['ends level'], 0.57735],
      [1 - 2 * OVERHANG['least shortening'], 0.5594],
      [greatestMoment(OVERHANG['least moment']), 0.02145],
      [greatestMoment(OVERHANG['ends level']), 0.0223],
      [greatestMoment(OVERHANG['least shortening']), 0.0243],
      [greatestMoment(0.25), 0.03125],
    ],
  },
  {
    kernel: 'rail/forward',
    source: 'turns times levers, worked apart [derived]',
    about: 'lip of 25 slits 2 mrad too far: 55.4 mm',
    unit: 'mm',
    tolerance: 0.05,
    compared: () => {
      const plan = { radius_mm: R, bend_rad, slits_mm: evenSlits(R, bend_rad, 25) };
      const errors = new Array<number>(25).fill(0.002);
      return [[offsetsAt(plan, errors, { y_mm: 0, turn_rad: 0 }, [R * bend_rad])[0] ?? Number.NaN, 55.4]];
    },
  },
  {
    kernel: 'rail/pull',
    source: 'log-normal belief, by hand [derived]',
    about: '4.5 ± 0.6 believed, 6.2 read: 6.08 mrad',
    unit: 'mrad',
    tolerance: 0.005,
    compared: () => [[updatePull(4.5, 0.6, 6.2, 0.14).pull, 6.08]],
  },
];

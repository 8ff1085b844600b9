import { type ArcKnown, arcFrom } from '../../../src/reckon/curve/arc.ts';
import { layoutOf } from '../../../src/reckon/curve/layout.ts';
import { linesOf } from '../../../src/reckon/curve/lines.ts';
import { slitClose, slitPlan } from '../../../src/reckon/curve/slits.ts';
import { rootBetween } from '../../../src/reckon/numeric/root-between.ts';
import { FOOT, INCH, type KernelCase, kept, rad } from '../kernel-case.ts';

const arc = (known: ArcKnown) => kept(arcFrom(known));

/** Roots, arcs and what is marked from them. The sources in full stand in arc, layout, lines and slits.test.ts. */
export const CURVE: readonly KernelCase[] = [
  {
    kernel: 'numeric/root-between',
    source: "Newton's own example of 1669 [memory]",
    about: 'x³ − 2x − 5 = 0: 2.0945514815',
    unit: '',
    tolerance: 1e-9,
    compared: () => [
      [
        rootBetween({ of: x => x ** 3 - 2 * x - 5, slope: x => 3 * x * x - 2, low: 2, high: 3 }) ?? 0,
        2.0945514815,
      ],
    ],
  },
  {
    kernel: 'curve/arc',
    source: 'railway quiz text, v = 125 C²/R [found]',
    about: 'versines, R 200 to 1750 m, chords to 30 m',
    unit: 'mm',
    tolerance: 0.5,
    compared: () =>
      (
        [
          [200, 20],
          [400, 20],
          [875, 20],
          [1750, 20],
          [300, 30],
          [600, 10],
        ] as const
      ).map(([R_m, C_m]) => [
        arc({ radius_mm: R_m * 1000, exit_rad: 2 * Math.asin(C_m / 2 / R_m) }).sagitta_mm,
        (125 * C_m ** 2) / R_m,
      ]),
  },
  {
    kernel: 'curve/arc',
    source: 'US Army TM 5-628 [found]',
    about: '62 ft string, 1 in a degree, 1 to 8°',
    unit: 'in',
    tolerance: 0.0625,
    compared: () =>
      [1, 2, 4, 8].map(degree => {
        const { radius_mm } = arc({ exit_rad: rad(degree), arc_mm: 100 * FOOT });
        const { sagitta_mm } = arc({ radius_mm, exit_rad: 2 * Math.asin((31 * FOOT) / radius_mm) });
        return [sagitta_mm / INCH, degree];
      }),
  },
  {
    kernel: 'curve/arc',
    source: 'course text after Schofield §10 [found]',
    about: 'halving, quartering: 20 m, 5 m, 1.25 m',
    unit: '%',
    tolerance: 0.1,
    compared: () => {
      const { radius_mm, exit_rad } = arc({ chord_mm: 800_000, sagitta_mm: 20_000 });
      const part = (of: number) => arc({ radius_mm, exit_rad: exit_rad / of }).sagitta_mm / 1000;
      return [
        [part(1), 20],
        [part(2), 5],
        [part(4), 1.25],
      ];
    },
  },
  {
    kernel: 'curve/layout',
    source: 'B.E. Surveying practical 1 [found, derived]',
    about: 'R 50 m, chord 30 m, ordinates every 5 m',
    unit: 'mm',
    tolerance: 0.5,
    compared: () => {
      const points = kept(
        layoutOf({
          radius_mm: 50_000,
          exit_rad: 2 * Math.asin(15 / 50),
          from: 'chord',
          at_mm: [0, 5000, 10_000, 15_000],
        }),
      );
      return [2303, 2052, 1293, 0].map((printed, n) => [points[n]?.y_mm ?? Number.NaN, printed]);
    },
  },
  {
    kernel: 'curve/lines',
    source: 'parallel circles [derived]',
    about: 'lip of four lines of a rail, R 3000, 45°',
    unit: 'mm',
    tolerance: 0.005,
    compared: () => {
      const lines = kept(
        linesOf({ radius_mm: 3000, exit_rad: Math.PI / 4, deck_mm: 18, depth_mm: 40, wall_mm: 3 }),
      );
      return (
        [
          [2121.32, 878.68],
          [2134.05, 865.95],
          [2161.27, 838.73],
          [2162.33, 837.67],
        ] as const
      ).flatMap(([x, y], n) => [
        [lines[n]?.lip_x_mm ?? Number.NaN, x] as const,
        [lines[n]?.lip_y_mm ?? Number.NaN, y] as const,
      ]);
    },
  },
  {
    kernel: 'curve/slits',
    source: 'slit table, kerf over lever [derived]',
    about: 'closing angles of six tubes and kerfs',
    unit: 'mrad',
    tolerance: 0.05,
    compared: () =>
      (
        [
          [40, 3, 1.0, 25.97],
          [40, 3, 1.2, 31.17],
          [40, 2, 1.2, 30.77],
          [40, 3, 2.8, 72.73],
          [38.1, 3.05, 1.5, 41.0],
          [50.8, 3.05, 2.8, 56.8],
        ] as const
      ).map(([depth, wall, kerf, mrad]) => [slitClose(kerf, 0, depth, wall) * 1000, mrad]),
  },
  {
    kernel: 'curve/slits',
    source: 'the marks bent one by one [derived]',
    about: 'end of a rail of 25 slits, on hinge line',
    unit: 'mm',
    tolerance: 0.2,
    compared: () => {
      const plan = kept(
        slitPlan({
          hingeRadius_mm: 3056.5,
          turn_rad: rad(45),
          depth_mm: 40,
          wall_mm: 3,
          kerf_mm: 1.26,
          gap_mm: 0,
          pull_rad: 0,
          count: 25,
        }),
      );
      let [x, y, slope, at] = [0, 0, 0, 0];
      for (const mark of [...plan.marks_mm, plan.cutLength_mm]) {
        x += (mark - at) * Math.cos(slope);
        y += (mark - at) * Math.sin(slope);
        at = mark;
        if (mark < plan.cutLength_mm) slope += plan.close_rad;
      }
      return [
        [x, 3056.5 * Math.sin(rad(45))],
        [y, 3056.5 * (1 - Math.cos(rad(45)))],
      ];
    },
  },
];

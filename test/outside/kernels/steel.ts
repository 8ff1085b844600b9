import { angleSection } from '../../../src/reckon/steel/bar-section.ts';
import { tubeSection } from '../../../src/reckon/steel/section.ts';
import { type Compared, INCH, type KernelCase, kept } from '../kernel-case.ts';

/** Pound per foot in kg/m. */
const LB_FT = 0.45359237 / 0.3048;

// depth, width, nominal wall (in), lb/ft, A, Ix, Sx, Zx, rx of table rows.
const HSS = [
  [2, 2, 0.125, 3.05, 0.84, 0.486, 0.486, 0.584, 0.761],
  [2, 2, 0.25, 5.41, 1.51, 0.747, 0.747, 0.964, 0.704],
  [2, 1.5, 0.1875, 3.68, 1.02, 0.495, 0.495, 0.639, 0.697],
  [2.5, 1, 0.125, 2.63, 0.724, 0.503, 0.403, 0.532, 0.834],
  [3, 2, 0.25, 7.11, 1.97, 2.13, 1.42, 1.83, 1.04],
  [3, 3, 0.375, 12.17, 3.39, 3.78, 2.52, 3.25, 1.06],
] as const;

// depth, width, wall (mm), kg/m, A mm², I cm⁴, Wel cm³, Wpl cm³.
const METRIC = [
  [40, 40, 2, 2.306, 294, 6.94, 3.47, 4.13],
  [40, 40, 3, 3.303, 421, 9.32, 4.66, 5.72],
  [50, 50, 5, 6.56, 836, 27.04, 10.82, 13.7],
  [60, 60, 3, 5.187, 661, 35.13, 11.71, 13.95],
  [40, 20, 2, 1.68, 214, 4.05, 2.02, 2.61],
  [60, 40, 3, 4.25, 541, 25.38, 8.46, 10.53],
] as const;

// leg, thickness, root, toe (mm), kg/m, A mm², I cm⁴, W cm³.
const ANGLES = [
  [30, 3, 5, 2.5, 1.36, 174, 1.4, 0.65],
  [40, 4, 6, 3, 2.42, 308, 4.47, 1.55],
  [50, 5, 7, 3.5, 3.77, 480, 10.96, 3.05],
  [60, 6, 8, 4, 5.42, 691, 22.79, 5.29],
] as const;

const tube = (depth_mm: number, width_mm: number, wall_mm: number, rule: 'AISC' | 'EN10219') =>
  kept(tubeSection({ shape: depth_mm === width_mm ? 'square' : 'rect', depth_mm, width_mm, wall_mm, rule }));

export const STEEL: readonly KernelCase[] = [
  {
    kernel: 'steel/section',
    source: 'AISC Shapes Database, HSS [found]',
    about: 'six tubes: kg/m, A, I, S, Z, r',
    unit: '%',
    tolerance: 0.85,
    compared: () =>
      HSS.flatMap(([depth, width, wall, mass, area, inertia, elastic, plastic, gyration]): Compared => {
        const section = tube(depth * INCH, width * INCH, wall * INCH, 'AISC');
        return [
          [section.massPerM_kg / LB_FT, mass],
          [section.area_mm2 / INCH ** 2, area],
          [section.inertia_mm4 / INCH ** 4, inertia],
          [section.elastic_mm3 / INCH ** 3, elastic],
          [section.plastic_mm3 / INCH ** 3, plastic],
          [section.gyration_mm / INCH, gyration],
        ];
      }),
  },
  {
    kernel: 'steel/section',
    source: 'EN 10219-2, maker, merchant tables [found]',
    about: 'six tubes: kg/m, A, I, W, Wpl',
    unit: '%',
    tolerance: 0.4,
    compared: () =>
      METRIC.flatMap(([depth, width, wall, mass, area, inertia, elastic, plastic]): Compared => {
        const section = tube(depth, width, wall, 'EN10219');
        return [
          [section.massPerM_kg, mass],
          [section.area_mm2, area],
          [section.inertia_mm4 / 1e4, inertia],
          [section.elastic_mm3 / 1e3, elastic],
          [section.plastic_mm3 / 1e3, plastic],
        ];
      }),
  },
  {
    kernel: 'steel/bar-section',
    source: "EN 10056, a mill's table [found]",
    about: 'four equal angles: kg/m, A, I, W',
    unit: '%',
    tolerance: 0.6,
    compared: () =>
      ANGLES.flatMap(([leg, thickness, root, toe, mass, area, inertia, elastic]): Compared => {
        const angle = kept(
          angleSection({
            leg_mm: leg,
            otherLeg_mm: leg,
            thickness_mm: thickness,
            root_mm: root,
            toe_mm: toe,
          }),
        );
        return [
          [angle.massPerM_kg, mass],
          [angle.area_mm2, area],
          [angle.inertia_mm4 / 1e4, inertia],
          [angle.elastic_mm3 / 1e3, elastic],
        ];
      }),
  },
];

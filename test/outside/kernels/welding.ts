import { discSpeed } from '../../../src/reckon/welding/disc-speed.ts';
import { feedCurrent } from '../../../src/reckon/welding/feed-current.ts';
import { heatInput } from '../../../src/reckon/welding/heat.ts';
import { shade } from '../../../src/reckon/welding/shade.ts';
import { quickHandAmps } from '../../../src/reckon/welding/solid-wire-settings.ts';
import { type KernelCase, kept } from '../kernel-case.ts';

const IPM_m_min = 0.0254;

/** Heat, current, shades, discs. The sources in full stand in heat-input and the welding-settings tests. */
export const WELDING: readonly KernelCase[] = [
  {
    kernel: 'welding/heat',
    source: 'AWS D1.1, 60·V·A/(1000·S) [memory]',
    about: '19 V, 130 A, 12 in/min, no efficiency',
    unit: '%',
    tolerance: 1e-6,
    compared: () => [
      [
        kept(heatInput({ volts: 19, amps: 130, travel_mm_s: (12 * 25.4) / 60, process: 'gmaw' })).kJ_mm *
          31.75,
        (60 * 19 * 130) / (1000 * 12),
      ],
    ],
  },
  {
    kernel: 'welding/heat',
    source: "a maker's CO₂ butt table [found; derived]",
    about: '1.6 to 6 mm: 0.19 to 0.65 kJ/mm',
    unit: '%',
    tolerance: 6,
    compared: () =>
      (
        [
          [18.5, 100, 475, 0.19],
          [20.5, 145, 475, 0.3],
          [22.5, 177.5, 450, 0.43],
          [25, 245, 450, 0.65],
        ] as const
      ).map(([volts, amps, mm_min, kJ_mm]) => [
        kept(heatInput({ volts, amps, travel_mm_s: mm_min / 60, process: 'gmaw' })).kJ_mm,
        kJ_mm,
      ]),
  },
  {
    kernel: 'welding/feed-current',
    source: "a filler maker's GMAW guide [memory]",
    about: '0.9 mm wire, 175 to 300 in/min; a rule',
    unit: '%',
    tolerance: 9,
    compared: () =>
      (
        [
          [175, 120],
          [225, 130],
          [275, 160],
          [300, 175],
        ] as const
      ).map(([ipm, amps]) => [feedCurrent('gmaw', 0.9, ipm * IPM_m_min) ?? Number.NaN, amps]),
  },
  {
    kernel: 'welding/solid-wire-settings',
    source: "makers' short-arc butt tables [found]",
    about: "middles of 1.6 to 4.5 mm; a hand's rule",
    unit: '%',
    tolerance: 11.5,
    compared: () =>
      // Wall, and the middle of the table's amperes: CO₂, then 80/20.
      (
        [
          [1.6, 100],
          [2, 115],
          [2.3, 125],
          [3.2, 145],
          [4.5, 177.5],
          [1.6, 105],
          [2.3, 115],
          [3.2, 130],
          [4, 160],
        ] as const
      ).map(([wall, amps]) => [quickHandAmps(wall), amps]),
  },
  {
    kernel: 'welding/shade',
    source: '29 CFR 1910.133(a)(5) [found]',
    about: 'least shades of eight currents and rods',
    unit: 'shades',
    tolerance: 0,
    compared: () =>
      (
        [
          ['smaw', 2, 40, 7],
          ['smaw', 2.5, 80, 8],
          ['smaw', 3.2, 130, 8],
          ['smaw', 5, 200, 10],
          ['gmaw', 0, 50, 7],
          ['gmaw', 0, 120, 10],
          ['gmaw', 0, 200, 10],
          ['fcaw-s', 0, 120, 10],
        ] as const
      ).map(([process, rod, amps, least]) => [kept(shade(process, amps, rod)).least, least]),
  },
  {
    kernel: 'welding/disc-speed',
    source: 'a disc guide, 80 m/s [found; derived]',
    about: 'turns of discs, 100 to 355 mm',
    unit: '%',
    tolerance: 0.1,
    compared: () =>
      (
        [
          [100, 15_280],
          [115, 13_290],
          [125, 12_220],
          [150, 10_190],
          [180, 8490],
          [230, 6640],
          [300, 5090],
          [355, 4300],
        ] as const
      ).map(([disc_mm, rpm]) => [kept(discSpeed({ disc_mm, grinder_rpm: 4000 })).limit_rpm, rpm]),
  },
];

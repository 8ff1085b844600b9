import { GROUNDS } from '../../../src/reckon/strength/ground.ts';
import { filletStrength_MPa, jointWeld } from '../../../src/reckon/strength/joint-weld.ts';
import { entryFactor } from '../../../src/reckon/strength/loads.ts';
import { memberCapacity } from '../../../src/reckon/strength/member-check.ts';
import { passesAt } from '../../../src/reckon/strength/slit-section.ts';
import { standing } from '../../../src/reckon/strength/standing.ts';
import { EN_BOARDS, enBoard, NDS_BOARDS, ndsBoard } from '../../../src/reckon/strength/timber.ts';
import { tubeStrength } from '../../../src/reckon/strength/tube-strength.ts';
import { FOOT, INCH, type KernelCase, KIP, KSI, kept, rad } from '../kernel-case.ts';

const PSF = 47.880259;
const A500B = { yield_MPa: 46 * KSI, tensile_MPa: 58 * KSI };

/** Wall as sold, so that 0.93 of it is the design wall printed. */
const hss = (depth: number, width: number, designWall: number, fy: number) =>
  kept(
    tubeStrength(
      { depth_mm: depth * INCH, width_mm: width * INCH, wall_mm: (designWall / 0.93) * INCH },
      'AISC',
      { yield_MPa: fy * KSI, tensile_MPa: 58 * KSI },
    ),
  );

/** What a pinned strut of S235, 40 × 40 × 3, bears in kN. */
const strut = (length_mm: number): number => {
  const tube = { depth_mm: 40, width_mm: 40, wall_mm: 3 };
  const strength = kept(tubeStrength(tube, 'EN', { yield_MPa: 235, tensile_MPa: 360 }));
  return kept(memberCapacity(strength, length_mm, length_mm)).compression_N / 1000;
};

/** 110 kg at the lip of an 80 kg ramp. */
const atTheLip = () =>
  kept(
    standing({
      places: [
        {
          x_mm: 2500 * Math.sin(rad(40)),
          y_mm: 2500 * (1 - Math.cos(rad(40))),
          slope_rad: rad(40),
          normal_N: 3137.61,
        },
      ],
      along_share: 0,
      side_share: 0,
      weight_N: 784.53,
      centre_x_mm: 0.55 * 1606.969,
      front_x_mm: 0,
      rear_x_mm: 2500 * Math.sin(rad(40)),
      track_mm: 1200,
      deck_mm: 1200,
      friction: 0.4,
    }),
  );

/** Strength of tubes, welds, boards and ground. The sources in full stand in the tests named loads, deck-board, overturning, slit-section. */
export const STRENGTH: readonly KernelCase[] = [
  {
    kernel: 'strength/tube-strength',
    source: 'AISC Design Examples F.6, F.7 [found]',
    about: 'allowed moments: 4.435, 4.8, 37.9 kip·ft',
    unit: '%',
    tolerance: 0.45,
    compared: () => {
      const kipFoot = (tube: ReturnType<typeof hss>): number => tube.moment_Nmm / (KIP * FOOT);
      return [
        // Printed 4.44 by the one way and 4.43 by the other.
        [kipFoot(hss(3.5, 3.5, 0.116, 46)), 4.435],
        [kipFoot(hss(3.5, 3.5, 0.116, 50)), 4.8],
        [kipFoot(hss(10, 6, 0.174, 46)), 37.9],
      ];
    },
  },
  {
    kernel: 'strength/member-check',
    source: 'EN 1993-1-1 6.3.1 by hand [derived]',
    about: '40×40×3 pinned, 0.5 to 2 m: kN borne',
    unit: 'kN',
    tolerance: 0.15,
    compared: () => [90.9, 70.7, 49.3, 33.4].map((kN, k) => [strut(500 * (k + 1)), kN]),
  },
  {
    kernel: 'strength/joint-weld',
    source: 'AISC 360 J2 [found; line method memory]',
    about: '2 × 2 in, 1/8 in fillet: straight and bent',
    unit: '%',
    tolerance: 0.1,
    compared: () => {
      const weld = kept(
        jointWeld({
          standard: 'AISC',
          grade: A500B,
          depth_mm: 2 * INCH,
          width_mm: 2 * INCH,
          leg_mm: INCH / 8,
          thinnerWall_mm: 0.25 * INCH,
          electrode_MPa: 70 * KSI,
          proven: true,
        }),
      );
      return [
        [(weld.perMm_N * INCH) / KIP / 2, 0.928],
        [(weld.perMm_N * weld.length_mm) / KIP, 14.85],
        [(weld.perMm_N * weld.modulus_mm2) / (KIP * INCH), 9.9],
      ];
    },
  },
  {
    kernel: 'strength/joint-weld',
    source: 'EN 1993-1-8 4.5.3 [memory]',
    about: 'throat strength, S235, S275, S355',
    unit: 'MPa',
    tolerance: 0.5,
    compared: () =>
      (
        [
          [235, 360, 208],
          [275, 410, 223],
          [355, 490, 251],
        ] as const
      ).map(([yield_MPa, tensile_MPa, strength]) => [
        filletStrength_MPa('EN', { yield_MPa, tensile_MPa }),
        strength,
      ]),
  },
  {
    kernel: 'strength/timber',
    source: 'NDS 2012 table 4B [found; factors memory]',
    about: 'Southern Pine No.2, flat: 1840 psi',
    unit: '%',
    tolerance: 0.001,
    compared: () => [
      [
        (ndsBoard(NDS_BOARDS['Southern Pine No.2'], 5.5 * INCH, false).bending_MPa / KSI) * 1000,
        1000 * 1.6 * 1.15,
      ],
    ],
  },
  {
    kernel: 'strength/timber',
    source: 'EN 338, EN 1995-1-1 tables 3.1, 2.3 [found]',
    about: 'C24 of 28 mm outdoors: 21.6 MPa',
    unit: 'MPa',
    tolerance: 1e-6,
    compared: () => [[enBoard(EN_BOARDS.C24, 28).bending_MPa, 21.6]],
  },
  {
    kernel: 'strength/ground',
    source: 'IBC table 1806.2, two reproductions [found]',
    about: 'concrete, gravel, sand, clay in lb/ft²',
    unit: '%',
    tolerance: 0.01,
    compared: () =>
      (
        [
          ['concrete', 12_000],
          ['gravel', 3000],
          ['sand', 2000],
          ['clay', 1500],
        ] as const
      ).map(([ground, psf]) => [((GROUNDS[ground].bears_MPa ?? 0) * 1e6) / PSF, psf]),
  },
  {
    kernel: 'strength/loads',
    source: 'circular motion, 1 + v²/gR [derived]',
    about: 'seven speeds and radii, printed to 0.001',
    unit: '',
    tolerance: 0.0006,
    compared: () =>
      (
        [
          [4, 1.5, 2.088],
          [5, 2.5, 2.02],
          [6, 2, 2.835],
          [7, 2.5, 2.999],
          [8, 2.5, 3.61],
          [9, 3, 3.753],
          [10, 4, 3.549],
        ] as const
      ).map(([v, R, factor]) => [entryFactor(v, R), factor]),
  },
  {
    kernel: 'strength/slit-section',
    source: 'EN 1993-1-9 7.1, category 36 [memory]',
    about: 'passes at 80, 100, 150 MPa, to two digits',
    unit: '%',
    tolerance: 3,
    compared: () => [
      [passesAt(80), 74_000],
      [passesAt(100), 38_000],
      [passesAt(150), 11_000],
    ],
  },
  {
    kernel: 'strength/standing',
    source: 'statics of a ramp under a rider [derived]',
    about: 'friction that would hold it, 0.632611',
    unit: '',
    tolerance: 1e-5,
    compared: () => [[0.4 / (atTheLip().slide.safety ?? Number.NaN), 0.632611]],
  },
];

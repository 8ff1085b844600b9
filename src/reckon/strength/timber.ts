import type { Mark } from '../steel/steel.ts';

/** Board timber judged by EN 1995-1-1: characteristic bending strength and mean stiffness, MPa. */
export type EnBoardGrade = Readonly<{ bending_MPa: number; E_MPa: number; source: string; mark: Mark }>;

const EN338 = 'EN 338, read in two trade tables';
export const EN_BOARDS = {
  C16: { bending_MPa: 16, E_MPa: 8000, source: EN338, mark: 'found' },
  C18: { bending_MPa: 18, E_MPa: 9000, source: EN338, mark: 'found' },
  C24: { bending_MPa: 24, E_MPa: 11_000, source: EN338, mark: 'found' },
  C30: { bending_MPa: 30, E_MPa: 12_000, source: EN338, mark: 'found' },
} as const satisfies Record<string, EnBoardGrade>;

const PSI = 0.006_894_757_293;

/**
 * Board timber judged by the NDS: Fb by nominal width in inches (psi) with CF in it where the species has none of its own, and E (psi).
 */
export type NdsBoardGrade = Readonly<{
  /** Reference Fb × CF by the width it holds to, in. */
  bending_psi: readonly Readonly<{ to_in: number; value: number }>[];
  E_psi: number;
  source: string;
  mark: Mark;
}>;

export const NDS_BOARDS = {
  'Southern Pine No.2': {
    bending_psi: [
      { to_in: 4, value: 1100 },
      { to_in: 6, value: 1000 },
      { to_in: 8, value: 925 },
      { to_in: 10, value: 800 },
      { to_in: 12, value: 750 },
    ],
    E_psi: 1.4e6,
    source: 'AWC/SPIB addendum to the NDS, 2012, table 4B: 2×4 and 2×6; wider sizes from memory',
    mark: 'found',
  },
  'Spruce-Pine-Fir No.2': {
    // 775 psi of the Southern species, the lower of two that trade under the name, times CF 1.5, 1.3, 1.2, 1.1, 1.0.
    bending_psi: [
      { to_in: 4, value: 775 * 1.5 },
      { to_in: 6, value: 775 * 1.3 },
      { to_in: 8, value: 775 * 1.2 },
      { to_in: 10, value: 775 * 1.1 },
      { to_in: 12, value: 775 },
    ],
    E_psi: 1.1e6,
    source: 'NDS supplement table 4A, Southern species, the lower of two',
    mark: 'memory',
  },
} as const satisfies Record<string, NdsBoardGrade>;

/** Flat-use factor of a board laid flat, by nominal width: NDS supplement table 4B, 2 in thick [found]. */
const flatUse = (nominal_in: number): number =>
  nominal_in <= 3 ? 1 : nominal_in <= 5 ? 1.1 : nominal_in <= 8 ? 1.15 : 1.2;

/** CD of a rider on treated boards: 10 minutes, 1.6; impact's 2.0 is barred for them [memory, NDS table 2.3.2]. */
export const NDS_DURATION = 1.6;
/** Wet service: CM 0.85 on Fb, but 1.0 where Fb·CF is 1150 psi or less; E 0.9 [0.85 found, the rest memory]. */
const NDS_WET = { bending: 0.85, upTo_psi: 1150, E: 0.9 } as const;
/** Incised for treatment: Ci [memory]. */
const NDS_INCISED = { bending: 0.8, E: 0.95 } as const;

/** kmod of an instantaneous load in service class 3, and γM of solid timber: EN 1995-1-1 tables 3.1 and 2.3 [found]. */
const EN_KMOD = 0.9;
const EN_GAMMA_M = 1.3;

/** Strength to hold a stress against, MPa, and stiffness, MPa. */
export type BoardStrength = Readonly<{ bending_MPa: number; E_MPa: number }>;

/**
 * Design strength of a board laid flat outdoors, under a rider: EN 1995-1-1, kmod·kh·fm,k/γM with kh = min((150/h)^0.2, 1.3)
 * [memory, clause 3.2].
 */
export const enBoard = (grade: EnBoardGrade, thickness_mm: number): BoardStrength => ({
  bending_MPa:
    (EN_KMOD * Math.min(Math.max(1, 150 / thickness_mm) ** 0.2, 1.3) * grade.bending_MPa) / EN_GAMMA_M,
  E_MPa: grade.E_MPa,
});

/**
 * Allowable strength of a board laid flat outdoors, treated, under a rider: NDS, Fb·CD·CM·Cfu·Ci [found; factors as marked].
 * @param width_mm actual width; the nominal one is taken as the next half inch over it
 */
export const ndsBoard = (grade: NdsBoardGrade, width_mm: number, incised: boolean): BoardStrength => {
  const nominal = Math.ceil(width_mm / 25.4 + 1e-6);
  const base = (grade.bending_psi.find(({ to_in }) => nominal <= to_in) ?? grade.bending_psi.at(-1)!).value;
  const wet = base <= NDS_WET.upTo_psi ? 1 : NDS_WET.bending;
  const incising = incised ? NDS_INCISED : { bending: 1, E: 1 };
  return {
    bending_MPa: base * NDS_DURATION * wet * flatUse(nominal) * incising.bending * PSI,
    E_MPa: grade.E_psi * NDS_WET.E * incising.E * PSI,
  };
};

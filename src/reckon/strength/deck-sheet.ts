import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { LOAD_FACTORS } from './tube-strength.ts';

/** Bending strength and stiffness of plywood along and across its face grain, MPa. */
export type PlyGrade = Readonly<{
  along_MPa: number;
  across_MPa: number;
  alongE_MPa: number;
  acrossE_MPa: number;
  source: string;
}>;

/** By thickness of one layer, mm: Finnish birch plywood by its makers' handbook [memory]; softwood as the least class a yard sells, EN 636 F20/10 E50/20 [memory]. */
const BIRCH: readonly (readonly [
  to_mm: number,
  along: number,
  across: number,
  alongE: number,
  acrossE: number,
])[] = [
  [7, 50.9, 29, 12_737, 4763],
  [9.6, 45.6, 32.1, 11_395, 6105],
  [12.8, 42.9, 33.2, 10_719, 6781],
  [15.9, 41.3, 33.8, 10_316, 7184],
  [30, 40.2, 34.1, 10_048, 7452],
];

export type PlyKind = 'birch' | 'softwood';

/** @param layer_mm of one layer, to 30 mm */
export const plyGrade = (kind: PlyKind, layer_mm: number): PlyGrade => {
  if (kind === 'softwood')
    return {
      along_MPa: 20,
      across_MPa: 10,
      alongE_MPa: 5000,
      acrossE_MPa: 2000,
      source: 'EN 636 F20/10 E50/20 [memory]',
    };
  const [, along, across, alongE, acrossE] = BIRCH.find(([to]) => layer_mm <= to) ?? BIRCH.at(-1)!;
  return {
    along_MPa: along,
    across_MPa: across,
    alongE_MPa: alongE,
    acrossE_MPa: acrossE,
    source: 'Handbook of Finnish Plywood, birch [memory]',
  };
};

/** kmod of an instantaneous load in service class 3 [found], γM of plywood [memory]: EN 1995-1-1. */
const KMOD = 0.9;
const GAMMA_M = 1.2;
/** A sheet over three supports or more: four fifths of a single span's moment (AASHTO 3.24.3.1 [memory]). */
const CONTINUOUS = 0.8;
/** Width of sheet that bears a wheel: 0.58 L + 2 c (Westergaard 1930, in AASHTO's standard specifications [memory]). */
const SPREAD = 0.58;
/** Side of a bicycle tyre's patch, mm [practice]. */
const PATCH_MM = 50;

/** Spacing of crossmembers under a sheet at most, mm, whatever its strength says [practice]. */
export const SHEET_SPACING_MM = 300;

export type SheetInput = Readonly<{
  grade: PlyGrade;
  layer_mm: number;
  layers: number;
  /** Face grain runs along the curve, from crossmember to crossmember. */
  grainAlong: boolean;
  /** Between the middles of the crossmembers. */
  spacing_mm: number;
  /** L1 or L2 on one wheel, the greater. */
  wheel_N: number;
}>;

export type SheetCheck = Readonly<{
  stress_MPa: number;
  strength_MPa: number;
  utilisation: number;
  /** Width of sheet counted. */
  spread_mm: number;
  /** Largest spacing by strength, and never over 300 mm. */
  largest_mm: number;
}>;

/**
 * Sheet bent along the curve over crossmembers, layers loose on each other, a wheel midway: M = 0.8 PL/4 on a width of 0.58 L + 2 c,
 * the 0.58 L lessened by the fourth root of stiffness across over stiffness along the span [derived from memory]. By EN 1995-1-1 in
 * either standard: US panel capacities were not at hand. The bending to the curve is not counted against it: it relaxes.
 * Refuses sizes and loads not above 0.
 */
export const sheetCheck = (input: SheetInput): Outcome<SheetCheck> => {
  const { grade, layer_mm, layers, grainAlong, spacing_mm, wheel_N } = input;
  for (const [field, value] of Object.entries({ layer_mm, layers, spacing_mm, wheel_N }))
    if (!(value > 0 && value <= 1e6))
      return refuse('out-of-range', field, `${value} will not do here.`, 'more than 0');
  const characteristic = grainAlong ? grade.along_MPa : grade.across_MPa;
  const ratio = grainAlong ? grade.acrossE_MPa / grade.alongE_MPa : grade.alongE_MPa / grade.acrossE_MPa;
  const strength_MPa = (KMOD * characteristic) / GAMMA_M;
  const load = LOAD_FACTORS.EN.live * wheel_N * CONTINUOUS;
  const perWidth = (layers * layer_mm ** 2) / 6;
  const share = SPREAD * Math.min(1, ratio ** 0.25);
  const spread_mm = share * spacing_mm + 2 * PATCH_MM;
  const stress_MPa = (load * spacing_mm) / 4 / (perWidth * spread_mm);
  // load·L/4 = f·w·(share·L + 2c): past a stiffness of its own a sheet bears any span by this rule, so the cap comes first.
  const bears = strength_MPa * perWidth;
  const slack = load / 4 - bears * share;
  const byStrength = slack > 0 ? (bears * 2 * PATCH_MM) / slack : SHEET_SPACING_MM;
  return good({
    stress_MPa,
    strength_MPa,
    utilisation: stress_MPa / strength_MPa,
    spread_mm,
    largest_mm: Math.min(SHEET_SPACING_MM, byStrength),
  });
};

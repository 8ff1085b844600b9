import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { type TubeSection, tubeSection } from '../steel/section.ts';
import { AISC_E_MPA, STEEL_E_MPA } from '../steel/steel.ts';

/** Which book judges strength: AISC 360 by allowable strength, or EN 1993-1-1 by partial factors. */
export type Standard = 'AISC' | 'EN';

/** Least yield and tensile strength, MPa. */
export type Grade = Readonly<{ yield_MPa: number; tensile_MPa: number }>;

/** Depth in the plane of the frame, width across it. */
export type FrameTube = Readonly<{ depth_mm: number; width_mm: number; wall_mm: number }>;

/** AISC 360 safety factor of flexure, compression, tension on the gross area and shear [memory; 1.67 found for the first two]. */
export const OMEGA = 1.67;

/** Load factors: AISC allowable strength has none; EN 1990 table A1.2(B), 1.35 G + 1.5 Q [memory]. */
export const LOAD_FACTORS = {
  AISC: { dead: 1, live: 1 },
  EN: { dead: 1.35, live: 1.5 },
} as const satisfies Record<Standard, { dead: number; live: number }>;

/** What a tube bears, to hold unfactored (AISC) or factored (EN) forces against. */
export type TubeStrength = Readonly<{
  standard: Standard;
  grade: Grade;
  E_MPa: number;
  section: TubeSection;
  /** Radius of gyration across the plane of the frame. */
  sideGyration_mm: number;
  /** Flat width over wall of the face across the bend, and how far past it bending may go. */
  flatness: number;
  bends: 'fully' | 'nearly' | 'to yield';
  moment_Nmm: number;
  shear_N: number;
  tension_N: number;
}>;

/** EN 1993-1-1 table 5.2, ε = √(235/fy) [memory: 33, 38, 42]. */
const EN_CLASSES = { first: 33, second: 38, third: 42 } as const;

/**
 * Strength of a tube's section in bending, shear and tension.
 * AISC 360: Mn = Fy Z, in between F7-2, /1.67 [found]; Vn = 0.6 Fy 2ht [memory, G4]; Fy A [memory, D2]. Design wall 0.93 of the
 * wall sold. EN 1993-1-1: W fy, Av fy/√3 with Av = A h/(b + h), A fy, γM0 1.0 [memory, 6.2].
 * Refuses what `tubeSection` refuses, a strength not above 0, and no-solution for walls that buckle before they yield.
 */
export const tubeStrength = (tube: FrameTube, standard: Standard, grade: Grade): Outcome<TubeStrength> => {
  for (const field of ['yield_MPa', 'tensile_MPa'] as const)
    if (!(grade[field] > 0 && Number.isFinite(grade[field])))
      return refuse('out-of-range', field, `${grade[field]} MPa is no strength of steel.`, 'more than 0 MPa');
  const rule = standard === 'AISC' ? 'AISC' : 'EN10219';
  const section = tubeSection({ shape: 'rect', ...tube, rule });
  if (!section.ok) return section;
  const side = tubeSection({
    shape: 'rect',
    depth_mm: tube.width_mm,
    width_mm: tube.depth_mm,
    wall_mm: tube.wall_mm,
    rule,
  });
  if (!side.ok) return side;
  const E_MPa = standard === 'AISC' ? AISC_E_MPA : STEEL_E_MPA;
  const wall = section.value.designWall_mm;
  const flatness = (tube.width_mm - 3 * wall) / wall;
  const web = (tube.depth_mm - 3 * wall) / wall;
  const bending = standard === 'AISC' ? aiscBending : enBending;
  const bent = bending(section.value, flatness, web, E_MPa, grade.yield_MPa);
  if (bent === null)
    return refuse(
      'no-solution',
      'wall_mm',
      `A wall of ${tube.wall_mm} mm buckles before a tube of ${tube.depth_mm} × ${tube.width_mm} mm yields.`,
      'a thicker wall; or stop, ask an engineer',
    );
  const { area_mm2 } = section.value;
  const allowed = standard === 'AISC' ? grade.yield_MPa / OMEGA : grade.yield_MPa;
  const shearArea =
    standard === 'AISC'
      ? 0.6 * 2 * (tube.depth_mm - 3 * wall) * wall
      : (area_mm2 * tube.depth_mm) / (tube.depth_mm + tube.width_mm) / Math.sqrt(3);
  return good({
    standard,
    grade,
    E_MPa,
    section: section.value,
    sideGyration_mm: side.value.gyration_mm,
    flatness,
    ...bent,
    shear_N: shearArea * allowed,
    tension_N: area_mm2 * allowed,
  });
};

type Bent = Pick<TubeStrength, 'bends' | 'moment_Nmm'> | null;

/** λp 1.12, λr 1.40, web λp 2.42 times √(E/Fy): AISC 360 table B4.1b [found]. */
const aiscBending = (
  section: TubeSection,
  flatness: number,
  web: number,
  E_MPa: number,
  fy: number,
): Bent => {
  const root = Math.sqrt(E_MPa / fy);
  if (flatness > 1.4 * root || web > 2.42 * root) return null;
  const plastic = fy * section.plastic_mm3;
  if (flatness <= 1.12 * root) return { bends: 'fully', moment_Nmm: plastic / OMEGA };
  const lost = (plastic - fy * section.elastic_mm3) * ((3.57 * flatness) / root - 4);
  return { bends: 'nearly', moment_Nmm: Math.min(plastic, plastic - lost) / OMEGA };
};

const enBending = (section: TubeSection, flatness: number, web: number, _E: number, fy: number): Bent => {
  const epsilon = Math.sqrt(235 / fy);
  // A wall in bending alone may be thinner; taken as in compression, for a rail is pressed too.
  const worst = Math.max(flatness, web) / epsilon;
  if (worst <= EN_CLASSES.second)
    return {
      bends: worst <= EN_CLASSES.first ? 'fully' : 'nearly',
      moment_Nmm: fy * section.plastic_mm3,
    };
  if (worst <= EN_CLASSES.third) return { bends: 'to yield', moment_Nmm: fy * section.elastic_mm3 };
  return null;
};

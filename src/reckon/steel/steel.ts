/** Density of structural steel, kg/m³ (EN 1991-1-1 and maker's section notes) [found]. */
export const STEEL_DENSITY_KG_M3 = 7850;

/** Modulus of elasticity, MPa (EN 1993-1-1 3.2.6, 210 GPa) [found]. The US metric value is 200 000, 29 000 ksi. */
export const STEEL_E_MPA = 210_000;

/** Modulus of elasticity AISC 360 designs with: 29 000 ksi [found], in MPa. */
export const AISC_E_MPA = 199_948;

/** Whether a figure was read in its source, is remembered from it, or is a rule of the trade. */
export type Mark = 'found' | 'memory' | 'practice';

/** One grade a rail, upright or angle may be sold as. Strengths in MPa, the least the standard promises. */
export type SteelGrade = Readonly<{
  name: string;
  form: 'tube' | 'angle, flat and bar';
  yield_MPa: number;
  tensile_MPa: number;
  source: string;
  mark: Mark;
}>;

export const STEEL_GRADES: readonly SteelGrade[] = [
  {
    name: 'A500 Gr A',
    form: 'tube',
    yield_MPa: 270,
    tensile_MPa: 310,
    source: 'ASTM A500, shaped tube',
    mark: 'found',
  },
  {
    name: 'A500 Gr B',
    form: 'tube',
    yield_MPa: 315,
    tensile_MPa: 400,
    source: 'ASTM A500, shaped tube',
    mark: 'found',
  },
  {
    name: 'A500 Gr C',
    form: 'tube',
    yield_MPa: 345,
    tensile_MPa: 425,
    source: 'ASTM A500, shaped tube',
    mark: 'found',
  },
  // A513 promises square tube no strength unless it is ordered; 1010 as welded is what the round is listed with.
  {
    name: 'grade unknown',
    form: 'tube',
    yield_MPa: 220,
    tensile_MPa: 310,
    source: 'ASTM A513, 1010 as welded, taken as the least',
    mark: 'practice',
  },
  {
    name: 'S235',
    form: 'tube',
    yield_MPa: 235,
    tensile_MPa: 360,
    source: 'EN 10219-1 table A.3, wall to 16 mm',
    mark: 'memory',
  },
  {
    name: 'S275',
    form: 'tube',
    yield_MPa: 275,
    tensile_MPa: 410,
    source: 'EN 10219-1 table A.3, wall to 16 mm',
    mark: 'memory',
  },
  {
    name: 'S355',
    form: 'tube',
    yield_MPa: 355,
    tensile_MPa: 470,
    source: 'EN 10219-1 table A.3, wall to 16 mm',
    mark: 'memory',
  },
  {
    name: 'A36',
    form: 'angle, flat and bar',
    yield_MPa: 250,
    tensile_MPa: 400,
    source: 'ASTM A36',
    mark: 'memory',
  },
  {
    name: 'S235JR',
    form: 'angle, flat and bar',
    yield_MPa: 235,
    tensile_MPa: 360,
    source: 'EN 10025-2, to 16 mm',
    mark: 'memory',
  },
];

/** kg per metre of a bar of the given cross-section (mm²). */
export const massPerMetre_kg = (area_mm2: number): number => area_mm2 * STEEL_DENSITY_KG_M3 * 1e-6;

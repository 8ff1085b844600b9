/**
 * Where two supports carry a uniform bar best. For a welded slit rail the moment rule matters; before the top tacks and one side
 * are on, no pair of points does: full-length support until then (bench practice).
 */
export type SupportRule = 'least moment' | 'ends level' | 'least shortening' | 'least deflection';

/** Overhang beyond each support as a share of the length. */
export const OVERHANG: Readonly<Record<SupportRule, number>> = {
  /** Hogging over the supports equals sagging between: (√2 − 1)/2. [derived] */
  'least moment': (Math.SQRT2 - 1) / 2,
  /** Airy: ends stay level, spacing L/√3 [found]. A curved rail lying flat does not tip on these points either [derived]. */
  'ends level': (1 - 1 / Math.sqrt(3)) / 2,
  /** Bessel: the length along the middle changes least, spacing 0.5594 L. [found] */
  'least shortening': (1 - 0.5594) / 2,
  /** Deflection range least. [derived] */
  'least deflection': 0.2232,
};

/** Positions of the two supports along a rail, mm. */
export function supportPoints(length_mm: number, rule: SupportRule): readonly [number, number] {
  const overhang = OVERHANG[rule] * length_mm;
  return [overhang, length_mm - overhang];
}

/** Greatest moment of a uniform bar on two even supports over w L². @param overhang share of the length beyond each, 0 to 0.5 */
export const greatestMoment = (overhang: number): number =>
  Math.max(overhang ** 2 / 2, (1 - 2 * overhang) ** 2 / 8 - overhang ** 2 / 2);

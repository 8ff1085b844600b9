import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** Width of plate that bears a wheel, mm [practice]. */
const BEARING_WIDTH_MM = 200;

/** Greatest spacing of bearers, mm, by the plate's thickness: thinner plates only on continuous backing [practice]. */
const SPACINGS: readonly Readonly<{ from_mm: number; spacing_mm: number }>[] = [
  { from_mm: 6, spacing_mm: 400 },
  { from_mm: 5, spacing_mm: 250 },
  { from_mm: 0, spacing_mm: 0 },
];

export type EntryPlate = Readonly<{
  stress_MPa: number;
  utilisation: number;
  /** Largest spacing of bearers; 0 when the plate wants continuous backing. */
  largest_mm: number;
  holds: boolean;
}>;

/**
 * An entry plate on bearers, a wheel midway on 200 mm of its width: M = PL/4 against yield, and never wider than practice has it
 * [derived from practice: 2.65 kN, 235 MPa, 5 mm to 250 mm, 6 mm to 400 mm, 3 mm only on continuous backing].
 * L1 is a peak already; no factor is put on it.
 * Refuses sizes, loads and strengths not above 0; a spacing of 0 is continuous backing.
 */
export const entryPlate = (
  thickness_mm: number,
  spacing_mm: number,
  wheel_N: number,
  yield_MPa: number,
): Outcome<EntryPlate> => {
  for (const [field, value] of Object.entries({ thickness_mm, wheel_N, yield_MPa }))
    if (!(value > 0 && value <= 1e6))
      return refuse('out-of-range', field, `${value} will not do here.`, 'more than 0');
  if (!(spacing_mm >= 0 && spacing_mm <= 10_000))
    return refuse('out-of-range', 'spacing_mm', `${spacing_mm} mm is no spacing.`, '0 to 10000 mm');
  const modulus = (BEARING_WIDTH_MM * thickness_mm ** 2) / 6;
  const stress_MPa = (wheel_N * spacing_mm) / 4 / modulus;
  const practice = SPACINGS.find(({ from_mm }) => thickness_mm >= from_mm - 0.3)!.spacing_mm;
  const largest_mm = Math.min(practice, (4 * modulus * yield_MPa) / wheel_N);
  return good({
    stress_MPa,
    utilisation: stress_MPa / yield_MPa,
    largest_mm,
    holds: spacing_mm <= largest_mm,
  });
};

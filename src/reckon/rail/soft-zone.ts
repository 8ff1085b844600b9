/**
 * How far from a weld steel gets how hot, once: the peak-temperature equation of the AWS Welding Handbook for thin plate or a
 * single pass through the whole wall, 1/(T_p − T₀) = √(2πe) ρC t Y/H + 1/(T_m − T₀), Y from the fusion boundary.
 * [found: two open texts; the published example 5.9, 28.4, 14.2, 21.3 mm is in the tests]
 */
const FACTOR = Math.sqrt(2 * Math.PI * Math.E);
/** Heat that a cubic millimetre of steel takes per kelvin, J/mm³K, and where it melts, °C [found with the equation]. */
const HEAT_CAPACITY = 0.0044;
export const MELTING_C = 1510;

export type SoftZone = Readonly<{
  /** Wall, mm. */
  wall_mm: number;
  /** Heat that reaches the steel per length of weld, J/mm: volts × amps × efficiency / travel. */
  net_heat_J_mm: number;
  /** Temperature before the weld, °C. */
  start_C: number;
}>;

/** Distance from the fusion boundary, mm, to where the peak is `peak_C`; 0 at or above melting, null at or below the start. */
export function distanceToPeak(zone: SoftZone, peak_C: number): number | null {
  if (peak_C <= zone.start_C) return null;
  const cold = 1 / (peak_C - zone.start_C) - 1 / (MELTING_C - zone.start_C);
  return Math.max(0, (cold * zone.net_heat_J_mm) / (FACTOR * HEAT_CAPACITY * zone.wall_mm));
}

/** Peak temperature, °C, at a distance from the fusion boundary, mm ≥ 0. */
export function peakAt(zone: SoftZone, distance_mm: number): number {
  const slope = (FACTOR * HEAT_CAPACITY * zone.wall_mm * distance_mm) / zone.net_heat_J_mm;
  return zone.start_C + 1 / (slope + 1 / (MELTING_C - zone.start_C));
}

/** Below half its strength: 600 °C (EN 1993-1-2 table 3.1 has 0.47 there [found]). */
export const SOFT_FROM_C = 600;

/** Width of the band that is soft while the weld is hot, mm: the bead and the soft zone on both sides. [derived] */
export const softBand = (zone: SoftZone, bead_mm: number): number =>
  bead_mm + 2 * (distanceToPeak(zone, SOFT_FROM_C) ?? 0);

/** Density of air at sea level and 15 °C, kg/m³: International Standard Atmosphere, ISO 2533 [memory]. */
export const AIR_kg_m3 = 1.225;

/** What slows a rider in the air. Without a drag area there is no drag; with one the mass is needed. */
export type Drag = Readonly<{
  /** Drag coefficient × frontal area. */
  drag_area_m2?: number | undefined;
  /** Of rider and bike. */
  mass_kg?: number | undefined;
  /** Sea level when left out. */
  air_kg_m3?: number | undefined;
}>;

/** Drag per mass and speed squared, 1/m: half the density × drag area ÷ mass [textbook]. */
export const dragPerMetre = ({ drag_area_m2 = 0, mass_kg, air_kg_m3 = AIR_kg_m3 }: Drag): number =>
  drag_area_m2 === 0 || mass_kg === undefined ? 0 : (air_kg_m3 * drag_area_m2) / (2 * mass_kg);

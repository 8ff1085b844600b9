/**
 * A slit rail as planned, and the line it is read from. Every position is in mm along that line from its start.
 *
 * The line starts at the origin along +x and bends toward its centre at (0, radius); an optional straight last part
 * follows the arc. "Toward the centre" is to the left of the way along it, and is + for every offset.
 */
export type RailPlan = Readonly<{
  /** Radius of the line that the offsets are read from, mm. */
  radius_mm: number;
  /** Bend angle of the line's arc, rad. */
  bend_rad: number;
  /** Straight last part after the arc, mm (none when absent). */
  straight_mm?: number;
  /** Slits along the line, mm, rising. All lie on the arc. */
  slits_mm: readonly number[];
}>;

/**
 * How a rail lies against its line. A turn about the centre of the curve changes no offset, so two numbers say it all:
 * the shift across the line at its start (mm, + toward the centre) and the turn about the start (rad, + toward the centre).
 */
export type Rigid = Readonly<{ y_mm: number; turn_rad: number }>;

export const UNMOVED: Rigid = { y_mm: 0, turn_rad: 0 };

/** The slits of an evenly slit rail: half a pitch, then whole pitches, along the line of the plan, mm. */
export function evenSlits(radius_mm: number, bend_rad: number, count: number): number[] {
  const pitch = (radius_mm * bend_rad) / count;
  return Array.from({ length: count }, (_, i) => (i + 0.5) * pitch);
}

/** Length of the plan's arc, mm. */
export const arcLength = (plan: RailPlan): number => plan.radius_mm * plan.bend_rad;

/** Length of the whole line, arc and straight last part, mm. */
export const lineLength = (plan: RailPlan): number => arcLength(plan) + (plan.straight_mm ?? 0);

/** Middles of the flats along the line, mm: the start, half way between neighbouring slits, the end of the arc. */
export function flatMiddles(plan: RailPlan): number[] {
  const slits = plan.slits_mm;
  const between = slits.slice(1).map((s, i) => (s + slits[i]!) / 2);
  return [0, ...between, arcLength(plan)];
}

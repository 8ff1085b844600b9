import type { LineFace } from './design.ts';

/**
 * The curve of a ramp and its parallel lines, in the frame of the side view: origin where the deck-top arc touches the ground,
 * x toward the lip, y up, the centre of the curve at (0, R). A line's offset is + away from the centre.
 */
export type RampCurve = Readonly<{
  /** Deck-top radius, mm. */
  radius_mm: number;
  /** Slope at the lip, rad. */
  exit_rad: number;
  /** Straight last part, mm. */
  straight_mm: number;
  deck_mm: number;
  depth_mm: number;
  wall_mm: number;
}>;

export type Spot = Readonly<{ x: number; y: number; slope: number }>;

/** How far a named line lies outside the deck top, mm. */
export const faceOffset = (c: RampCurve, face: Exclude<LineFace, 'ground'>): number => {
  switch (face) {
    case 'deck top':
      return 0;
    case 'rail top face':
      return c.deck_mm;
    case 'hinge line':
      return c.deck_mm + c.depth_mm - c.wall_mm / 2;
    case 'rail bottom face':
      return c.deck_mm + c.depth_mm;
  }
};

/** The point of the line `offset_mm` outside the deck top where the curve's slope is `slope` rad, `beyond_mm` past the arc's end along the straight part. */
export const spotAtSlope = (c: RampCurve, offset_mm: number, slope: number, beyond_mm = 0): Spot => {
  const r = c.radius_mm + offset_mm;
  return {
    x: r * Math.sin(slope) + beyond_mm * Math.cos(slope),
    // R(1 − cos) loses digits on shallow curves; 2 sin² of the half angle does not.
    y: 2 * r * Math.sin(slope / 2) ** 2 - offset_mm + beyond_mm * Math.sin(slope),
    slope,
  };
};

/** The point of a line at `along_mm` from the spot where its slope is `from_rad`, along the line. */
export const spotAlong = (c: RampCurve, offset_mm: number, from_rad: number, along_mm: number): Spot => {
  const r = c.radius_mm + offset_mm;
  const bend = (c.exit_rad - from_rad) * r;
  return along_mm <= bend
    ? spotAtSlope(c, offset_mm, from_rad + along_mm / r)
    : spotAtSlope(c, offset_mm, c.exit_rad, along_mm - bend);
};

/** The point of a line at a run `x` mm; past the end the straight part goes on. */
export const spotAtX = (c: RampCurve, offset_mm: number, x: number): Spot => {
  const r = c.radius_mm + offset_mm;
  const xEnd = r * Math.sin(c.exit_rad);
  if (x <= xEnd) return spotAtSlope(c, offset_mm, Math.asin(Math.max(-1, Math.min(1, x / r))));
  return spotAtSlope(c, offset_mm, c.exit_rad, (x - xEnd) / Math.cos(c.exit_rad));
};

/** The slope at which a line `offset_mm` outside the deck top lies `y` mm above the ground, rad. */
export const slopeAtHeight = (c: RampCurve, offset_mm: number, y: number): number => {
  const half = (y + offset_mm) / (2 * (c.radius_mm + offset_mm));
  return 2 * Math.asin(Math.sqrt(Math.max(0, Math.min(1, half))));
};

/** Slope where the rail begins: its bottom face reaches the ground there, on a pad. */
export const railStart = (c: RampCurve): number => slopeAtHeight(c, faceOffset(c, 'rail bottom face'), 0);

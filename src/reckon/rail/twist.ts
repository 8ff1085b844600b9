/** Heights of the four corners of a frame, round it in order, mm. */
export type FourHeights = readonly [number, number, number, number];

export type Twist = Readonly<{
  /** How far the fourth corner stands above (+) the plane of the other three, mm. */
  lift_mm: number;
  /** The same as an angle across the frame, rad. */
  angle_rad: number;
}>;

/**
 * Twist of a frame from its four corners, z₁ − z₂ + z₃ − z₄: sagging and tilting floors cancel, a warped one does not, so the
 * heights of the level pads under the corners are taken off when they are given. With the sign turned, it is the lift of
 * the fourth corner. [derived]
 *
 * @param heights_mm round the frame
 * @param width_mm across the frame between the corners
 * @param floor_mm heights of what the corners stand on, round the frame
 */
export function twistOf(
  heights_mm: FourHeights,
  width_mm: number,
  floor_mm: FourHeights = [0, 0, 0, 0],
): Twist {
  const [a, b, c, d] = heights_mm.map((z, k) => z - floor_mm[k]!) as [number, number, number, number];
  const lift_mm = d - (a - b + c);
  return { lift_mm, angle_rad: lift_mm / width_mm };
}

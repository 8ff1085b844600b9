/** Radians of an angle in degrees. */
export const radians = (angle_deg: number): number => angle_deg * (Math.PI / 180);

/** Degrees of an angle in radians. */
export const degrees = (angle_rad: number): number => angle_rad * (180 / Math.PI);

/** Outside sizes of tube below 100 mm may be off by 1 % and at least 0.5 mm; its wall by 10 % up to 5 mm thick (EN 10219-2 [found: two makers' tables]). */
export const sideTolerance = (side_mm: number): number => Math.max(0.5, side_mm / 100);
export const wallTolerance = (wall_mm: number): number => (wall_mm > 5 ? 0.5 : wall_mm / 10);

type Size = Readonly<{ depth_mm: number; width_mm: number; wall_mm: number }>;

/**
 * The size that a tube read by caliper was sold as: of those listed the nearest in wall that it is within tolerance of, or null.
 * @param read as the caliper had it
 * @param listed sizes as they are sold
 */
export const soldAs = (read: Size, listed: readonly Size[]): Size | null => {
  const within = listed.filter(
    size =>
      Math.abs(size.depth_mm - read.depth_mm) <= sideTolerance(size.depth_mm) + 1e-9 &&
      Math.abs(size.width_mm - read.width_mm) <= sideTolerance(size.width_mm) + 1e-9 &&
      Math.abs(size.wall_mm - read.wall_mm) <= wallTolerance(size.wall_mm) + 1e-9,
  );
  const off = (size: Size): number => Math.abs(size.wall_mm - read.wall_mm);
  return within.reduce<Size | null>((best, s) => (best === null || off(s) < off(best) ? s : best), null);
};

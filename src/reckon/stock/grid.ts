import { Sums } from './sums.ts';

/** Greatest common divisor of two whole numbers. */
export const gcd = (a: number, b: number): number => {
  let x = a;
  let y = b;
  while (y > 0) [x, y] = [y, x % y];
  return x;
};

/**
 * Sizes in steps of their own grid, and what of each room pieces can fill at most: the greatest sum of sizes that is no more than
 * the room. Where the grid is too fine for a table the room is only brought down to it.
 * @param size whole numbers, in any unit
 * @param room rooms in the same unit, falling
 */
export const ontoGrid = (
  size: Float64Array,
  demand: Int32Array,
  room: Float64Array,
): { size: Float64Array; room: Float64Array } => {
  let grid = 0;
  for (const s of size) grid = gcd(s, grid);
  const sizes = size.map(s => s / grid);
  const rooms = room.map(r => Math.floor(r / grid));
  const sums = Sums.of(sizes, demand, rooms[0]!);
  return { size: sizes, room: sums === null ? rooms : rooms.map(r => sums.greatest(0, r)) };
};

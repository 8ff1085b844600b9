import { type SideFrameInput, USUAL_POSITIONS } from './side-frame-input.ts';

/** Places nearer to each other than this are one, mm. */
export const SAME_MM = 1;

/** A node of the rail's middle line. */
export type RailSpot = Readonly<{
  x: number;
  y: number;
  slit: boolean;
  /** An upright, the side plates or a foot holds the rail up here. */
  held: boolean;
}>;

/** The height of the rail's middle line at a run `x`, mm; the line of the end parts goes on past the ends. */
export const railHeightAt = (
  points: readonly Readonly<{ x_mm: number; y_mm: number }>[],
  x: number,
): number => {
  const beyond = points.findIndex((point, j) => j > 0 && point.x_mm >= x);
  const k = beyond < 0 ? points.length - 1 : beyond;
  const [a, b] = [points[k - 1]!, points[k]!];
  return a.y_mm + ((b.y_mm - a.y_mm) * (x - a.x_mm)) / (b.x_mm - a.x_mm);
};

/**
 * The middle line of a rail from points of its bottom face: half a depth square to it, toward the deck.
 * @param bottom points in mm with slope in rad, from the entry to the lip
 * @param depth_mm of the rail
 */
export const middleLine = (
  bottom: readonly Readonly<{ x: number; y: number; slope: number; slit?: boolean }>[],
  depth_mm: number,
): { x_mm: number; y_mm: number; slit: boolean }[] =>
  bottom.map(({ x, y, slope, slit = false }) => ({
    x_mm: x - (depth_mm / 2) * Math.sin(slope),
    y_mm: y + (depth_mm / 2) * Math.cos(slope),
    slit,
  }));

/** From one spot to the next, mm. */
export const spotDistance = (a: RailSpot, b: RailSpot): number => Math.hypot(b.x - a.x, b.y - a.y);

/** The rail's nodes: its corners, what is joined to it, and as many between as the places of the wheel ask. */
export const railSpots = (input: SideFrameInput): RailSpot[] => {
  const { points } = input.rail;
  const spots: RailSpot[] = points.map(({ x_mm, y_mm, slit = false }) => ({
    x: x_mm,
    y: y_mm,
    slit,
    held: false,
  }));
  const [first, last] = [spots[0]!.x, spots.at(-1)!.x];
  const join = (at: number, held: boolean): void => {
    const x = Math.min(last, Math.max(first, at));
    const there = spots.findIndex(spot => Math.abs(spot.x - x) < SAME_MM);
    if (there < 0) spots.push({ x, y: railHeightAt(points, x), slit: false, held });
    else if (held) spots[there] = { ...spots[there]!, held };
  };
  join(input.base.from_x_mm, true);
  for (const { x_mm } of input.uprights) join(x_mm, true);
  for (const { rail_x_mm } of input.diagonals) join(rail_x_mm, false);
  for (const { x_mm } of input.feet) if (x_mm < input.base.from_x_mm - SAME_MM) join(x_mm, true);
  spots.sort((a, b) => a.x - b.x);
  return filled(spots, input.positions ?? USUAL_POSITIONS);
};

/** The longest part is halved until there are enough. */
const filled = (spots: RailSpot[], wanted: number): RailSpot[] => {
  while (spots.length < wanted) {
    let longest = 1;
    for (let k = 2; k < spots.length; k++)
      if (
        spotDistance(spots[k - 1]!, spots[k]!) >
        spotDistance(spots[longest - 1]!, spots[longest]!) + SAME_MM / 10
      )
        longest = k;
    const [a, b] = [spots[longest - 1]!, spots[longest]!];
    spots.splice(longest, 0, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, slit: false, held: false });
  }
  return spots;
};

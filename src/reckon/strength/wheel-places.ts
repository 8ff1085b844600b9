import { type RailSpot, spotDistance } from './rail-spots.ts';

/** A place of the wheel: a node of the rail, and what of a spread load it takes. */
export type WheelPlace = Readonly<{
  node: number;
  x_mm: number;
  y_mm: number;
  /** Along the rail from its entry end. */
  along_mm: number;
  slope_rad: number;
  /** Half the rail to either side, along it and on plan. */
  share_mm: number;
  planShare_mm: number;
  /** Number of the slit there, from 1 at the entry end; null where there is none. */
  slit: number | null;
  held: boolean;
}>;

/**
 * The places of the wheel along a rail.
 * @param spots of the rail from the entry to the lip
 * @param nodes the frame's node of each
 */
export const wheelPlaces = (spots: readonly RailSpot[], nodes: readonly number[]): WheelPlace[] => {
  let along_mm = 0;
  let slits = 0;
  return spots.map((spot, k) => {
    const before = spots[Math.max(0, k - 1)]!;
    const after = spots[Math.min(spots.length - 1, k + 1)]!;
    along_mm += spotDistance(before, spot);
    if (spot.slit) slits += 1;
    return {
      node: nodes[k]!,
      x_mm: spot.x,
      y_mm: spot.y,
      along_mm,
      slope_rad: Math.atan2(after.y - before.y, after.x - before.x),
      share_mm: (spotDistance(before, spot) + spotDistance(spot, after)) / 2,
      planShare_mm: (after.x - before.x) / 2,
      slit: spot.slit ? slits : null,
      held: spot.held,
    };
  });
};

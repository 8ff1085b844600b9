import { middleLine } from '../../../src/reckon/strength/rail-spots.ts';
import type { RailPoint, SideFrameInput } from '../../../src/reckon/strength/side-frame-input.ts';

export const TUBE = { depth_mm: 40, width_mm: 40, wall_mm: 3 };
export const POST = { depth_mm: 30, width_mm: 30, wall_mm: 2 };

type Made = Readonly<{
  radius_mm?: number;
  exit_rad?: number;
  slits?: number;
  /** Uprights stand evenly, about so far apart, in the middles of flats. */
  spacing_mm?: number;
  change?: Partial<SideFrameInput>;
}>;

/** Where the rail's middle line is this high, run in mm: the bottom face's circle about (0, R). */
const bottomRun = (bottom: number, radius: number, height: number): number =>
  Math.sqrt(bottom ** 2 - (radius - height) ** 2);

/** A side frame of an invented ramp: deck 18 mm, rail and base 40 × 40 × 3, uprights 30 × 30 × 2. */
export const madeFrame = ({
  radius_mm = 4500,
  exit_rad = Math.PI / 6,
  slits = 12,
  spacing_mm = 320,
  change = {},
}: Made = {}): SideFrameInput => {
  const bottom = radius_mm + 18 + TUBE.depth_mm;
  const start = Math.asin(bottomRun(bottom, radius_mm, 0) / bottom);
  const turn = exit_rad - start;
  const on = (slope: number, slit: boolean) => ({
    x: bottom * Math.sin(slope),
    y: radius_mm - bottom * Math.cos(slope),
    slope,
    slit,
  });
  const points: RailPoint[] = middleLine(
    [
      on(start, false),
      ...Array.from({ length: slits }, (_, k) => on(start + ((k + 0.5) / slits) * turn, true)),
      on(exit_rad, false),
    ],
    TUBE.depth_mm,
  );
  const last = points.at(-1)!.x_mm;
  const from_x_mm = bottomRun(bottom, radius_mm, TUBE.depth_mm);
  const lip_x = last - 15;
  const bays = Math.ceil((lip_x - from_x_mm) / spacing_mm);
  const flats = points.slice(2, -1).map(({ x_mm }, k) => (points[k + 1]!.x_mm + x_mm) / 2);
  const nearest = (x: number): number =>
    flats.reduce((best, flat) => (Math.abs(flat - x) < Math.abs(best - x) ? flat : best));
  const even = Array.from({ length: bays - 1 }, (_, k) =>
    nearest(from_x_mm + ((k + 1) / bays) * (lip_x - from_x_mm)),
  );
  const stands = [...new Set(even), lip_x].filter(x => x > from_x_mm + 40);
  const feet = [points[0]!.x_mm, from_x_mm, ...stands];
  return {
    standard: 'EN',
    grade: { yield_MPa: 235, tensile_MPa: 360 },
    rail: { points, tube: TUBE, opened: true, sideways_mm: 600 },
    base: { tube: TUBE, y_mm: 20, from_x_mm, to_x_mm: lip_x },
    uprights: stands.map((x_mm, k) => ({ name: `upright ${k + 1}`, x_mm, tube: POST })),
    diagonals: [],
    feet: feet.map((x_mm, k) => ({
      name: `foot ${k + 1}`,
      x_mm,
      anchored: k === 0 || k === feet.length - 1,
    })),
    loads: {
      riding_N: 2648,
      drop_N: 2648,
      along_share: 0.3,
      standing_N_mm: 3,
      deck_N_mm: 0.1,
    },
    slitProven: false,
    jointProven: false,
    ...change,
  };
};

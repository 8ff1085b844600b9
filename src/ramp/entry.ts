import { faceOffset, slopeAtHeight, spotAtSlope } from './curve.ts';
import { entryPlate } from './deck.ts';
import { type Member, square } from './member.ts';
import { curveOf } from './rail-plan.ts';
import type { Design } from './settle.ts';

const INCH = 25.4;

/** Flat bar as yards keep it (trade sizes, practice), mm: widths that stand on edge under the plate, thicknesses that lie flat under it. */
const FLATS = {
  metric: {
    thick: 5,
    edges: [20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100],
    lying: [5, 6, 8, 10, 12],
    wide: 40,
  },
  us: {
    thick: (3 / 16) * INCH,
    edges: [3 / 4, 1, 5 / 4, 3 / 2, 7 / 4, 2, 9 / 4, 5 / 2, 3, 4].map(v => v * INCH),
    lying: [3 / 16, 1 / 4, 3 / 8, 1 / 2].map(v => v * INCH),
    wide: (3 / 2) * INCH,
  },
} as const;

/** A strip across the ramp under the entry plate, from flat bar as it is sold: on edge as high as it is wide, or lying. */
export type Bearer = Readonly<{
  x_mm: number;
  height_mm: number;
  wide_mm: number;
  thick_mm: number;
}>;

/** Run of the entry in front of the rail, mm: where the rail's bottom face reaches the ground. */
export const entryLength = (d: Design): number => {
  const c = curveOf(d);
  const o = faceOffset(c, 'rail bottom face');
  return spotAtSlope(c, o, slopeAtHeight(c, o, 0)).x;
};

/** Length of the entry plate along the deck top, mm: the arc over the entry's run. */
export const entryArc = (d: Design): number =>
  d.arc.radius_mm * Math.asin(Math.min(1, entryLength(d) / d.arc.radius_mm));

/** The heights that bearers of one bar can have, mm, the lowest first. */
const heights = (d: Design): readonly Omit<Bearer, 'x_mm'>[] => {
  const { thick, edges, lying, wide } = FLATS[d.system];
  return [
    ...lying.map(h => ({ height_mm: h, wide_mm: wide, thick_mm: h })),
    ...edges.map(h => ({ height_mm: h, wide_mm: h, thick_mm: thick })),
  ];
};

/**
 * Bearers under the entry plate from the rails down: each stands where the plate's underside is as high as a flat bar of the yard, so
 * that none is ripped to height, and as far on as the plate may span.
 */
export const entryBearers = (d: Design): readonly Bearer[] => {
  const c = curveOf(d);
  const end = entryLength(d);
  const { thick_mm, spacing_mm } = entryPlate(d.system);
  // The plate's underside at a height is the line so far outside the deck top; each height has one station.
  const stations = heights(d)
    .map(h => ({ ...h, x_mm: spotAtSlope(c, thick_mm, slopeAtHeight(c, thick_mm, h.height_mm)).x }))
    .filter(b => b.x_mm < end)
    .sort((a, b) => b.x_mm - a.x_mm);
  const ground = spotAtSlope(c, thick_mm, slopeAtHeight(c, thick_mm, 0)).x;
  const [first] = stations;
  if (first === undefined) return [];
  // The plate's upper end, before the rails, wants the nearest bearer there is; its other end lies on the ground.
  const chosen: Bearer[] = [first];
  for (let from = first.x_mm; from - ground > spacing_mm; ) {
    const lower = stations.filter(b => b.x_mm < from);
    const next = lower.filter(b => from - b.x_mm <= spacing_mm).at(-1) ?? lower[0];
    if (next === undefined) break;
    chosen.push(next);
    from = next.x_mm;
  }
  return chosen;
};

/** Plate and bearers as pieces: as wide as the ramp, the plate cut to size by the yard. They are set when the rails have come out. */
export const entryMembers = (d: Design): readonly Member[] => {
  const plate = { depth_mm: entryArc(d), width_mm: entryArc(d), wall_mm: entryPlate(d.system).thick_mm };
  const open = { vents: 0, line: { face: 'deck top' } } as const;
  return [
    square('entry plate@', 'entry plate', plate, d.width, entryLength(d) / 2, { ...open, joints: 1 }),
    ...entryBearers(d).map((b, i) =>
      square(
        `bearer@:${i + 1}`,
        'bearer',
        { depth_mm: b.wide_mm, width_mm: b.wide_mm, wall_mm: b.thick_mm },
        d.width,
        b.x_mm,
        { ...open, joints: 2 },
      ),
    ),
  ];
};

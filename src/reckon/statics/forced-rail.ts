import { refuse } from '../../quantity/outcome.ts';
import { STEEL_E_MPA } from '../steel/steel.ts';
import type { FrameMember, FrameNode, FrameSupport } from './frame-model.ts';
import { distance, type LinePlace, lineLength, type Point, placeNearest, placesAlong } from './rail-line.ts';

/** What bends and stretches of a piece of tube. */
export type Stiff = Readonly<{ area_mm2: number; inertia_mm4: number }>;

/** How much of a welded joint counts: cut but not joined, tacked on four sides [practice: 0.3], welded. */
export type JointShare = 0 | 0.3 | 1;

export type Upright = Readonly<{
  /** Along the rail's line from its toe, mm. It stands straight down to the base rail. */
  at_mm: number;
  section: Stiff;
  counts: JointShare;
  /** Bolted with one bolt an end: passes no moment. */
  pinned?: boolean;
}>;

export type Diagonal = Readonly<{
  /** Along the base rail from its start, mm. */
  foot_mm: number;
  /** Along the rail's line, mm. */
  head_mm: number;
  section: Stiff;
  counts: JointShare;
}>;

/** A rail held to its line by clamps that forced it, with the braces that will hold it after. */
export type ForcedRail = Readonly<{
  /** The rail's line as clamped, toe to lip, as a polyline. Its left is toward the centre of the curve. */
  line: readonly Point[];
  rail: Stiff & Readonly<{ depth_mm: number }>;
  /** How far each clamp moved the rail off its free shape, + toward the centre; how the free rail lies does not matter. */
  clamps: readonly Readonly<{ at_mm: number; forced_mm: number }>[];
  base: Readonly<{ from: Point; to: Point; section: Stiff; heldAt_mm: readonly number[] }>;
  /** Whether the rail's toe is welded to the start of the base rail. */
  toeJoined: boolean;
  uprights: readonly Upright[];
  diagonals: readonly Diagonal[];
  /** Where the rail is read after the clamps are off, mm along the line; two or more. */
  stations_mm: readonly number[];
}>;

/** Below this (mm) an upright has no length to speak of, and two clamps or corners are one. */
const LEAST_MM = 1;

type Refusal = ReturnType<typeof refuse>;

/** Refuses what cannot be built, or null. */
export const checkForced = (forced: ForcedRail): Refusal | null => {
  const { line, clamps, base, stations_mm } = forced;
  if (line.length < 2)
    return refuse('missing-field', 'line', 'The rail has no length.', 'two points or more');
  const twin = line.findIndex((point, k) => k > 0 && !(distance(line[k - 1]!, point) >= LEAST_MM));
  if (twin >= 0)
    return refuse(
      'out-of-range',
      `line.${twin}`,
      'Two points of the rail are one.',
      'points 1 mm apart or more',
    );
  if (clamps.length < 2)
    return refuse('missing-field', 'clamps', 'One clamp alone forces nothing.', 'two clamps or more');
  const twice = clamps.findIndex(({ at_mm }, k) =>
    clamps.slice(0, k).some(other => Math.abs(other.at_mm - at_mm) < LEAST_MM),
  );
  if (twice >= 0)
    return refuse('contradiction', `clamps.${twice}.at_mm`, 'Two clamps stand on one spot.', 'clamps apart');
  if (!(base.to.x - base.from.x >= LEAST_MM))
    return refuse('out-of-range', 'base', 'The base rail does not run along.', 'a base rail from toe to lip');
  if (stations_mm.length < 2) {
    const message = 'One station alone says nothing of a shape.';
    return refuse('missing-field', 'stations_mm', message, 'two stations or more');
  }
  return offTheRails(forced) ?? checkUprights(forced);
};

const between = (at: number, length: number): boolean => at >= -1e-3 && at <= length + 1e-3;

const offTheRails = ({
  line,
  clamps,
  base,
  uprights,
  diagonals,
  stations_mm,
}: ForcedRail): Refusal | null => {
  const along = lineLength(line);
  const onBase = distance(base.from, base.to);
  const places = [
    ...clamps.map(({ at_mm }, k) => [`clamps.${k}.at_mm`, at_mm, along] as const),
    ...base.heldAt_mm.map((at, k) => [`base.heldAt_mm.${k}`, at, onBase] as const),
    ...uprights.map(({ at_mm }, k) => [`uprights.${k}.at_mm`, at_mm, along] as const),
    ...diagonals.map(({ foot_mm }, k) => [`diagonals.${k}.foot_mm`, foot_mm, onBase] as const),
    ...diagonals.map(({ head_mm }, k) => [`diagonals.${k}.head_mm`, head_mm, along] as const),
    ...stations_mm.map((at, k) => [`stations_mm.${k}`, at, along] as const),
  ];
  const off = places.find(([, at, length]) => !between(at, length));
  if (off === undefined) return null;
  return refuse('out-of-range', off[0], `${off[1]} mm is not on the rail.`, `0 to ${off[2]} mm`);
};

const checkUprights = ({ line, base, uprights }: ForcedRail): Refusal | null => {
  for (const [k, { at_mm }] of uprights.entries()) {
    const places = placesAlong(line, [at_mm]);
    const head = places[placeNearest(places, at_mm)]!;
    const field = `uprights.${k}.at_mm`;
    const foot = footBelow(head, base);
    if (!between(foot, distance(base.from, base.to)))
      return refuse(
        'out-of-range',
        field,
        'The foot of the upright misses the base rail.',
        'a place above the base rail',
      );
    const floor =
      base.from.y + ((head.x - base.from.x) / (base.to.x - base.from.x)) * (base.to.y - base.from.y);
    if (!(head.y - floor >= LEAST_MM))
      return refuse(
        'out-of-range',
        field,
        'The rail lies on the base rail there.',
        'a place where an upright has length',
      );
  }
  return null;
};

/** Along the base rail to the foot of an upright under a place of the rail. */
export const footBelow = ({ x }: Point, { from, to }: ForcedRail['base']): number =>
  ((x - from.x) / (to.x - from.x)) * distance(from, to);

/** Every place of the rail that something happens at: corners, clamps, braces, stations. */
export const railPlaces = ({ line, clamps, uprights, diagonals, stations_mm }: ForcedRail): LinePlace[] =>
  placesAlong(line, [
    ...clamps.map(clamp => clamp.at_mm),
    ...uprights.map(upright => upright.at_mm),
    ...diagonals.map(diagonal => diagonal.head_mm),
    ...stations_mm,
  ]);

/** A piece of steel between two nodes; `share` is how much of it counts. */
export const piece = (
  id: string,
  from: string,
  to: string,
  { area_mm2, inertia_mm4 }: Stiff,
  share = 1,
): FrameMember => ({
  id,
  from,
  to,
  E_MPa: STEEL_E_MPA * share,
  area_mm2,
  inertia_mm4,
});

/** A frame being put together. */
export type Parts = { nodes: FrameNode[]; members: FrameMember[]; supports: FrameSupport[] };

/** The rail alone, resting on nothing yet. Its bays are the first members, its nodes the first nodes. */
export const railParts = ({ rail }: ForcedRail, places: readonly LinePlace[]): Parts => ({
  nodes: places.map(({ x, y }, k) => ({ id: `rail ${k}`, x_mm: x, y_mm: y })),
  members: places.slice(1).map((_, k) => piece(`rail ${k}`, `rail ${k}`, `rail ${k + 1}`, rail)),
  supports: [],
});

/** Free in space; its toe stands still for the reckoning, and takes no force, for the loads balance each other. */
export const bareRail = (forced: ForcedRail, places: readonly LinePlace[]): Parts => ({
  ...railParts(forced, places),
  supports: [{ node: 'rail 0', x: true, y: true, turn: true }],
});

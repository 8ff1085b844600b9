import { good, type Outcome } from '../../quantity/outcome.ts';
import { type ForcedRail, piece, railParts } from './forced-rail.ts';
import { type FrameAnswer, prepareFrame, type SupportMovement } from './frame.ts';
import type { NodeLoad } from './frame-loads.ts';
import { type LinePlace, type Point, placeNearest } from './rail-line.ts';

/** A clamp's stiffness over that of 100 mm of the rail pulled along: it goes where it is screwed to. */
const CLAMP_STIFFER = 1e6;
const CLAMP_REACH_MM = 100;

export type ClampedRail = Readonly<{
  answer: FrameAnswer;
  /** Force each clamp puts on the rail, N, + toward the centre. */
  clamps: readonly Readonly<{ at_mm: number; force_N: number }>[];
  /** The clamps' forces turned round: what letting go does. */
  loads: readonly NodeLoad[];
}>;

/** Each clamp is a very stiff strut across the rail whose far end is driven; one more along the rail keeps it from sliding. */
export const clampBareRail = async (
  forced: ForcedRail,
  places: readonly LinePlace[],
): Promise<Outcome<ClampedRail>> => {
  const parts = railParts(forced, places);
  const driven: SupportMovement[] = [];
  const strut = (name: string, at: number, way: Point, forced_mm: number) => {
    const { x, y } = places[at]!;
    parts.nodes.push({ id: name, x_mm: x - way.x * CLAMP_REACH_MM, y_mm: y - way.y * CLAMP_REACH_MM });
    const stiff = piece(name, name, `rail ${at}`, forced.rail, CLAMP_STIFFER);
    parts.members.push({ ...stiff, hinge_from: true, hinge_to: true });
    parts.supports.push({ node: name, x: true, y: true });
    driven.push({ node: name, x_mm: way.x * forced_mm, y_mm: way.y * forced_mm });
    return { name, at, way };
  };
  const across = forced.clamps.map(({ at_mm, forced_mm }, k) => {
    const at = placeNearest(places, at_mm);
    return strut(`clamp ${k}`, at, places[at]!.left, forced_mm);
  });
  const { at, way } = across[Math.floor(across.length / 2)]!;
  const along = strut('slide', at, { x: way.y, y: -way.x }, 0);
  const frame = await prepareFrame(parts);
  if (!frame.ok) return frame;
  const solved = frame.value.solve([], driven);
  if (!solved.ok) return solved;
  const forceOf = (name: string) => solved.value.members.find(member => member.id === name)!.from.axial_N;
  return good({
    answer: solved.value,
    clamps: forced.clamps.map(({ at_mm }, k) => ({ at_mm, force_N: forceOf(`clamp ${k}`) })),
    loads: [...across, along].map(end => ({
      node: `rail ${end.at}`,
      x_N: -forceOf(end.name) * end.way.x,
      y_N: -forceOf(end.name) * end.way.y,
    })),
  });
};

import {
  bareRail,
  type ForcedRail,
  footBelow,
  type Parts,
  piece,
  railParts,
  type Stiff,
} from './forced-rail.ts';
import type { FrameModel } from './frame-model.ts';
import { type LinePlace, placeNearest, placesAlong } from './rail-line.ts';

/** The toe's side plates, against the base rail. */
const PLATES_STIFFER = 1e3;

/** The rail with all that counts welded to it, clamps off. */
export const bracedRail = (forced: ForcedRail, places: readonly LinePlace[]): FrameModel => {
  const { base, toeJoined } = forced;
  const uprights = forced.uprights.filter(({ counts }) => counts > 0);
  const diagonals = forced.diagonals.filter(({ counts }) => counts > 0);
  if (!toeJoined && uprights.length === 0 && diagonals.length === 0) return bareRail(forced, places);

  const parts = railParts(forced, places);
  const feet = uprights.map(({ at_mm }) => footBelow(places[placeNearest(places, at_mm)]!, base));
  const ground = placesAlong(
    [base.from, base.to],
    [...feet, ...diagonals.map(({ foot_mm }) => foot_mm), ...base.heldAt_mm],
  );
  const foot = (at: number) => `base ${placeNearest(ground, at)}`;
  const head = (at: number) => `rail ${placeNearest(places, at)}`;
  parts.nodes.push(...ground.map(({ x, y }, k) => ({ id: `base ${k}`, x_mm: x, y_mm: y })));
  parts.members.push(
    ...ground.slice(1).map((_, k) => piece(`base ${k}`, `base ${k}`, `base ${k + 1}`, base.section)),
    ...uprights.map(({ at_mm, section, counts, pinned = false }, k) => ({
      ...piece(`upright ${k}`, foot(feet[k]!), head(at_mm), section, counts),
      hinge_from: pinned,
      hinge_to: pinned,
    })),
    ...diagonals.map(({ foot_mm, head_mm, section, counts }, k) =>
      piece(`diagonal ${k}`, foot(foot_mm), head(head_mm), section, counts),
    ),
  );
  const held = [...new Set(base.heldAt_mm.map(foot))];
  parts.supports.push(...held.map(node => ({ node, x: true, y: true, turn: held.length === 1 })));
  if (held.length === 0) parts.supports.push({ node: 'rail 0', x: true, y: true, turn: true });
  return toeJoined ? joinToe(parts, base.section) : parts;
};

/** The toe and the start of the base rail: one node where they meet, stiff side plates where they lie one above the other. */
const joinToe = (parts: Parts, section: Stiff): FrameModel => {
  const toe = parts.nodes.find(({ id }) => id === 'rail 0')!;
  const start = parts.nodes.find(({ id }) => id === 'base 0')!;
  if (Math.hypot(toe.x_mm - start.x_mm, toe.y_mm - start.y_mm) > 1e-3) {
    return {
      ...parts,
      members: [...parts.members, piece('toe', 'base 0', 'rail 0', section, PLATES_STIFFER)],
    };
  }
  const joined = (id: string) => (id === 'base 0' ? 'rail 0' : id);
  return {
    nodes: parts.nodes.filter(({ id }) => id !== 'base 0'),
    members: parts.members.map(member => ({ ...member, from: joined(member.from), to: joined(member.to) })),
    supports: parts.supports.map(support => ({ ...support, node: joined(support.node) })),
  };
};

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** A joint: x to the right, y up. */
export type FrameNode = Readonly<{ id: string; x_mm: number; y_mm: number }>;

/** A straight member. A hinge at an end passes no moment to its node. */
export type FrameMember = Readonly<{
  id: string;
  from: string;
  to: string;
  E_MPa: number;
  area_mm2: number;
  inertia_mm4: number;
  hinge_from?: boolean | undefined;
  hinge_to?: boolean | undefined;
}>;

/** What of a node is held. */
export type FrameSupport = Readonly<{
  node: string;
  x?: boolean | undefined;
  y?: boolean | undefined;
  turn?: boolean | undefined;
}>;

export type FrameModel = Readonly<{
  nodes: readonly FrameNode[];
  members: readonly FrameMember[];
  supports: readonly FrameSupport[];
}>;

/** Past these a plane frame is refused: more would be slow, and no ramp needs it. */
export const MOST_NODES = 400;
export const MOST_MEMBERS = 1200;

/** A member shorter than this (mm) has no direction. */
const SHORTEST_MM = 1e-6;

/** Where each id stands in its list. */
export type FramePlaces = Readonly<{
  nodes: ReadonlyMap<string, number>;
  members: ReadonlyMap<string, number>;
}>;

/**
 * Looks a model through before anything is reckoned, in the order of the input; gives where each id stands.
 * Refuses: no or too many nodes or members, ids used twice, nodes that are not there, members without length, numbers that are none,
 * stiffnesses not above 0, a node supported twice.
 */
export const checkFrame = ({ nodes, members, supports }: FrameModel): Outcome<FramePlaces> => {
  const places = { nodes: new Map<string, number>(), members: new Map<string, number>() };
  const fault =
    checkNodes(nodes, places.nodes) ??
    checkMembers(members, nodes, places) ??
    checkSupports(supports, places.nodes);
  return fault ?? good(places);
};

type Refusal = Extract<Outcome<never>, { ok: false }>;
type Places = { nodes: Map<string, number>; members: Map<string, number> };

/** Far beyond any frame, and well inside what a number can hold after its cubes are taken. */
const FARTHEST_MM = 1e9;
const GREATEST = 1e60;

const notWithin = (value: number, field: string, most: number): Refusal | undefined => {
  if (!Number.isFinite(value)) return refuse('not-a-number', field, `${field} is no number.`, 'a number');
  if (Math.abs(value) <= most) return undefined;
  return refuse('out-of-range', field, `${field} is ${value}.`, `a number to ${most}`);
};

const anyNode = (places: ReadonlyMap<string, number>): string => {
  const ids = [...places.keys()];
  return `one of the nodes: ${ids.slice(0, 12).join(', ')}${ids.length > 12 ? ' …' : ''}`;
};

/** Refuses an id that names no node of the frame. `field` is the path of the id. */
export const unknownNode = (id: string, field: string, places: ReadonlyMap<string, number>): Refusal =>
  refuse('out-of-range', field, `There is no node "${id}".`, anyNode(places));

const checkNodes = (nodes: readonly FrameNode[], places: Map<string, number>): Refusal | undefined => {
  if (nodes.length === 0)
    return refuse('missing-field', 'nodes', 'The frame has no nodes.', 'two nodes or more');
  if (nodes.length > MOST_NODES) {
    return refuse('too-large', 'nodes', `${nodes.length} nodes are too many.`, `up to ${MOST_NODES} nodes`);
  }
  for (const [k, { id, x_mm, y_mm }] of nodes.entries()) {
    if (places.has(id))
      return refuse('contradiction', `nodes.${k}.id`, `Node "${id}" stands twice.`, 'an id of its own');
    places.set(id, k);
    const fault =
      notWithin(x_mm, `nodes.${k}.x_mm`, FARTHEST_MM) ?? notWithin(y_mm, `nodes.${k}.y_mm`, FARTHEST_MM);
    if (fault !== undefined) return fault;
  }
  return undefined;
};

const checkMembers = (
  members: readonly FrameMember[],
  nodes: readonly FrameNode[],
  places: Places,
): Refusal | undefined => {
  if (members.length === 0)
    return refuse('missing-field', 'members', 'The frame has no members.', 'one member or more');
  if (members.length > MOST_MEMBERS) {
    return refuse(
      'too-large',
      'members',
      `${members.length} members are too many.`,
      `up to ${MOST_MEMBERS} members`,
    );
  }
  for (const [k, member] of members.entries()) {
    const { id } = member;
    if (places.members.has(id)) {
      return refuse('contradiction', `members.${k}.id`, `Member "${id}" stands twice.`, 'an id of its own');
    }
    places.members.set(id, k);
    const from = places.nodes.get(member.from);
    const to = places.nodes.get(member.to);
    if (from === undefined) return unknownNode(member.from, `members.${k}.from`, places.nodes);
    if (to === undefined) return unknownNode(member.to, `members.${k}.to`, places.nodes);
    const length = Math.hypot(nodes[to]!.x_mm - nodes[from]!.x_mm, nodes[to]!.y_mm - nodes[from]!.y_mm);
    if (!(length > SHORTEST_MM)) {
      return refuse(
        'out-of-range',
        `members.${k}.to`,
        `Member "${id}" has no length.`,
        'two nodes apart from each other',
      );
    }
    for (const name of ['E_MPa', 'area_mm2', 'inertia_mm4'] as const) {
      const field = `members.${k}.${name}`;
      const value = member[name];
      const fault = notWithin(value, field, GREATEST);
      if (fault !== undefined) return fault;
      if (value <= 0)
        return refuse('out-of-range', field, `${name} of member "${id}" is ${value}.`, 'a number above 0');
    }
  }
  return undefined;
};

const checkSupports = (
  supports: readonly FrameSupport[],
  places: ReadonlyMap<string, number>,
): Refusal | undefined => {
  const supported = new Set<string>();
  for (const [k, { node }] of supports.entries()) {
    if (!places.has(node)) return unknownNode(node, `supports.${k}.node`, places);
    if (supported.has(node)) {
      const accepted = 'one support a node, with all that it holds';
      return refuse('contradiction', `supports.${k}.node`, `Node "${node}" is supported twice.`, accepted);
    }
    supported.add(node);
  }
  return undefined;
};

import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { FrameModel, FrameSupport } from '../statics/frame-model.ts';
import { STEEL_DENSITY_KG_M3 } from '../steel/steel.ts';
import { FrameBuilder, type FrameMemberPlan, type Piece, spansOf } from './frame-builder.ts';
import { railSpots, SAME_MM } from './rail-spots.ts';
import { type SideFrameInput, sideFrameFault, type UprightInput } from './side-frame-input.ts';
import { type WheelPlace, wheelPlaces } from './wheel-places.ts';

export type FrameFoot = Readonly<{ name: string; node: number; x_mm: number }>;

/** A side frame as the solver takes it, and which node and member is what. */
export type SideFrame = Readonly<{
  input: SideFrameInput;
  model: FrameModel;
  members: readonly FrameMemberPlan[];
  pieces: readonly Piece[];
  places: readonly WheelPlace[];
  feet: readonly FrameFoot[];
  /** Own weight of the steel, shared out to the nodes, N. */
  weight_N: Float64Array;
}>;

/** Where the nodes of a level line stand, in the order of their run. */
type Line = Readonly<{ x: readonly number[]; nodes: readonly number[] }>;

const nearest = ({ x, nodes }: Line, at: number): number =>
  nodes[x.reduce((best, one, k) => (Math.abs(one - at) < Math.abs(x[best]! - at) ? k : best), 0)]!;

/**
 * The plane frame of a side: rail with a node at each slit, joint and place of the wheel; base rail, uprights, side plates where
 * the base rail begins, diagonals pinned at their ends, ties; feet that bear up and down and, where anchored, along. A slit is
 * taken as stiff as the tube, for it is short. Welded ends are stiff.
 * Refuses numbers that contradict each other, tubes that are none, an upright without room and a tie without its uprights.
 */
export const sideFrame = (input: SideFrameInput): Outcome<SideFrame> => {
  const fault = sideFrameFault(input);
  if (fault !== undefined) return fault;
  const build = new FrameBuilder(input.standard, input.grade);

  const spots = railSpots(input);
  const rail: Line = { x: spots.map(({ x }) => x), nodes: spots.map(({ x, y }) => build.node(x, y)) };
  for (const [k, span] of spansOf(rail.nodes, at => spots[at]!.held).entries()) {
    const { tube, sideways_mm } = input.rail;
    const added = build.add(
      { name: String(k + 1), kind: 'curved rail', tube, acrossPlane_mm: sideways_mm },
      span,
    );
    if (!added.ok) return added;
  }
  const base = addBase(input, build);
  if (!base.ok) return base;
  const stands = addStands(input, build, rail, base.value);
  if (!stands.ok) return stands;
  for (const { name, base_x_mm, rail_x_mm, tube } of input.diagonals) {
    const ends = [nearest(base.value, base_x_mm), nearest(rail, rail_x_mm)];
    const added = build.add({ name, kind: 'diagonal', tube, pinned: true }, ends);
    if (!added.ok) return added;
  }
  const feet = input.feet.map(({ name, x_mm }) => ({
    name,
    x_mm,
    node: nearest(x_mm < input.base.from_x_mm - SAME_MM ? rail : base.value, x_mm),
  }));
  const order = inOrderOfRun(build);
  return good({
    input,
    ...modelOf(build, order, input, feet),
    members: build.members,
    places: wheelPlaces(
      spots,
      rail.nodes.map(node => order.place[node]!),
    ),
    feet: feet.map(foot => ({ ...foot, node: order.place[foot.node]! })),
  });
};

/** The base rail, parted at what stands on it or bears it. */
const addBase = (input: SideFrameInput, build: FrameBuilder): Outcome<Line> => {
  const { tube, y_mm, from_x_mm: first, to_x_mm: last } = input.base;
  const parting = [
    first,
    last,
    ...input.uprights.map(({ x_mm }) => x_mm),
    ...input.feet.map(({ x_mm }) => x_mm).filter(x => x >= first - SAME_MM),
  ];
  const x = [...parting, ...input.diagonals.map(({ base_x_mm }) => base_x_mm)]
    .map(at => Math.min(last, Math.max(first, at)))
    .sort((a, b) => a - b)
    .filter((at, k, all) => k === 0 || at - all[k - 1]! >= SAME_MM);
  const nodes = x.map(at => build.node(at, y_mm));
  const parts = (k: number) => parting.some(at => Math.abs(at - x[k]!) < SAME_MM);
  for (const [k, span] of spansOf(nodes, parts).entries()) {
    const added = build.add({ name: String(k + 1), kind: 'base rail', tube }, span);
    if (!added.ok) return added;
  }
  return good({ x, nodes });
};

/** Side plates, uprights, and the ties between them. */
const addStands = (input: SideFrameInput, build: FrameBuilder, rail: Line, base: Line): Outcome<null> => {
  const ties = (input.ties ?? []).map(tie => ({ tie, ends: [] as number[] }));
  const plates: UprightInput = { name: 'side plates', x_mm: input.base.from_x_mm, tube: input.rail.tube };
  for (const stand of [plates, ...input.uprights]) {
    const [foot, top] = [nearest(base, stand.x_mm), nearest(rail, stand.x_mm)];
    const [low, high] = [build.spots[foot]!.y, build.spots[top]!.y];
    if (high - low < SAME_MM)
      return refuse(
        'contradiction',
        'uprights',
        `There is no room for ${stand.name}: the rail is ${Math.round(high - low)} mm over the base rail.`,
        'a place where the rail is higher',
      );
    const nodes = [foot];
    const crossing = ties.filter(
      ({ tie }) =>
        [tie.from_x_mm, tie.to_x_mm].some(x => Math.abs(x - stand.x_mm) < SAME_MM) &&
        tie.y_mm > low + SAME_MM &&
        tie.y_mm < high - SAME_MM,
    );
    for (const { tie, ends } of crossing.sort((a, b) => a.tie.y_mm - b.tie.y_mm)) {
      if (tie.y_mm - build.spots[nodes.at(-1)!]!.y >= SAME_MM) nodes.push(build.node(stand.x_mm, tie.y_mm));
      ends.push(nodes.at(-1)!);
    }
    nodes.push(top);
    const parts = nodes.slice(1).map((node, k) => build.between(nodes[k]!, node));
    const kind = stand === plates ? 'side plates' : 'upright';
    const { name, tube } = stand;
    const added = build.add({ name, kind, tube, inPlane_mm: Math.max(...parts) }, nodes);
    if (!added.ok) return added;
  }
  for (const [k, { tie, ends }] of ties.entries()) {
    if (ends.length !== 2)
      return refuse(
        'contradiction',
        `ties.${k}`,
        'A tie goes from upright to upright.',
        'two uprights taller than it is high',
      );
    const added = build.add({ name: tie.name, kind: 'tie', tube: tie.tube }, ends);
    if (!added.ok) return added;
  }
  return good(null);
};

type Order = Readonly<{ nodes: readonly number[]; place: Int32Array }>;

/** What lies near in the frame comes near in the list, so that the stiffness is a narrow band. */
const inOrderOfRun = ({ spots }: FrameBuilder): Order => {
  const nodes = spots.map((_, k) => k).sort((a, b) => spots[a]!.x - spots[b]!.x);
  const place = new Int32Array(nodes.length);
  for (const [k, node] of nodes.entries()) place[node] = k;
  return { nodes, place };
};

const modelOf = (
  build: FrameBuilder,
  { nodes, place }: Order,
  input: SideFrameInput,
  feet: readonly FrameFoot[],
): Pick<SideFrame, 'model' | 'pieces' | 'weight_N'> => {
  const pieces = build.pieces.map(piece => ({ ...piece, from: place[piece.from]!, to: place[piece.to]! }));
  const weight_N = new Float64Array(nodes.length);
  for (const { member, from, to, length_mm } of pieces) {
    const { area_mm2 } = build.members[member]!.strength.section;
    const half = (area_mm2 * length_mm * STEEL_DENSITY_KG_M3 * 1e-9 * GRAVITY_m_s2) / 2;
    weight_N[from]! += half;
    weight_N[to]! += half;
  }
  const supports = new Map<number, FrameSupport>();
  for (const [k, { node }] of feet.entries()) {
    const at = place[node]!;
    const held = input.feet[k]!.anchored || supports.get(at)?.x === true;
    supports.set(at, { node: String(at), x: held, y: true });
  }
  const members = pieces.map(({ member, from, to, pinned }, k) => {
    const { E_MPa, section } = build.members[member]!.strength;
    return {
      id: String(k),
      from: String(from),
      to: String(to),
      E_MPa,
      area_mm2: section.area_mm2,
      inertia_mm4: section.inertia_mm4,
      hinge_from: pinned,
      hinge_to: pinned,
    };
  });
  const spots = nodes.map((node, k) => ({
    id: String(k),
    x_mm: build.spots[node]!.x,
    y_mm: build.spots[node]!.y,
  }));
  return { pieces, weight_N, model: { nodes: spots, members, supports: [...supports.values()] } };
};

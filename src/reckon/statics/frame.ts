import { type Fault, good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { type Factor, factorRows, factorSquare } from './factor.ts';
import { type FrameLoad, heldEndForces, type LoadSums, sumLoads } from './frame-loads.ts';
import { checkFrame, type FrameModel, type FramePlaces } from './frame-model.ts';
import { type FreeMovement, findFreeMovement } from './mechanism.ts';
import { Movement, strainOf } from './movement.ts';
import { type PlacedMember, placeMember } from './placed-member.ts';
import { assemble, type EnergyRow, frameRows, scaled } from './stiffness.ts';
import { findUnknowns, movementsOf, type Unknowns } from './unknowns.ts';

/** Forces on a member's end in its own axes: x from→to, y to its left. Compression is + at `from`, − at `to`. */
export type EndForces = Readonly<{ axial_N: number; shear_N: number; moment_Nmm: number }>;

export type FrameAnswer = Readonly<{
  nodes: readonly Readonly<{ id: string; x_mm: number; y_mm: number; turn_rad: number }>[];
  /** Of the supports on the frame, in the order of the supports; 0 where a support does not hold. */
  reactions: readonly Readonly<{ node: string; x_N: number; y_N: number; moment_Nmm: number }>[];
  members: readonly Readonly<{ id: string; from: EndForces; to: EndForces }>[];
}>;

/** A support that gives way, or is driven, by so much. Only movements that the support holds count. */
export type SupportMovement = Readonly<{ node: string; x_mm?: number; y_mm?: number; turn_rad?: number }>;

export type PreparedFrame = Readonly<{
  /** Movements, reactions and end forces under one load case. Refuses loads on what is not there. */
  solve: (loads: readonly FrameLoad[], supportMovements?: readonly SupportMovement[]) => Outcome<FrameAnswer>;
}>;

/** Factors whose first correction is a smaller share of the energy than this are good enough: a thousandth of the movement. */
const GOOD_SHARE = 1e-6;
/** Above this share corrections gain too little to end. */
const POOR_SHARE = 0.01;
/** A correction's share of the energy at which an answer is taken: 1e-8 of the movement. Most end far below it. */
const SETTLED_ENERGY = 1e-16;
const MOST_ROUNDS = 60;

/**
 * Makes a plane frame ready for any number of load cases: its stiffness is put together and factored once.
 * Slender elastic members, small movements, no buckling. Lengths mm, forces N, moments N·mm, E MPa; x right, y up, counter-clockwise +.
 * Refuses a model that contradicts itself (see `checkFrame`), and a frame that moves freely, naming the node that moves most.
 * Source: direct stiffness method [derived; checked against published frames].
 */
export const prepareFrame = async (model: FrameModel): Promise<Outcome<PreparedFrame>> => {
  const checked = checkFrame(model);
  if (!checked.ok) return checked;
  const places = checked.value;
  const members = model.members.map(member => placeMember(member, model.nodes, places.nodes));
  const unknowns = findUnknowns(model, places, members);
  const free = await findFreeMovement(members, unknowns);
  if (free !== null) return { ok: false, fault: movesFault(model, free) };

  const rows = frameRows(members, unknowns, member => member.stiffness);
  const square = assemble(rows, unknowns.movements.length);
  const scale = Float64Array.from(square, (row, k) => 1 / Math.sqrt(row[k]!));
  if (!scale.every(value => value > 0 && Number.isFinite(value))) return beyondNumbers('members');
  const withFactor = (factor: Factor): Frame => ({ model, places, members, unknowns, rows, scale, factor });
  const cholesky = await factorSquare(scaled(square, scale));
  if (cholesky !== null && firstCorrection(withFactor(cholesky)) < GOOD_SHARE)
    return good(solver(withFactor(cholesky)));
  const byRows = await factorRows(rows, scale);
  if (byRows !== null && firstCorrection(withFactor(byRows)) < POOR_SHARE)
    return good(solver(withFactor(byRows)));
  return stiffnessesTooFarApart();
};

const solver = (frame: Frame): PreparedFrame => ({
  solve: (loads, supportMovements = []) => solveCase(frame, loads, supportMovements),
});

type Frame = Readonly<{
  model: FrameModel;
  places: FramePlaces;
  members: readonly PlacedMember[];
  unknowns: Unknowns;
  rows: readonly EnergyRow[];
  scale: Float64Array;
  factor: Factor;
}>;

/**
 * How well the factors fit the frame: the share of the energy that is left to correct after one solution, under a load on every
 * unknown at once. The softest mode takes most of such a load, and it is the one whose digits are lost first.
 */
const firstCorrection = (frame: Frame): number => {
  const onMovements = new Float64Array(frame.unknowns.of.length);
  for (const [k, at] of frame.unknowns.movements.entries())
    onMovements[at] = (0.5 + (((k + 1) * 0.618_033_988_749_895) % 1)) / frame.scale[k]!;
  const sums: LoadSums = { onMovements, acrossMembers: new Float64Array(frame.members.length) };
  const movement = new Movement(new Float64Array(frame.unknowns.of.length));
  const first = nextCorrection(frame, sums, movement);
  if (first.energy === 0) return 0;
  move(frame, movement, first.change);
  const share = nextCorrection(frame, sums, movement).energy / first.energy;
  return Number.isNaN(share) ? Infinity : share;
};

const solveCase = (
  frame: Frame,
  loads: readonly FrameLoad[],
  supportMovements: readonly SupportMovement[],
): Outcome<FrameAnswer> => {
  const { model, places, unknowns } = frame;
  const sums = sumLoads(loads, model, places, unknowns.turns);
  if (!sums.ok) return sums;
  const movement = new Movement(drivenMovements(frame, supportMovements));
  const fault = settle(frame, sums.value, movement);
  if (fault !== null) return fault;
  const answer = readOff(frame, sums.value, movement);
  return everyNumberFinite(answer) ? good(answer) : beyondNumbers('loads');
};

const drivenMovements = (
  { places, unknowns }: Frame,
  supportMovements: readonly SupportMovement[],
): Float64Array => {
  const start = new Float64Array(unknowns.of.length);
  for (const { node, x_mm = 0, y_mm = 0, turn_rad = 0 } of supportMovements) {
    const at = places.nodes.get(node);
    if (at === undefined) continue;
    for (const [k, value] of [x_mm, y_mm, turn_rad].entries())
      if (unknowns.held[3 * at + k] === 1) start[3 * at + k] = value;
  }
  return start;
};

/** Moves the nodes until every one is in balance: the first round is the solution, the rest win back the digits rounding took. */
const settle = (frame: Frame, sums: LoadSums, movement: Movement): ReturnType<typeof refuse> | null => {
  // Measured by the forces before they cancel: where loads balance by themselves, all that is left is their rounding.
  const whole = nextCorrection(frame, sums, movement, Math.abs).energy;
  let last = Infinity;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { change, energy } = nextCorrection(frame, sums, movement);
    if (!Number.isFinite(energy)) return beyondNumbers('loads');
    // From the second correction on, one that no longer shrinks is rounding alone.
    if (round > 1 && !(energy < last / 4)) break;
    move(frame, movement, change);
    last = energy;
    if (energy === 0) break;
  }
  return last <= SETTLED_ENERGY * whole ? null : stiffnessesTooFarApart();
};

/** The scaled step that the factors ask for, and the energy in it. */
const nextCorrection = (
  frame: Frame,
  sums: LoadSums,
  movement: Movement,
  part?: (force: number) => number,
): { change: Float64Array; energy: number } => {
  const out = outOfBalance(frame, sums, movement, part);
  const right = Float64Array.from(frame.unknowns.movements, (at, k) => out[at]! * frame.scale[k]!);
  const change = frame.factor.solve(right);
  return { change, energy: change.reduce((sum, value, k) => sum + value * right[k]!, 0) };
};

const move = ({ unknowns, scale }: Frame, movement: Movement, change: Float64Array): void => {
  for (const [k, at] of unknowns.movements.entries()) movement.add(at, change[k]! * scale[k]!);
};

/** What each movement's load is more than its members take; with `part` Math.abs, all of it added up without cancelling. */
const outOfBalance = (
  frame: Frame,
  sums: LoadSums,
  movement: Movement,
  part = (force: number) => force,
): Float64Array => {
  const out = sums.onMovements.map(part);
  for (const [k, member] of frame.members.entries()) {
    const forces = nodeForces(member, endForces(member, sums.acrossMembers[k]!, movement));
    for (const [j, at] of movementsOf(member).entries()) out[at]! += part(-forces[j]!);
  }
  return out;
};

type Ends = Readonly<{ from: EndForces; to: EndForces }>;

const endForces = (member: PlacedMember, across: number, movement: Movement): Ends => {
  const { stiffness, length } = member;
  const strain = strainOf(member, movement);
  const held = heldEndForces(member, across);
  const tension = stiffness.stretch * strain.stretch;
  const near = stiffness.near * strain.near + stiffness.cross * strain.far + held.near;
  const far = stiffness.cross * strain.near + stiffness.far * strain.far + held.far;
  const couple = (near + far) / length;
  return {
    from: { axial_N: -tension, shear_N: couple + held.push, moment_Nmm: near },
    to: { axial_N: tension, shear_N: held.push - couple, moment_Nmm: far },
  };
};

/** End forces in the frame's axes, in the order of the member's six movements. */
const nodeForces = ({ cos, sin }: PlacedMember, { from, to }: Ends): readonly number[] => [
  cos * from.axial_N - sin * from.shear_N,
  sin * from.axial_N + cos * from.shear_N,
  from.moment_Nmm,
  cos * to.axial_N - sin * to.shear_N,
  sin * to.axial_N + cos * to.shear_N,
  to.moment_Nmm,
];

const readOff = (frame: Frame, sums: LoadSums, movement: Movement): FrameAnswer => {
  const { model, places, members, unknowns } = frame;
  const out = outOfBalance(frame, sums, movement);
  // What is out of balance at a held movement is what the support must give, the other way round.
  const reaction = (at: number) => (unknowns.held[at] === 1 ? -out[at]! : 0);
  return {
    nodes: model.nodes.map(({ id }, k) => ({
      id,
      x_mm: movement.plain(3 * k),
      y_mm: movement.plain(3 * k + 1),
      turn_rad: movement.plain(3 * k + 2),
    })),
    reactions: model.supports.map(({ node }) => {
      const at = 3 * places.nodes.get(node)!;
      return { node, x_N: reaction(at), y_N: reaction(at + 1), moment_Nmm: reaction(at + 2) };
    }),
    members: model.members.map(({ id }, k) => ({
      id,
      ...endForces(members[k]!, sums.acrossMembers[k]!, movement),
    })),
  };
};

const everyNumberFinite = ({ nodes, reactions, members }: FrameAnswer): boolean =>
  [...nodes, ...reactions, ...members.flatMap(({ from, to }) => [from, to])].every(record =>
    Object.values(record).every(value => typeof value !== 'number' || Number.isFinite(value)),
  );

const beyondNumbers = (field: string) =>
  refuse(
    'out-of-range',
    field,
    'The figures are too large or too small to be reckoned.',
    'figures of an ordinary size',
  );

const stiffnessesTooFarApart = () =>
  refuse(
    'no-solution',
    'members',
    'The stiffest and the softest members differ too much to be reckoned.',
    'stiffnesses nearer to each other',
  );

const movesFault = (model: FrameModel, { node, x, y }: FreeMovement): Fault => {
  const id = model.nodes[node]!.id;
  return {
    code: 'mechanism',
    field: `nodes.${node}`,
    message: `Node "${id}" moves freely ${direction(x, y)}: nothing resists it.`,
    accepted: 'a support, a member or a welded end that stops it',
  };
};

/** Which way, told by the axis: a free movement goes either way along it. */
const direction = (x: number, y: number): string => {
  if (Math.abs(y) < 0.01) return 'along x';
  if (Math.abs(x) < 0.01) return 'along y';
  const degrees = (Math.atan2(y, x) * 180) / Math.PI;
  return `at ${Math.round(degrees < 0 ? degrees + 180 : degrees)}° from x`;
};

import { type Fault, good, type Outcome, refuse } from '../../quantity/outcome.ts';
import {
  type EndForces,
  endForces,
  type FactoredFrame,
  firstCorrection,
  outOfBalance,
  settle,
} from './balance.ts';
import { type Factor, factorRows, factorSquare } from './factor.ts';
import { type FrameLoad, type LoadSums, sumLoads } from './frame-loads.ts';
import { checkFrame, type FrameModel, type FramePlaces, unknownNode } from './frame-model.ts';
import { type FreeMovement, findFreeMovement } from './mechanism.ts';
import { Movement } from './movement.ts';
import { placeMember } from './placed-member.ts';
import { assemble, frameRows, scaled } from './stiffness.ts';
import { findUnknowns } from './unknowns.ts';

export type { EndForces };

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
  const withFactor = (factor: Factor): Frame => ({ model, places, members, unknowns, scale, factor });
  const cholesky = await factorSquare(scaled(square, scale));
  if (cholesky !== null && firstCorrection(withFactor(cholesky)) < GOOD_SHARE)
    return good(solver(withFactor(cholesky)));
  const byRows = await factorRows(rows, scale);
  if (byRows !== null && firstCorrection(withFactor(byRows)) < POOR_SHARE)
    return good(solver(withFactor(byRows)));
  return stiffnessesTooFarApart();
};

type Frame = FactoredFrame & Readonly<{ model: FrameModel; places: FramePlaces }>;

const solver = (frame: Frame): PreparedFrame => ({
  solve: (loads, supportMovements = []) => solveCase(frame, loads, supportMovements),
});

const solveCase = (
  frame: Frame,
  loads: readonly FrameLoad[],
  supportMovements: readonly SupportMovement[],
): Outcome<FrameAnswer> => {
  const { model, places, unknowns } = frame;
  const sums = sumLoads(loads, model, places, unknowns.turns);
  if (!sums.ok) return sums;
  const driven = drivenMovements(frame, supportMovements);
  if (!driven.ok) return driven;
  const movement = new Movement(driven.value);
  const settled = settle(frame, sums.value, movement);
  if (settled === 'beyond numbers') return beyondNumbers('loads');
  if (settled === 'not in balance') return stiffnessesTooFarApart();
  const answer = readOff(frame, sums.value, movement);
  return everyNumberFinite(answer) ? good(answer) : beyondNumbers('loads');
};

const drivenMovements = (
  { places, unknowns }: Frame,
  supportMovements: readonly SupportMovement[],
): Outcome<Float64Array> => {
  const start = new Float64Array(unknowns.of.length);
  for (const [j, { node, x_mm = 0, y_mm = 0, turn_rad = 0 }] of supportMovements.entries()) {
    const at = places.nodes.get(node);
    if (at === undefined) return unknownNode(node, `supportMovements.${j}.node`, places.nodes);
    for (const [k, value] of [x_mm, y_mm, turn_rad].entries())
      if (unknowns.held[3 * at + k] === 1) start[3 * at + k] = value;
  }
  return good(start);
};

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

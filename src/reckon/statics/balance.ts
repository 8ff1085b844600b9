import type { Factor } from './factor.ts';
import { heldEndForces, type LoadSums } from './frame-loads.ts';
import { Movement, strainOf } from './movement.ts';
import type { PlacedMember } from './placed-member.ts';
import { movementsOf, type Unknowns } from './unknowns.ts';

/** Forces on a member's end in its own axes: x from→to, y to its left. Compression is + at `from`, − at `to`. */
export type EndForces = Readonly<{ axial_N: number; shear_N: number; moment_Nmm: number }>;

/** A frame with its factors: all that finding its balance needs. */
export type FactoredFrame = Readonly<{
  members: readonly PlacedMember[];
  unknowns: Unknowns;
  scale: Float64Array;
  factor: Factor;
}>;

/** A correction's share of the energy at which an answer is taken: 1e-8 of the movement. Most end far below it. */
const SETTLED_ENERGY = 1e-16;
const MOST_ROUNDS = 60;

/** How an attempt at balance ended: the factors may be too poor for the frame, or the figures too large for numbers. */
export type Settled = 'in balance' | 'not in balance' | 'beyond numbers';

/** Moves the nodes until every one is in balance: the first round is the solution, the rest win back the digits rounding took. */
export const settle = (frame: FactoredFrame, sums: LoadSums, movement: Movement): Settled => {
  // Measured by the forces before they cancel: where loads balance by themselves, all that is left is their rounding.
  const whole = nextCorrection(frame, sums, movement, Math.abs).energy;
  let last = Infinity;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { change, energy } = nextCorrection(frame, sums, movement);
    if (!Number.isFinite(energy)) return 'beyond numbers';
    // From the second correction on, one that no longer shrinks is rounding alone.
    if (round > 1 && !(energy < last / 4)) break;
    move(frame, movement, change);
    last = energy;
    if (energy === 0) break;
  }
  return last <= SETTLED_ENERGY * whole ? 'in balance' : 'not in balance';
};

/** The scaled step that the factors ask for, and the energy in it. */
const nextCorrection = (
  frame: FactoredFrame,
  sums: LoadSums,
  movement: Movement,
  part?: (force: number) => number,
): { change: Float64Array; energy: number } => {
  const out = outOfBalance(frame, sums, movement, part);
  const right = Float64Array.from(frame.unknowns.movements, (at, k) => out[at]! * frame.scale[k]!);
  const change = frame.factor.solve(right);
  return { change, energy: change.reduce((sum, value, k) => sum + value * right[k]!, 0) };
};

const move = ({ unknowns, scale }: FactoredFrame, movement: Movement, change: Float64Array): void => {
  for (const [k, at] of unknowns.movements.entries()) movement.add(at, change[k]! * scale[k]!);
};

/** What each movement's load is more than its members take; with `part` Math.abs, all of it added up without cancelling. */
export const outOfBalance = (
  frame: FactoredFrame,
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

/**
 * How well the factors fit the frame: the share of the energy that is left to correct after one solution, under a load on every
 * unknown at once. The softest mode takes most of such a load, and it is the one whose digits are lost first.
 */
export const firstCorrection = (frame: FactoredFrame): number => {
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

type Ends = Readonly<{ from: EndForces; to: EndForces }>;

export const endForces = (member: PlacedMember, across: number, movement: Movement): Ends => {
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

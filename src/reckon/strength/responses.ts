import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { prepareFrame } from '../statics/frame.ts';
import { checkFrame } from '../statics/frame-model.ts';
import { type PlacedMember, placeMember, shapeRows } from '../statics/placed-member.ts';
import { findUnknowns, movementsOf, type Unknowns } from '../statics/unknowns.ts';
import { Band, type BandFactor } from './band-factor.ts';
import { PieceForces } from './piece-forces.ts';
import type { SideFrame } from './side-frame.ts';

export { AXIAL, PER_PIECE, SAG_FROM, SAG_TO, SHEAR } from './piece-forces.ts';

/** What a load does: to every piece, to every node (x, y, turn), and at every foot (along, up: the ground's push on the frame). */
export type Response = Readonly<{ pieces: Float64Array; moved: Float64Array; feet: Float64Array }>;

/** What 1 N to the right and 1 N up do at each place of the wheel, and what the steel's own weight does. */
export type Responses = Readonly<{
  right: readonly Response[];
  up: readonly Response[];
  weight: Response;
}>;

/**
 * Readies a side frame for any number of loads on its rail: everything after this is adding up. The answers come from a
 * narrow band in plain numbers, right to six figures and more: eighty of them in the time of one exact one. A band whose pivots are
 * sound belongs to a frame that stands; where one is lost, the exact solver of statics says why, in its words.
 * Refuses a frame that moves freely, and stiffnesses too far apart.
 */
export const responsesOf = async (frame: SideFrame): Promise<Outcome<Responses>> => {
  const { model, places, weight_N } = frame;
  const checked = checkFrame(model);
  if (!checked.ok) return checked;
  const members = model.members.map(member => placeMember(member, model.nodes, checked.value.nodes));
  const unknowns = findUnknowns(model, checked.value, members);
  const factor = bandOf(members, unknowns).factor();
  if (factor === null) {
    const exact = await prepareFrame(model);
    return exact.ok
      ? refuse(
          'no-solution',
          'members',
          'The stiffest and the softest members differ too much to be reckoned.',
          'stiffnesses nearer to each other',
        )
      : exact;
  }
  const solver: Solver = {
    unknowns,
    factor,
    pieces: new PieceForces(members),
    feet: frame.feet.map(({ node }) => node),
    taken: new Float64Array(2 * model.nodes.length),
  };
  const unit = (movement: number): Response => {
    const loads = new Float64Array(3 * model.nodes.length);
    loads[movement] = 1;
    return respond(solver, loads);
  };
  const weight = new Float64Array(3 * model.nodes.length);
  for (const [node, heavy] of weight_N.entries()) weight[3 * node + 1] = -heavy;
  return good({
    right: places.map(({ node }) => unit(3 * node)),
    up: places.map(({ node }) => unit(3 * node + 1)),
    weight: respond(solver, weight),
  });
};

type Solver = Readonly<{
  unknowns: Unknowns;
  factor: BandFactor;
  pieces: PieceForces;
  feet: readonly number[];
  /** Written over by every load. */
  taken: Float64Array;
}>;

const bandOf = (members: readonly PlacedMember[], unknowns: Unknowns): Band => {
  const six = members.map(member => movementsOf(member).map(movement => unknowns.of[movement]!));
  let half = 0;
  for (const ends of six) {
    const free = ends.filter(unknown => unknown >= 0);
    if (free.length > 0) half = Math.max(half, Math.max(...free) - Math.min(...free));
  }
  const band = new Band(unknowns.movements.length, half);
  for (const [k, member] of members.entries()) {
    const { stretch, near, far } = shapeRows(member);
    const { stiffness } = member;
    const ends = six[k]!;
    for (let i = 0; i < 6; i++) {
      if (ends[i]! < 0) continue;
      for (let j = 0; j <= i; j++) {
        if (ends[j]! < 0) continue;
        band.add(
          ends[i]!,
          ends[j]!,
          stiffness.stretch * stretch[i]! * stretch[j]! +
            stiffness.near * near[i]! * near[j]! +
            stiffness.cross * (near[i]! * far[j]! + far[i]! * near[j]!) +
            stiffness.far * far[i]! * far[j]!,
        );
      }
    }
  }
  return band;
};

const respond = ({ unknowns, factor, pieces, feet, taken }: Solver, loads: Float64Array): Response => {
  const { movements, held } = unknowns;
  const right = new Float64Array(movements.length);
  for (let k = 0; k < right.length; k++) right[k] = loads[movements[k]!]!;
  const solved = factor.solve(right);
  const moved = new Float64Array(loads.length);
  for (let k = 0; k < solved.length; k++) moved[movements[k]!] = solved[k]!;
  const felt = pieces.of(moved);
  pieces.takenFrom(felt, taken);
  const ground = new Float64Array(2 * feet.length);
  for (const [k, node] of feet.entries())
    for (const side of [0, 1] as const)
      if (held[3 * node + side] === 1)
        ground[2 * k + side] = taken[2 * node + side]! - loads[3 * node + side]!;
  return { pieces: felt, moved, feet: ground };
};

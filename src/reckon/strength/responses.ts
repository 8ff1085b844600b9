import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { prepareFrame } from '../statics/frame.ts';
import { checkFrame, type FrameModel } from '../statics/frame-model.ts';
import { type PlacedMember, placeMember, shapeRows } from '../statics/placed-member.ts';
import { findUnknowns, movementsOf, type Unknowns } from '../statics/unknowns.ts';
import { Band, type BandFactor } from './band-factor.ts';
import type { SideFrame } from './side-frame.ts';

/** Figures kept of each piece: pull along it (+), shear, and the moment at either end that sags it (presses its top). */
export const PER_PIECE = 4;
export const AXIAL = 0;
export const SHEAR = 1;
export const SAG_FROM = 2;
export const SAG_TO = 3;

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
  const solver: Solver = { model, members, unknowns, factor, feet: frame.feet.map(({ node }) => node) };
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
  model: FrameModel;
  members: readonly PlacedMember[];
  unknowns: Unknowns;
  factor: BandFactor;
  feet: readonly number[];
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

const respond = ({ model, members, unknowns, factor, feet }: Solver, loads: Float64Array): Response => {
  const solved = factor.solve(Float64Array.from(unknowns.movements, at => loads[at]!));
  const moved = new Float64Array(3 * model.nodes.length);
  for (const [k, at] of unknowns.movements.entries()) moved[at] = solved[k]!;
  const pieces = new Float64Array(PER_PIECE * members.length);
  const taken = new Float64Array(2 * model.nodes.length);
  for (const [k, { from, to, cos, sin, length, stiffness }] of members.entries()) {
    const x = moved[3 * to]! - moved[3 * from]!;
    const y = moved[3 * to + 1]! - moved[3 * from + 1]!;
    const chord = (y * cos - x * sin) / length;
    const nearTurn = moved[3 * from + 2]! - chord;
    const farTurn = moved[3 * to + 2]! - chord;
    const axial = stiffness.stretch * (x * cos + y * sin);
    const near = stiffness.near * nearTurn + stiffness.cross * farTurn;
    const far = stiffness.cross * nearTurn + stiffness.far * farTurn;
    const shear = (near + far) / length;
    // End moments turn counter-clockwise: at `from` that hogs, at `to` it sags.
    pieces.set([axial, shear, -near, far], PER_PIECE * k);
    taken[2 * from]! += -axial * cos - shear * sin;
    taken[2 * from + 1]! += -axial * sin + shear * cos;
    taken[2 * to]! += axial * cos + shear * sin;
    taken[2 * to + 1]! += axial * sin - shear * cos;
  }
  const ground = new Float64Array(2 * feet.length);
  for (const [k, node] of feet.entries()) {
    for (const side of [0, 1] as const)
      if (unknowns.held[3 * node + side] === 1)
        ground[2 * k + side] = taken[2 * node + side]! - loads[3 * node + side]!;
  }
  return { pieces, moved, feet: ground };
};

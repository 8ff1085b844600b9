import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { type FrameModel, type FramePlaces, unknownNode } from './frame-model.ts';
import type { PlacedMember } from './placed-member.ts';

/** A force and a moment on a node: x right, y up, counter-clockwise +. */
export type NodeLoad = Readonly<{
  node: string;
  x_N?: number | undefined;
  y_N?: number | undefined;
  moment_Nmm?: number | undefined;
}>;

/** A uniform load along a whole member, per millimetre of it, + to the left of from→to. */
export type MemberLoad = Readonly<{ member: string; across_N_mm: number }>;

export type FrameLoad = NodeLoad | MemberLoad;

/** All loads of one case added up: on each movement, and across each member. */
export type LoadSums = Readonly<{ onMovements: Float64Array; acrossMembers: Float64Array }>;

/** The ends' moments when both are kept from turning, and the loads' own push at each end, N·mm and N. */
export const heldEndForces = (
  { length, hingeFrom, hingeTo }: PlacedMember,
  across: number,
): Readonly<{ near: number; far: number; push: number }> => {
  const whole = across * length ** 2;
  const push = (-across * length) / 2;
  if (hingeFrom && hingeTo) return { near: 0, far: 0, push };
  if (hingeFrom) return { near: 0, far: whole / 8, push };
  if (hingeTo) return { near: -whole / 8, far: 0, push };
  return { near: -whole / 12, far: whole / 12, push };
};

/**
 * Adds up a load case; several loads on one node or member add. Refuses loads on what is not there, numbers that are none,
 * and a moment on a node that only has hinges round it, for nothing could take it.
 */
export const sumLoads = (
  loads: readonly FrameLoad[],
  model: FrameModel,
  places: FramePlaces,
  turns: Uint8Array,
): Outcome<LoadSums> => {
  const onMovements = new Float64Array(3 * model.nodes.length);
  const acrossMembers = new Float64Array(model.members.length);
  for (const [k, load] of loads.entries()) {
    if ('member' in load) {
      const at = places.members.get(load.member);
      if (at === undefined) {
        const accepted = 'the id of a member of the frame';
        return refuse('out-of-range', `loads.${k}.member`, `There is no member "${load.member}".`, accepted);
      }
      if (!Number.isFinite(load.across_N_mm)) return noNumber(`loads.${k}.across_N_mm`);
      acrossMembers[at]! += load.across_N_mm;
      continue;
    }
    const at = places.nodes.get(load.node);
    if (at === undefined) return unknownNode(load.node, `loads.${k}.node`, places.nodes);
    const { x_N = 0, y_N = 0, moment_Nmm = 0 } = load;
    if (!Number.isFinite(x_N)) return noNumber(`loads.${k}.x_N`);
    if (!Number.isFinite(y_N)) return noNumber(`loads.${k}.y_N`);
    if (!Number.isFinite(moment_Nmm)) return noNumber(`loads.${k}.moment_Nm`);
    if (moment_Nmm !== 0 && turns[at] === 0 && !heldTurn(model, load.node)) {
      const message = `Nothing takes the moment on node "${load.node}": every member end there is hinged.`;
      return refuse(
        'no-solution',
        `loads.${k}.moment_Nm`,
        message,
        'a moment where a member end is welded to the node',
      );
    }
    onMovements[3 * at]! += x_N;
    onMovements[3 * at + 1]! += y_N;
    onMovements[3 * at + 2]! += moment_Nmm;
  }
  return good({ onMovements, acrossMembers });
};

const noNumber = (field: string) =>
  refuse('not-a-number', field, 'The load is no number.', 'a number, + or −');

const heldTurn = (model: FrameModel, node: string): boolean =>
  model.supports.some(support => support.node === node && support.turn === true);

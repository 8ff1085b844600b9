import type { FrameModel, FramePlaces } from './frame-model.ts';
import type { PlacedMember } from './placed-member.ts';

/** x, y and turn of node k are movements 3k, 3k+1 and 3k+2. */
export type Unknowns = Readonly<{
  /** The movement each unknown stands for. */
  movements: readonly number[];
  /** The unknown of each movement, or −1 when it is none. */
  of: Int32Array;
  /** 1 where a support holds the movement. */
  held: Uint8Array;
  /** 1 where some member end is welded to the node, so that its turn means something. */
  turns: Uint8Array;
}>;

/** Movements that no support holds; a turn that no member resists is no unknown. */
export const findUnknowns = (
  model: FrameModel,
  places: FramePlaces,
  members: readonly PlacedMember[],
): Unknowns => {
  const count = model.nodes.length;
  const held = new Uint8Array(3 * count);
  for (const { node, x, y, turn } of model.supports) {
    const at = 3 * places.nodes.get(node)!;
    for (const [k, holds] of [x, y, turn].entries()) if (holds === true) held[at + k] = 1;
  }
  const turns = new Uint8Array(count);
  for (const { from, to, hingeFrom, hingeTo } of members) {
    if (!hingeFrom) turns[from] = 1;
    if (!hingeTo) turns[to] = 1;
  }
  const of = new Int32Array(3 * count).fill(-1);
  const movements: number[] = [];
  for (let movement = 0; movement < 3 * count; movement++) {
    const resisted = movement % 3 < 2 || turns[(movement - 2) / 3] === 1;
    if (held[movement] === 0 && resisted) of[movement] = movements.push(movement) - 1;
  }
  return { movements, of, held, turns };
};

/** Where a member's six movements stand. */
export const movementsOf = ({ from, to }: PlacedMember): readonly number[] => [
  3 * from,
  3 * from + 1,
  3 * from + 2,
  3 * to,
  3 * to + 1,
  3 * to + 2,
];

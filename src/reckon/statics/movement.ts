import type { PlacedMember } from './placed-member.ts';
import { minus, plain, plus, type Twofold, times } from './twofold.ts';
import { movementsOf } from './unknowns.ts';

/** How far every node has moved, in twofold numbers. Grows by corrections. */
export class Movement {
  readonly #head: Float64Array;
  readonly #tail: Float64Array;

  constructor(start: Float64Array) {
    this.#head = Float64Array.from(start);
    this.#tail = new Float64Array(start.length);
  }

  add(movement: number, change: number): void {
    const [head, tail] = plus(this.at(movement), [change, 0]);
    this.#head[movement] = head;
    this.#tail[movement] = tail;
  }

  at(movement: number): Twofold {
    return [this.#head[movement]!, this.#tail[movement]!];
  }

  plain(movement: number): number {
    return plain(this.at(movement));
  }
}

/** What a member feels of its nodes' movement: its stretch, and each end's turn from the chord. */
export const strainOf = (
  member: PlacedMember,
  movement: Movement,
): Readonly<{ stretch: number; near: number; far: number }> => {
  const [x1, y1, turn1, x2, y2, turn2] = movementsOf(member).map(at => movement.at(at)) as [
    Twofold,
    Twofold,
    Twofold,
    Twofold,
    Twofold,
    Twofold,
  ];
  const x = minus(x2, x1);
  const y = minus(y2, y1);
  const stretch = plus(times(x, member.cos), times(y, member.sin));
  const chord = minus(times(y, member.cos / member.length), times(x, member.sin / member.length));
  return { stretch: plain(stretch), near: plain(minus(turn1, chord)), far: plain(minus(turn2, chord)) };
};

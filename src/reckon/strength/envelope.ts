import { pieceAt } from './load-combinations.ts';
import { AXIAL, SAG_FROM, SAG_TO, SHEAR } from './responses.ts';
import type { SideFrame } from './side-frame.ts';

/** The least and the greatest of what a member feels: axial tension +, moment + where it presses the slit face (sags). */
export type MemberEnvelope = Readonly<{
  axial_N: Readonly<{ least: number; most: number }>;
  /** As a size. */
  shear_N: number;
  moment_Nmm: Readonly<{ least: number; most: number }>;
}>;

/** Gathers the envelope of every member of a frame, arrangement by arrangement. */
export class Envelopes {
  readonly #members: number;
  readonly #member: Int32Array;
  readonly #least: Float64Array;
  readonly #most: Float64Array;

  constructor(frame: SideFrame) {
    this.#members = frame.members.length;
    this.#member = Int32Array.from(frame.pieces, ({ member }) => member);
    this.#least = new Float64Array(3 * frame.members.length).fill(Infinity);
    this.#most = new Float64Array(3 * frame.members.length).fill(-Infinity);
  }

  #take(at: number, value: number): void {
    if (value < this.#least[at]!) this.#least[at] = value;
    if (value > this.#most[at]!) this.#most[at] = value;
  }

  /** @param figures of the pieces under one arrangement */
  gather(figures: Float64Array): void {
    for (let piece = 0; piece < this.#member.length; piece++) {
      const at = pieceAt(piece);
      const member = 3 * this.#member[piece]!;
      this.#take(member, figures[at + AXIAL]!);
      this.#take(member + 1, Math.abs(figures[at + SHEAR]!));
      this.#take(member + 2, figures[at + SAG_FROM]!);
      this.#take(member + 2, figures[at + SAG_TO]!);
    }
  }

  /** One of each member, in their order; there must have been one arrangement at least. */
  all(): MemberEnvelope[] {
    return Array.from({ length: this.#members }, (_, k) => ({
      axial_N: { least: this.#least[3 * k]!, most: this.#most[3 * k]! },
      shear_N: this.#most[3 * k + 1]!,
      moment_Nmm: { least: this.#least[3 * k + 2]!, most: this.#most[3 * k + 2]! },
    }));
  }
}

import type { PlacedMember } from '../statics/placed-member.ts';

/** Figures kept of each piece: pull along it (+), shear, and the moment at either end that sags it (presses its top). */
export const PER_PIECE = 4;
export const AXIAL = 0;
export const SHEAR = 1;
export const SAG_FROM = 2;
export const SAG_TO = 3;

/** Figures of a placed member as they lie in a row: cos, sin, length, and its four stiffnesses. */
const PER_MEMBER = 7;

/** The pieces of a frame laid out as plain rows of numbers: what they feel is asked for hundreds of times. */
export class PieceForces {
  readonly #from: Int32Array;
  readonly #to: Int32Array;
  readonly #figures: Float64Array;

  constructor(members: readonly PlacedMember[]) {
    this.#from = Int32Array.from(members, ({ from }) => 3 * from);
    this.#to = Int32Array.from(members, ({ to }) => 3 * to);
    this.#figures = new Float64Array(PER_MEMBER * members.length);
    for (const [k, { cos, sin, length, stiffness }] of members.entries())
      this.#figures.set(
        [cos, sin, length, stiffness.stretch, stiffness.near, stiffness.cross, stiffness.far],
        PER_MEMBER * k,
      );
  }

  /**
   * What the movements of the nodes do to every piece.
   * @param moved x, y and turn of every node
   */
  of(moved: Float64Array): Float64Array {
    const pieces = new Float64Array(PER_PIECE * this.#from.length);
    for (let k = 0; k < this.#from.length; k++) {
      const [from, to] = [this.#from[k]!, this.#to[k]!];
      const own = PER_MEMBER * k;
      const [cos, sin, length] = [this.#figures[own]!, this.#figures[own + 1]!, this.#figures[own + 2]!];
      const cross = this.#figures[own + 5]!;
      const x = moved[to]! - moved[from]!;
      const y = moved[to + 1]! - moved[from + 1]!;
      const chord = (y * cos - x * sin) / length;
      const nearTurn = moved[from + 2]! - chord;
      const farTurn = moved[to + 2]! - chord;
      const near = this.#figures[own + 4]! * nearTurn + cross * farTurn;
      const far = cross * nearTurn + this.#figures[own + 6]! * farTurn;
      const at = PER_PIECE * k;
      pieces[at + AXIAL] = this.#figures[own + 3]! * (x * cos + y * sin);
      pieces[at + SHEAR] = (near + far) / length;
      // End moments turn counter-clockwise: at `from` that hogs, at `to` it sags.
      pieces[at + SAG_FROM] = -near;
      pieces[at + SAG_TO] = far;
    }
    return pieces;
  }

  /**
   * Adds up what the pieces ask of every node.
   * @param pieces what they feel
   * @param taken x and y of every node; written over
   */
  takenFrom(pieces: Float64Array, taken: Float64Array): void {
    taken.fill(0);
    for (let k = 0; k < this.#from.length; k++) {
      const [from, to] = [(2 * this.#from[k]!) / 3, (2 * this.#to[k]!) / 3];
      const [cos, sin] = [this.#figures[PER_MEMBER * k]!, this.#figures[PER_MEMBER * k + 1]!];
      const [axial, shear] = [pieces[PER_PIECE * k + AXIAL]!, pieces[PER_PIECE * k + SHEAR]!];
      const [x, y] = [axial * cos + shear * sin, axial * sin - shear * cos];
      taken[from]! -= x;
      taken[from + 1]! -= y;
      taken[to]! += x;
      taken[to + 1]! += y;
    }
  }
}

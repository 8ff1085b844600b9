import { good, type Outcome } from '../../quantity/outcome.ts';
import type { MemberEnvelope } from './envelope.ts';
import type { MemberKind } from './frame-builder.ts';
import { type Combination, pieceAt } from './load-combinations.ts';
import { type MemberCapacity, type MemberCheck, memberCapacity } from './member-check.ts';
import { AXIAL, SAG_FROM, SAG_TO, SHEAR } from './piece-forces.ts';
import type { SideFrame } from './side-frame.ts';

export type MemberResult = Readonly<{
  name: string;
  kind: MemberKind;
  from_x_mm: number;
  to_x_mm: number;
  /** As designed for: factored by EN, unfactored by AISC. */
  envelope: MemberEnvelope;
  utilisation: number;
  check: MemberCheck;
  worst: Combination;
  slenderness: number;
}>;

/** Gathers how far every member is used. Side plates are checked by their welds alone. */
export class MemberGather {
  readonly #frame: SideFrame;
  readonly #capacities: readonly MemberCapacity[];
  /** The member of each piece; −1 where it is not checked. */
  readonly #member: Int32Array;
  /** Of every member: the greatest share of its strength, and the forces that use it. */
  readonly #share: Float64Array;
  readonly #forces: Float64Array;
  readonly #worst: Combination[];

  private constructor(frame: SideFrame, capacities: readonly MemberCapacity[]) {
    this.#frame = frame;
    this.#capacities = capacities;
    this.#member = Int32Array.from(frame.pieces, ({ member }) =>
      frame.members[member]!.kind === 'side plates' ? -1 : member,
    );
    this.#share = new Float64Array(capacities.length);
    this.#forces = new Float64Array(3 * capacities.length);
    this.#worst = capacities.map(() => ({ load: 'L1', place: null }));
  }

  /** Refuses what `memberCapacity` refuses. */
  static of(frame: SideFrame): Outcome<MemberGather> {
    const capacities: MemberCapacity[] = [];
    for (const { strength, inPlane_mm, acrossPlane_mm } of frame.members) {
      const capacity = memberCapacity(strength, inPlane_mm, acrossPlane_mm);
      if (!capacity.ok) return capacity;
      capacities.push(capacity.value);
    }
    return good(new MemberGather(frame, capacities));
  }

  gather(combination: Combination, figures: Float64Array): void {
    for (let piece = 0; piece < this.#member.length; piece++) {
      const member = this.#member[piece]!;
      if (member < 0) continue;
      const at = pieceAt(piece);
      const axial = figures[at + AXIAL]!;
      const shear = figures[at + SHEAR]!;
      const moment = Math.max(Math.abs(figures[at + SAG_FROM]!), Math.abs(figures[at + SAG_TO]!));
      const share = this.#capacities[member]!.share(axial, shear, moment);
      if (share <= this.#share[member]!) continue;
      this.#share[member] = share;
      this.#worst[member] = combination;
      this.#forces[3 * member] = axial;
      this.#forces[3 * member + 1] = shear;
      this.#forces[3 * member + 2] = moment;
    }
  }

  all(envelopes: readonly MemberEnvelope[]): MemberResult[] {
    return this.#frame.members.map(({ name, kind, from_x_mm, to_x_mm }, k) => ({
      name,
      kind,
      from_x_mm,
      to_x_mm,
      envelope: envelopes[k]!,
      ...this.#capacities[k]!.use({
        axial_N: this.#forces[3 * k]!,
        shear_N: this.#forces[3 * k + 1]!,
        moment_Nmm: this.#forces[3 * k + 2]!,
      }),
      worst: this.#worst[k]!,
      slenderness: this.#capacities[k]!.slenderness,
    }));
  }
}

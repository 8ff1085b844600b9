import { good, type Outcome } from '../../quantity/outcome.ts';
import {
  type FrameTube,
  type Grade,
  type Standard,
  type TubeStrength,
  tubeStrength,
} from './tube-strength.ts';

export type MemberKind = 'curved rail' | 'base rail' | 'upright' | 'diagonal' | 'tie' | 'side plates';

/** A member as it is checked: a whole upright, or a rail from one thing that holds it to the next. */
export type FrameMemberPlan = Readonly<{
  /** The caller's name; rails are numbered span by span from the entry. */
  name: string;
  kind: MemberKind;
  tube: FrameTube;
  strength: TubeStrength;
  from_x_mm: number;
  to_x_mm: number;
  /** Between what holds it in the plane of the frame, and across it. */
  inPlane_mm: number;
  acrossPlane_mm: number;
}>;

/** A straight part of a member between two nodes; its top (left of from→to) is the slit face of a rail. */
export type Piece = Readonly<{
  member: number;
  from: number;
  to: number;
  length_mm: number;
  pinned: boolean;
}>;

export type Spot = Readonly<{ x: number; y: number }>;

type NewMember = Readonly<{
  name: string;
  kind: MemberKind;
  tube: FrameTube;
  /** As long as the member in the plane and across it when left out. */
  inPlane_mm?: number;
  acrossPlane_mm?: number;
  pinned?: boolean;
}>;

/** Collects the nodes, pieces and members of a frame as they are put together. */
export class FrameBuilder {
  readonly spots: Spot[] = [];
  readonly pieces: Piece[] = [];
  readonly members: FrameMemberPlan[] = [];
  readonly #standard: Standard;
  readonly #grade: Grade;
  readonly #strengths = new Map<string, Outcome<TubeStrength>>();

  constructor(standard: Standard, grade: Grade) {
    this.#standard = standard;
    this.#grade = grade;
  }

  node(x: number, y: number): number {
    return this.spots.push({ x, y }) - 1;
  }

  between(a: number, b: number): number {
    return Math.hypot(this.spots[b]!.x - this.spots[a]!.x, this.spots[b]!.y - this.spots[a]!.y);
  }

  /** Joins nodes in a line; refuses a tube that is none. */
  add({ name, kind, tube, pinned = false, ...lengths }: NewMember, nodes: readonly number[]): Outcome<null> {
    const strength = this.#strengthOf(tube);
    if (!strength.ok) return strength;
    const member = this.members.length;
    let whole = 0;
    for (let k = 1; k < nodes.length; k++) {
      const [from, to] = [nodes[k - 1]!, nodes[k]!];
      const length_mm = this.between(from, to);
      whole += length_mm;
      this.pieces.push({ member, from, to, length_mm, pinned });
    }
    this.members.push({
      name,
      kind,
      tube,
      strength: strength.value,
      from_x_mm: this.spots[nodes[0]!]!.x,
      to_x_mm: this.spots[nodes.at(-1)!]!.x,
      inPlane_mm: lengths.inPlane_mm ?? whole,
      acrossPlane_mm: lengths.acrossPlane_mm ?? whole,
    });
    return good(null);
  }

  #strengthOf(tube: FrameTube): Outcome<TubeStrength> {
    const key = `${tube.depth_mm}|${tube.width_mm}|${tube.wall_mm}`;
    const known = this.#strengths.get(key) ?? tubeStrength(tube, this.#standard, this.#grade);
    this.#strengths.set(key, known);
    return known;
  }
}

/** A line of nodes parted where `held` says; the ends always part it. */
export const spansOf = (nodes: readonly number[], held: (k: number) => boolean): number[][] => {
  const spans: number[][] = [];
  let from = 0;
  for (let k = 1; k < nodes.length; k++) {
    if (k < nodes.length - 1 && !held(k)) continue;
    spans.push(nodes.slice(from, k + 1));
    from = k;
  }
  return spans;
};

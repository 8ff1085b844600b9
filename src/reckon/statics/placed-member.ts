import type { FrameMember, FrameNode } from './frame-model.ts';

/**
 * How a member answers: N per mm of stretch, and N·mm per radian of each end's turn from the chord
 * (near = `from`, far = `to`, cross = one end's moment from the other's turn).
 */
export type MemberStiffness = Readonly<{ stretch: number; near: number; cross: number; far: number }>;

/** A member where it stands. Its six movements are x, y, turn of `from`, then of `to`. */
export type PlacedMember = Readonly<{
  from: number;
  to: number;
  length: number;
  /** Direction from→to. */
  cos: number;
  sin: number;
  hingeFrom: boolean;
  hingeTo: boolean;
  stiffness: MemberStiffness;
}>;

/** Slender elastic beam; a hinge is taken out by setting its moment to nought (static condensation) [derived]. */
const beamStiffness = (
  stretch: number,
  bend: number,
  hingeFrom: boolean,
  hingeTo: boolean,
): MemberStiffness => {
  if (hingeFrom && hingeTo) return { stretch, near: 0, cross: 0, far: 0 };
  if (hingeFrom) return { stretch, near: 0, cross: 0, far: 3 * bend };
  if (hingeTo) return { stretch, near: 3 * bend, cross: 0, far: 0 };
  return { stretch, near: 4 * bend, cross: 2 * bend, far: 4 * bend };
};

export const placeMember = (
  member: FrameMember,
  nodes: readonly FrameNode[],
  places: ReadonlyMap<string, number>,
): PlacedMember => {
  const from = places.get(member.from)!;
  const to = places.get(member.to)!;
  const across = nodes[to]!.x_mm - nodes[from]!.x_mm;
  const up = nodes[to]!.y_mm - nodes[from]!.y_mm;
  const length = Math.hypot(across, up);
  const hingeFrom = member.hinge_from === true;
  const hingeTo = member.hinge_to === true;
  const stretch = (member.E_MPa * member.area_mm2) / length;
  const bend = (member.E_MPa * member.inertia_mm4) / length;
  return {
    from,
    to,
    length,
    cos: across / length,
    sin: up / length,
    hingeFrom,
    hingeTo,
    stiffness: beamStiffness(stretch, bend, hingeFrom, hingeTo),
  };
};

/** The same member as stiff along as across, whatever it is made of: for asking whether a frame moves at all. */
export const evenStiffness = ({ length, hingeFrom, hingeTo }: PlacedMember): MemberStiffness =>
  beamStiffness(1, length ** 2 / 12, hingeFrom, hingeTo);

export type Six = readonly [number, number, number, number, number, number];

/** What one unit of each of the six movements does to the stretch and to the turns of the ends from the chord. */
export const shapeRows = ({
  cos,
  sin,
  length,
}: PlacedMember): Readonly<{ stretch: Six; near: Six; far: Six }> => {
  const s = sin / length;
  const c = cos / length;
  return {
    stretch: [-cos, -sin, 0, cos, sin, 0],
    near: [-s, c, 1, s, -c, 0],
    far: [-s, c, 0, s, -c, 1],
  };
};

/**
 * Rows whose squares sum to the member's strain energy: so the whole stiffness is rowsᵀ·rows. Two for the bending,
 * by completing the square of near, cross and far.
 */
export const energyRows = (member: PlacedMember, stiffness: MemberStiffness): number[][] => {
  const { stretch, near, far } = shapeRows(member);
  const rows = [stretch.map(value => value * Math.sqrt(stiffness.stretch))];
  const share = stiffness.near > 0 ? stiffness.cross / stiffness.near : 0;
  const rest = stiffness.far - stiffness.cross * share;
  if (stiffness.near > 0)
    rows.push(near.map((value, k) => (value + share * far[k]!) * Math.sqrt(stiffness.near)));
  if (rest > 0) rows.push(far.map(value => value * Math.sqrt(rest)));
  return rows;
};

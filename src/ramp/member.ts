import type { LineRef, RailName, Tube } from './design.ts';

export type MemberKind =
  | 'curved rail'
  | 'base rail'
  | 'lip upright'
  | 'upright'
  | 'diagonal'
  | 'crossmember'
  | 'base crossmember'
  | 'rear diagonal'
  | 'bearer'
  | 'side plate'
  | 'foot plate'
  | 'entry plate';

/** End cuts from square, rad: 0 is a square cut, + leans so that the long side is toward the lip. */
export type EndCuts = Readonly<{ first_rad: number; second_rad: number }>;

/** A piece that the design needs. The key is its name in the design and may vanish; steel keeps its own name. */
export type Member = Readonly<{
  need: string;
  kind: MemberKind;
  rail?: RailName;
  /** Flat number it stands on, for uprights, diagonals and crossmembers. */
  flat?: number;
  tube: Tube;
  /** Long point to long point, mm. */
  long_mm: number;
  short_mm: number;
  ends: EndCuts;
  line: LineRef;
  /** `now`: cut with the rails; `later`: cut to the rail as it comes out. */
  when: 'now' | 'later';
  /** Run of its middle, mm. */
  x_mm: number;
  /** Back-wall distance of its middle from the entry end of its rail, mm. */
  along_mm?: number;
  /** 5–6 mm vent holes to drill before it is closed, and drain holes. */
  vents: number;
  drains: number;
  joints: number;
}>;

/** Least clear distance of an upright's edge, a crossmember's edge or a screw from any slit, mm (common practice). */
export const CLEAR_OF_SLIT = 25;

export const sectionName = (t: Tube): string =>
  `${[t.depth_mm, t.width_mm, t.wall_mm].map(v => String(Math.round(v * 100) / 100)).join('x')}`;

/** A piece with square ends that is cut to no rail. */
export const square = (
  need: string,
  kind: MemberKind,
  tube: Tube,
  length: number,
  x_mm: number,
  more: Partial<Member> = {},
): Member => ({
  need,
  kind,
  tube,
  long_mm: length,
  short_mm: length,
  ends: { first_rad: 0, second_rad: 0 },
  line: { face: 'ground' },
  when: 'later',
  x_mm,
  vents: 1,
  drains: 0,
  joints: 2,
  ...more,
});

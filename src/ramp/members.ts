import { faceOffset, slopeAtHeight, spotAtSlope, spotAtX } from './curve.ts';
import { BEARER_SPACING, boardSpan, ENTRY_PLATE, SHEET_SUPPORT_LEAST, SHEET_SUPPORT_MOST } from './deck.ts';
import { type LineRef, type RailName, railNames, type Tube } from './design.ts';
import { curveOf, type RailPlan } from './rail-plan.ts';
import type { RailShape } from './rail-shape.ts';
import type { Design } from './settle.ts';

export { UPRIGHT_SPACING } from './settle.ts';

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

/** Least height of an upright worth cutting, mm, and of a bay worth a diagonal (common practice). */
const LEAST_UPRIGHT = 70;
const DIAGONAL_HEIGHT = 250;
/** Least clear distance of an upright's edge, a crossmember's edge or a screw from any slit, mm (common practice). */
export const CLEAR_OF_SLIT = 25;

export const sectionName = (t: Tube): string =>
  `${[t.depth_mm, t.width_mm, t.wall_mm].map(v => String(Math.round(v * 100) / 100)).join('x')}`;

/** Curved rails the deck asks for: two under a sheet, more where boards would span too far. */
export const railCount = (d: Design): number => {
  if (d.deck.kind === 'sheet') return 2;
  const span = boardSpan(d.deck.thickness_mm, d.deck.board_mm);
  return Math.max(2, Math.ceil((d.width - d.tube.width_mm) / span - 1e-9) + 1);
};

export const railsOf = (d: Design): readonly RailName[] => railNames(railCount(d));

/** Clear width between neighbouring rails, mm. */
export const clearWidth = (d: Design): number => {
  const n = railCount(d);
  return (d.width - n * d.tube.width_mm) / (n - 1);
};

/** Where the base rail's top meets the rail's bottom face: the base rail begins there, cut square. */
export const baseStartX = (d: Design): number => {
  const c = curveOf(d);
  const o = faceOffset(c, 'rail bottom face');
  return spotAtSlope(c, o, slopeAtHeight(c, o, d.tube.depth_mm)).x;
};

/** Flats (numbers) that carry uprights, from the lip down, a whole number of pitches apart. */
export const uprightFlats = (d: Design, plan: RailPlan, shape: RailShape): readonly number[] => {
  const last = plan.flats_mm.length - 1;
  const base = d.tube.depth_mm;
  const chosen: number[] = [];
  let from = plan.toLip_mm;
  let pick = -1;
  for (let k = last - 1; k >= 1; k--) {
    const at = plan.flats_mm[k] ?? 0;
    const spot = shape.bottomAt(at);
    if (spot.y - base < LEAST_UPRIGHT) {
      if (pick > 0) chosen.push(pick);
      return chosen;
    }
    if (pick > 0 && from - at > d.spacing) {
      chosen.push(pick);
      from = plan.flats_mm[pick] ?? from;
    }
    pick = k;
  }
  if (pick > 0) chosen.push(pick);
  return chosen;
};

/** Flats that carry a crossmember between the rails, from the entry up. */
export const crossFlats = (d: Design, plan: RailPlan): readonly number[] => {
  const last = plan.flats_mm.length - 1;
  // Boards carry themselves from rail to rail: crossmembers only keep the rails apart, every third of the length.
  const most = d.deck.kind === 'sheet' ? SHEET_SUPPORT_MOST : plan.toLip_mm / 3;
  const flats: number[] = [];
  let from = 0;
  for (let k = 1; k < last; k++) {
    const here = plan.flats_mm[k] ?? 0;
    const next = plan.flats_mm[k + 1] ?? plan.toLip_mm;
    if (next - from > most && here - from > Math.min(SHEET_SUPPORT_LEAST, most) / 2) {
      flats.push(k);
      from = here;
    }
  }
  return flats;
};

const upright = (
  d: Design,
  rail: RailName,
  spot: { x: number; y: number; slope: number },
  name: string,
  along: number,
  flat?: number,
): Member => {
  const b = d.post.depth_mm;
  const centre = spot.y - d.tube.depth_mm;
  const lean = (b / 2) * Math.tan(spot.slope);
  return {
    need: `${flat === undefined ? 'lip upright' : 'upright'}@${rail}${flat === undefined ? '' : `:${name}`}`,
    kind: flat === undefined ? 'lip upright' : 'upright',
    rail,
    ...(flat === undefined ? {} : { flat }),
    tube: d.post,
    long_mm: centre + lean,
    short_mm: centre - lean,
    ends: { first_rad: 0, second_rad: spot.slope },
    line: { face: 'rail bottom face', rail },
    when: 'later',
    x_mm: spot.x,
    along_mm: along,
    vents: 1,
    drains: 0,
    joints: 2,
  };
};

/** Back-wall distance where the lip upright's middle stands: its rear edge under the lip mark. */
const lipUprightAlong = (d: Design, plan: RailPlan): number =>
  plan.toLip_mm - d.post.depth_mm / 2 / Math.cos(d.arc.exit_rad);

const sideMembers = (d: Design, plan: RailPlan, shape: RailShape, base: RailShape): Member[] => {
  const rail = plan.rail;
  const members: Member[] = [];
  members.push({
    need: `curved rail@${rail}`,
    kind: 'curved rail',
    rail,
    tube: d.tube,
    long_mm: plan.cut_mm,
    short_mm: plan.cut_mm,
    ends: { first_rad: 0, second_rad: 0 },
    line: { face: 'hinge line', rail },
    when: 'now',
    x_mm: shape.bottomAt(plan.toLip_mm / 2).x,
    vents: 1,
    drains: 1,
    joints: 0,
  });
  const lipAlong = lipUprightAlong(d, plan);
  const lip = shape.bottomAt(lipAlong);
  const front = baseStartX(d);
  const rear = base.bottomAt(lipAlong).x + d.post.depth_mm / 2;
  members.push({
    need: `base rail@${rail}`,
    kind: 'base rail',
    rail,
    tube: d.tube,
    long_mm: rear - front,
    short_mm: rear - front,
    ends: { first_rad: 0, second_rad: 0 },
    line: { face: 'ground', rail },
    when: 'now',
    x_mm: (front + rear) / 2,
    vents: 1,
    drains: 2,
    joints: 2,
  });
  members.push(upright(d, rail, lip, 'lip', lipAlong));
  const flats = uprightFlats(d, plan, shape);
  const stands = flats.map(k => ({
    k,
    along: plan.flats_mm[k] ?? 0,
    spot: shape.bottomAt(plan.flats_mm[k] ?? 0),
  }));
  for (const s of stands) members.push(upright(d, rail, s.spot, String(s.k), s.along, s.k));
  // A diagonal rises toward the lip in every bay tall enough: from the foot of the lower upright to the rail at the taller one.
  const tops = [{ k: -1, along: lipAlong, spot: lip }, ...stands];
  for (let i = 0; i + 1 < tops.length; i++) {
    const tall = tops[i];
    const low = tops[i + 1];
    if (tall === undefined || low === undefined) continue;
    const clear = (tall.spot.y + low.spot.y) / 2 - d.tube.depth_mm;
    if (clear < DIAGONAL_HEIGHT) continue;
    const b = d.post.depth_mm;
    const x0 = low.spot.x + b;
    const x1 = tall.spot.x - b;
    const y1 = tall.spot.y - b * Math.tan(tall.spot.slope) - d.tube.depth_mm;
    const length = Math.hypot(x1 - x0, y1);
    const beta = Math.atan2(y1, x1 - x0);
    const baseCut = Math.PI / 2 - beta;
    const railCut = Math.PI / 2 - (beta - tall.spot.slope);
    const lean = (b / 2) * (Math.abs(Math.tan(baseCut)) + Math.abs(Math.tan(railCut)));
    members.push({
      need: `diagonal@${rail}:${tall.k < 0 ? 'lip' : tall.k}`,
      kind: 'diagonal',
      rail,
      ...(tall.k < 0 ? {} : { flat: tall.k }),
      tube: d.post,
      long_mm: length + lean,
      short_mm: Math.max(0, length - lean),
      ends: { first_rad: baseCut, second_rad: railCut },
      line: { face: 'rail bottom face', rail },
      when: 'later',
      x_mm: (x0 + x1) / 2,
      vents: 1,
      drains: 0,
      joints: 2,
    });
  }
  return members;
};

const square = (
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

const crossMembers = (d: Design, plan: RailPlan, shape: RailShape, rails: readonly RailName[]): Member[] => {
  const clear = clearWidth(d);
  const members: Member[] = [];
  const front = baseStartX(d);
  const rear = shape.bottomAt(lipUprightAlong(d, plan)).x;
  for (let i = 0; i + 1 < rails.length; i++) {
    const pair = `${rails[i]}-${rails[i + 1]}`;
    const lines: LineRef = { face: 'rail top face' };
    const edge = d.post.depth_mm;
    const spots: [string, number, number | undefined][] = [
      ['entry', edge, undefined],
      ...crossFlats(d, plan).map((k): [string, number, number] => [String(k), plan.flats_mm[k] ?? 0, k]),
      ['lip', plan.toLip_mm - edge, undefined],
    ];
    for (const [name, along, flat] of spots) {
      members.push(
        square(`crossmember@${pair}:${name}`, 'crossmember', d.post, clear, shape.bottomAt(along).x, {
          line: lines,
          along_mm: along,
          ...(flat === undefined ? {} : { flat }),
        }),
      );
    }
    const bases: [string, number][] = [
      ['front', front + 60],
      ...(rear - front > 900 ? ([['middle', (front + rear) / 2]] as [string, number][]) : []),
      ['rear', rear],
    ];
    for (const [name, x] of bases) {
      members.push(square(`base crossmember@${pair}:${name}`, 'base crossmember', d.post, clear, x));
    }
    const tall = shape.bottomAt(lipUprightAlong(d, plan)).y - 2 * d.tube.depth_mm;
    if (tall > DIAGONAL_HEIGHT) {
      const beta = Math.atan2(tall, clear);
      const length = Math.hypot(clear, tall);
      const lean = (d.post.depth_mm / 2) * (Math.tan(beta) + 1 / Math.tan(beta));
      members.push({
        ...square(`rear diagonal@${pair}`, 'rear diagonal', d.post, length, rear),
        short_mm: Math.max(0, length - lean),
        ends: { first_rad: beta, second_rad: Math.PI / 2 - beta },
      });
    }
  }
  return members;
};

/** Heights of the entry's bearers under its plate, from the rail start back toward the ground, mm. */
export const entryBearers = (d: Design): readonly { x_mm: number; height_mm: number }[] => {
  const c = curveOf(d);
  const end = entryLength(d);
  const bearers: { x_mm: number; height_mm: number }[] = [];
  for (let x = end - 20; x > 0; x -= BEARER_SPACING) {
    const height_mm = spotAtX(c, ENTRY_PLATE, x).y;
    if (height_mm < 3) break;
    bearers.push({ x_mm: x, height_mm });
  }
  return bearers;
};

/** Run of the entry in front of the rail, mm: where the rail's bottom face reaches the ground. */
export const entryLength = (d: Design): number => {
  const c = curveOf(d);
  const o = faceOffset(c, 'rail bottom face');
  return spotAtSlope(c, o, slopeAtHeight(c, o, 0)).x;
};

/** Every steel piece the design needs, each rail computed from its own shape (as drawn, or as measured). */
export const membersOf = (
  d: Design,
  plans: readonly RailPlan[],
  shapeOf: (plan: RailPlan) => RailShape,
  /** What the base rail under a rail is cut to: a rail only tacked moves no base rail. */
  baseOf: (plan: RailPlan) => RailShape = shapeOf,
): readonly Member[] => {
  const rails = plans.map(p => p.rail);
  const members = plans.flatMap(p => sideMembers(d, p, shapeOf(p), baseOf(p)));
  const first = plans[0];
  if (first !== undefined) members.push(...crossMembers(d, first, shapeOf(first), rails));
  const plate: Tube = { depth_mm: 100, width_mm: 60, wall_mm: d.tube.wall_mm };
  for (const rail of rails) {
    for (const side of ['inside', 'outside']) {
      members.push(
        square(`side plate@${rail}:${side}`, 'side plate', plate, 100, baseStartX(d), {
          vents: 0,
          joints: 2,
          rail,
          when: 'now',
        }),
      );
    }
    for (const end of ['entry', 'lip']) {
      members.push(
        square(
          `foot plate@${rail}:${end}`,
          'foot plate',
          { depth_mm: 100, width_mm: 100, wall_mm: 5 },
          100,
          0,
          {
            vents: 0,
            joints: 1,
            rail,
            when: 'now',
          },
        ),
      );
    }
  }
  return members;
};

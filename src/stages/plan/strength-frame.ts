import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import type { System } from '../../quantity/quantities.ts';
import type { RailName } from '../../ramp/design.ts';
import { deckMass } from '../../ramp/mass.ts';
import type { Member } from '../../ramp/members.ts';
import type { Ramp } from '../../ramp/ramp.ts';
import { STEEL_GRADES } from '../../reckon/steel/steel.ts';
import type { RidingLoads } from '../../reckon/strength/loads.ts';
import { middleLine } from '../../reckon/strength/rail-spots.ts';
import type { SideFrameInput, UprightInput } from '../../reckon/strength/side-frame-input.ts';
import type { Grade } from '../../reckon/strength/tube-strength.ts';
import { deratesOf } from '../derates.ts';
import type { Situation } from '../situation.ts';
import { jointWall, railWall, sameWall } from '../weld-walls.ts';

/** The least steel that a yard of these units sells as tube, whichever standard judges it: what nobody ordered by grade is taken for (common practice). */
const YARD_GRADE = { metric: 'S235', us: 'grade unknown' } as const;
/** From this wall a V is opened along each closed slit before it is welded, mm (bench rule; practice). */
const OPEN_FROM_WALL = 2.5;

export const gradeOf = (system: System): Grade => {
  const grade = STEEL_GRADES.find(g => g.name === YARD_GRADE[system]);
  return { yield_MPa: grade?.yield_MPa ?? 220, tensile_MPa: grade?.tensile_MPa ?? 310 };
};

/** What is known of the welder: test pieces that were broken and held. */
export type Proven = Readonly<{ slit: boolean; joint: boolean }>;

export const provenOf = (s: Situation): Proven => {
  const { slit, joint } = deratesOf(s);
  return { slit: slit.factor === 1, joint: joint.factor === 1 };
};

/** What would still be known of the welder after a change: a test piece of one wall says nothing of another. */
export const provenAfter = (proven: Proven, before: Situation, after: Situation): Proven => ({
  slit: proven.slit && sameWall(railWall(before), railWall(after)),
  joint: proven.joint && sameWall(jointWall(before), jointWall(after)),
});

const of = (ramp: Ramp, rail: RailName, kind: Member['kind']): readonly Member[] =>
  ramp.members.filter(m => m.rail === rail && m.kind === kind);

/** Greatest distance along a rail between crossmembers, which hold it sideways, mm. */
const sideways = (ramp: Ramp, toLip_mm: number): number => {
  const at = [0, ...ramp.members.filter(m => m.kind === 'crossmember').map(m => m.along_mm ?? 0), toLip_mm];
  const sorted = [...new Set(at)].sort((a, b) => a - b);
  return Math.max(...sorted.slice(1).map((x, k) => x - (sorted[k] ?? 0)));
};

/** Width of deck that one rail bears with people standing on it, mm: half way to either neighbour, the greatest there is. */
const share = (ramp: Ramp): number => {
  const gaps = ramp.rails.length - 1;
  const pitch = (ramp.design.width - ramp.design.tube.width_mm) / gaps;
  return gaps > 1 ? pitch : pitch / 2 + ramp.design.tube.width_mm / 2;
};

/** The tops of a diagonal's two ends, back from its length and its cuts: run of its foot and of its head, mm. */
const ends = (m: Member, stands: readonly Member[]): readonly [number, number] | null => {
  const after = stands.findIndex(x => x.x_mm > m.x_mm);
  const low = stands[after - 1];
  const tall = stands[after];
  return low === undefined || tall === undefined
    ? null
    : [low.x_mm + m.tube.depth_mm, tall.x_mm - m.tube.depth_mm];
};

/**
 * One side frame as the strength kernel takes it, as drawn or as its survey found it, with all of the rider on it. Null for a rail
 * that is none.
 */
export const sideFrameOf = (
  ramp: Ramp,
  rail: RailName,
  loads: RidingLoads,
  proven: Proven,
): SideFrameInput | null => {
  const plan = ramp.plans.get(rail);
  const shape = ramp.shapes.get(rail);
  const base = of(ramp, rail, 'base rail')[0];
  if (plan === undefined || shape === undefined || base === undefined) return null;
  const d = ramp.design;
  // A rail is as strong as its own tube; the base rails are the frame's.
  const { tube } = plan;
  const slits = plan.slits.filter(slit => slit.at_mm > 2 && slit.at_mm < plan.toLip_mm - 2);
  // A rolled rail has no corners: its line is drawn through the spots its uprights are named by.
  const inner = slits.length > 0 ? slits.map(slit => slit.at_mm) : plan.flats_mm.slice(1, -1);
  const spots = [0, ...inner, plan.toLip_mm].map((at, k, all) => ({
    ...shape.bottomAt(at),
    slit: slits.length > 0 && k > 0 && k < all.length - 1,
  }));
  const points = middleLine(spots, tube.depth_mm);
  const last = points.at(-1)?.x_mm ?? 0;
  const from_x_mm = Math.max(points[0]?.x_mm ?? 0, base.x_mm - base.long_mm / 2);
  const to_x_mm = Math.max(base.x_mm + base.long_mm / 2, from_x_mm + 2);
  const onBase = (x: number): number => Math.min(Math.min(last, to_x_mm), Math.max(from_x_mm, x));
  const stands = [...of(ramp, rail, 'upright'), ...of(ramp, rail, 'lip upright')].sort(
    (a, b) => a.x_mm - b.x_mm,
  );
  const uprights = stands.map(
    (m): UprightInput => ({
      name: m.flat === undefined ? 'lip' : String(m.flat),
      x_mm: onBase(m.x_mm),
      tube: m.tube,
    }),
  );
  // Named without their rail: two rails that are alike are one question.
  const diagonals = of(ramp, rail, 'diagonal').flatMap((m, k) => {
    const at = ends(m, stands);
    return at === null
      ? []
      : [{ name: String(k + 1), base_x_mm: onBase(at[0]), rail_x_mm: onBase(at[1]), tube: m.tube }];
  });
  const at = [points[0]?.x_mm ?? 0, from_x_mm, ...uprights.map(u => u.x_mm)]
    .sort((a, b) => a - b)
    .filter((x, k, all) => k === 0 || x - (all[k - 1] ?? 0) >= 2);
  return {
    standard: d.standard,
    grade: gradeOf(d.system),
    rail: {
      points,
      tube,
      opened: slits.length > 0 && tube.wall_mm >= OPEN_FROM_WALL,
      sideways_mm: sideways(ramp, plan.toLip_mm),
    },
    base: { tube: base.tube, y_mm: base.tube.depth_mm / 2, from_x_mm, to_x_mm },
    uprights,
    diagonals,
    feet: at.map((x_mm, k) => ({
      name: String(k + 1),
      x_mm,
      anchored: k === 0 || k === at.length - 1,
    })),
    loads: {
      riding_N: loads.riding_N,
      drop_N: loads.drop_N,
      along_share: loads.along_share,
      standing_N_mm: loads.standing_N_mm2 * share(ramp),
      deck_N_mm: (deckMass(d) * GRAVITY_m_s2) / ramp.rails.length / Math.max(1, plan.toLip_mm),
    },
    slitProven: proven.slit,
    jointProven: proven.joint,
  };
};

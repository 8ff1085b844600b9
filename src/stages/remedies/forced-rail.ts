import { faceOffset, slopeAtHeight } from '../../ramp/curve.ts';
import type { RailName, Tube } from '../../ramp/design.ts';
import type { Member } from '../../ramp/members.ts';
import { curveOf, type RailPlan } from '../../ramp/rail-plan.ts';
import type { ForcedRail, JointShare, Stiff } from '../../reckon/statics/forced-rail.ts';
import { lineLength } from '../../reckon/statics/rail-line.ts';
import { tubeSection } from '../../reckon/steel/section.ts';
import type { Situation } from '../situation.ts';

const BAYS = 12;
const STATIONS = 9;
/** One clamp for so much of rail, mm; never fewer than three (common practice). */
const RAIL_PER_CLAMP = 400;
const FEWEST_CLAMPS = 3;

export const stiffOf = (s: Situation, tube: Tube): Stiff | null => {
  const rule = s.ramp.design.standard === 'AISC' ? 'AISC' : 'EN10219';
  const section = tubeSection({ shape: 'rect', ...tube, rule });
  return section.ok ? { area_mm2: section.value.area_mm2, inertia_mm4: section.value.inertia_mm4 } : null;
};

/** Back-wall distance where the rail meets the base rail's top, mm: what lies before it rests on a pad and takes no part. */
const joinAlong = (s: Situation, plan: RailPlan): number => {
  const c = curveOf(s.ramp.design);
  const slope = slopeAtHeight(c, faceOffset(c, 'rail bottom face'), s.ramp.design.tube.depth_mm);
  return ((slope - plan.start_rad) / plan.turn_rad) * plan.bend_mm;
};

/** Where clamps stand along the back wall, mm, entry to lip: at middles of flats, an even share of the rail each. */
export const clampPlaces = (plan: RailPlan): readonly Readonly<{ name: string; along_mm: number }>[] => {
  const count = Math.max(FEWEST_CLAMPS, Math.ceil(plan.toLip_mm / RAIL_PER_CLAMP));
  const flats = plan.flats_mm.map((at, k) => ({ k, at })).slice(1, -1);
  const chosen = new Map<number, number>();
  for (let i = 0; i < count; i++) {
    const wanted = ((i + 0.5) * plan.toLip_mm) / count;
    const free = flats.filter(f => !chosen.has(f.k));
    if (free.length === 0) break;
    const nearest = free.reduce((a, b) => (Math.abs(b.at - wanted) < Math.abs(a.at - wanted) ? b : a));
    chosen.set(nearest.k, nearest.at);
  }
  return [...chosen].sort((a, b) => a[1] - b[1]).map(([k, along_mm]) => ({ name: `flat ${k}`, along_mm }));
};

export type Clamped = Readonly<{
  forced: ForcedRail;
  /** The clamps that pull, as named on the rail, in the order of `forced.clamps`. */
  clamps: readonly Readonly<{ name: string; along_mm: number; forced_mm: number }>[];
  post: Stiff;
  /** An upright of the frame as the model takes it. */
  uprightOf: (m: Member, counts: JointShare) => ForcedRail['uprights'][number];
}>;

/**
 * A rail pulled to its line, as the statics want it; null where there is nothing to hold it or no section known.
 * @param offAt how far the free rail lies off its line at a back-wall distance, mm, + toward the centre
 * @param countsOf how much of an upright or diagonal counts
 */
export const clampedRail = (
  s: Situation,
  rail: RailName,
  offAt: (along_mm: number) => number,
  countsOf: (m: Member) => JointShare,
): Clamped | null => {
  const { design: d } = s.ramp;
  const plan = s.ramp.plans.get(rail);
  const shape = s.ramp.nominalShapes.get(rail);
  const section = stiffOf(s, d.tube);
  const post = stiffOf(s, d.post);
  if (plan === undefined || shape === undefined || section === null || post === null) return null;
  const join = joinAlong(s, plan);
  const reach = plan.toLip_mm - join;
  const clamps = clampPlaces(plan)
    .filter(c => c.along_mm > join)
    .map(c => ({ ...c, forced_mm: -offAt(c.along_mm) }));
  const mine = s.ramp.members.filter(m => m.rail === rail && m.along_mm !== undefined);
  const uprights = mine.filter(m => m.kind === 'upright' || m.kind === 'lip upright');
  if (clamps.length < 2 || uprights.length === 0 || reach <= 0) return null;

  const line = Array.from({ length: BAYS + 1 }, (_, k) => {
    const { x, y } = shape.bottomAt(join + (k * reach) / BAYS);
    return { x, y };
  });
  const long = lineLength(line);
  const onLine = (along: number): number => Math.min(long, Math.max(0, ((along - join) / reach) * long));
  const start = line[0] ?? { x: 0, y: 0 };
  const end = Math.max(...uprights.map(m => m.x_mm), ...line.map(p => p.x));
  const uprightOf = (m: Member, counts: JointShare) => ({
    at_mm: onLine(m.along_mm ?? 0),
    section: post,
    counts,
  });
  // A diagonal rises from the foot of the next lower upright to the rail at the taller one, whose flat it is named after.
  const tall = [...uprights].sort((a, b) => (b.along_mm ?? 0) - (a.along_mm ?? 0));
  const diagonals = s.ramp.members.flatMap((m): ForcedRail['diagonals'][number][] => {
    if (m.kind !== 'diagonal' || m.rail !== rail) return [];
    const at = tall.findIndex(u => u.flat === m.flat);
    const head = tall[at];
    const foot = tall[at + 1];
    if (head === undefined || foot === undefined) return [];
    return [
      {
        foot_mm: Math.max(0, foot.x_mm - start.x),
        head_mm: onLine(head.along_mm ?? 0),
        section: post,
        counts: countsOf(m),
      },
    ];
  });
  return {
    forced: {
      line,
      rail: { ...section, depth_mm: d.tube.depth_mm },
      clamps: clamps.map(c => ({ at_mm: onLine(c.along_mm), forced_mm: c.forced_mm })),
      base: { from: start, to: { x: end, y: start.y }, section, heldAt_mm: [] },
      toeJoined: true,
      uprights: uprights.map(m => uprightOf(m, countsOf(m))),
      diagonals,
      stations_mm: Array.from({ length: STATIONS }, (_, k) => (k * long) / (STATIONS - 1)),
    },
    clamps,
    post,
    uprightOf,
  };
};

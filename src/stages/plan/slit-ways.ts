import type { Answered, Tube } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { variant } from './variant.ts';

/** Kerf narrower and wider by this beside the one in hand, mm: a new disc and a worn one differ by as much (common practice). */
const KERF_STEP = 0.2;
/** The next tube a yard has, mm deeper and wider. */
const NEXT_TUBE = { metric: 10, us: 12.7 } as const;
/** Hours of a fabricator's roller, asked for and fetched, in minutes of one's own (common practice). */
const ROLLED_MINUTES = 90;

/** A beginner's minutes for one slit: mark, saw, deburr, close, tack, weld, read (times 3–4 at 2 mm wall, 5–6 at 3 mm, and so on; practice). */
const minutesPerSlit = (tube: Tube): number => (tube.wall_mm > 2.5 ? 18 : 15);

export const slitMinutes = (s: Situation, plan: RailPlan, tube: Tube = s.ramp.design.tube): number =>
  plan.slits.length * s.ramp.rails.length * minutesPerSlit(tube);

const planFills = (plan: RailPlan, rails: number): Fills => ({
  count: plan.slits.length,
  all: plan.slits.length * rails,
  pitch: { v: plan.pitch_mm, as: 'slit' },
  close: { v: plan.slits[0]?.close_rad ?? 0, as: 'angle' },
  gap: { v: plan.slits[0]?.gap_mm ?? 0, as: 'thickness' },
  kerf: { v: plan.kerf_mm, as: 'thickness' },
});

/**
 * The ways to slit this rail side by side, before anything is marked: the kerf as it is, a narrower and a wider one, the next
 * tube, and rails rolled by a fabricator. A way that the steel forbids is not offered.
 */
export const slitWays = (s: Situation): readonly Finding[] => {
  const d = s.ramp.design;
  const plan = s.ramp.plans.get(s.ramp.rails[0] ?? '');
  if (!s.build.agreed || d.route === 'rolled' || plan === undefined || plan.slits.length === 0) return [];
  if (s.build.marks.length > 0) return [];
  const rails = s.ramp.rails.length;
  const offers: Offer[] = [];
  const add = (remedy: string, change: Answered, field: keyof Answered): void => {
    const v = variant(s, change);
    if (v === null || v.plan.slits.length === 0) return;
    offers.push({
      remedy,
      fills: {
        ...planFills(v.plan, rails),
        depth: { v: v.design.tube.depth_mm, as: 'length' },
        width: { v: v.design.tube.width_mm, as: 'length' },
      },
      minutes: slitMinutes(s, v.plan, v.design.tube),
      plan: { field, value: change[field] },
    });
  };
  const kerf = (k: number): Answered => ({ cutter: { ...d.cutter, kerf_mm: Math.round(k * 1000) / 1000 } });
  add('slits-narrower', kerf(plan.kerf_mm - KERF_STEP), 'cutter');
  add('slits-wider', kerf(plan.kerf_mm + KERF_STEP), 'cutter');
  const more = NEXT_TUBE[s.build.system];
  const sides = (by: number): Answered => ({
    tube: { ...d.tube, depth_mm: d.tube.depth_mm + by, width_mm: d.tube.width_mm + by },
  });
  add('slits-deeper-tube', sides(more), 'tube');
  offers.push({
    remedy: 'slits-rolled',
    fills: { count: plan.slits.length * rails },
    minutes: ROLLED_MINUTES,
    plan: { field: 'route', value: 'rolled' },
  });
  offers.sort((a, b) => a.minutes - b.minutes);
  // As it is stands first: it is what happens when nothing is chosen.
  offers.unshift({
    remedy: 'leave-slits',
    fills: planFills(plan, rails),
    minutes: slitMinutes(s, plan),
    plan: { count: plan.slits.length, kerf_mm: plan.kerf_mm },
  });
  // Steel that forbids every other way has findings of its own that say so.
  if (offers.length < 3) return [];
  return [
    {
      key: 'slit-ways',
      stage: 'plan',
      severity: 'watch',
      words: 'slit-ways',
      fills: planFills(plan, rails),
      tall: { v: plan.slits.length, as: 'count' },
      offers,
    },
  ];
};

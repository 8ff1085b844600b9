import type { MarkedThird } from '../../ramp/measured.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { thirdsOf } from '../rail-thirds.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { RAIL_LIMIT, railRun } from './rail-run.ts';

/** Feeler and file bring back this much of a rail's line, mm (common practice). */
const WIDENED = 0.5;

/**
 * A third that was sawn narrower than it was marked for: its slits meet at the face before they have closed as far as the plan
 * asks. What closes is the narrowest kerf at the face.
 */
const narrow = (s: Situation, plan: RailPlan, t: MarkedThird): Finding | null => {
  if (t.feeler_mm === null || t.bent_rad !== null) return null;
  const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(plan.rail) };
  const lever = tube.depth_mm - tube.wall_mm / 2;
  const most = t.feeler_mm / lever;
  if (most >= t.close_rad - 1e-6) return null;
  const n = t.marks_mm.length;
  const missing = n * (t.close_rad - most);
  const held = (third: number, close: number): number => (third === t.third ? most : close);
  const left = railRun(plan, slit => held(slit.third, slit.close_rad));
  const rest = plan.slits.filter(slit => slit.marked === null);
  const limit = RAIL_LIMIT[s.ramp.design.tolerance];
  const after = (v: number): NonNullable<Offer['after']> => ({
    v: Math.abs(v),
    as: 'length',
    within: Math.abs(v) <= limit,
  });
  const fills: Fills = {
    rail: plan.rail,
    third: t.third,
    read: { v: t.feeler_mm, as: 'thickness' },
    wanted: { v: lever * t.close_rad, as: 'thickness' },
    missing: { v: missing, as: 'angle' },
    lip: { v: Math.abs(left.lip_mm), as: 'length' },
    count: n,
  };
  const common = { rail: plan.rail, third: t.third } as const;
  const offers: Offer[] = [
    {
      remedy: 'kerf-widen',
      fills,
      minutes: 2 * n,
      plan: { ...common, kerf_mm: lever * t.close_rad },
      after: after(WIDENED),
    },
  ];
  const share = rest.length === 0 ? 0 : missing / rest.length;
  if (rest.length > 0 && rest.every(slit => slit.close_rad + share <= plan.kerf_mm / lever + 1e-9)) {
    const run = railRun(plan, slit =>
      slit.marked === null ? slit.close_rad + share : held(slit.third, slit.close_rad),
    );
    offers.push({ remedy: 'kerf-next-third', fills, minutes: 1, plan: common, after: after(run.worst_mm) });
  }
  const lastMark = t.marks_mm.at(-1) ?? 0;
  const at_mm = lastMark + plan.pitch_mm / 2;
  if (missing <= most && at_mm < plan.bend_mm) {
    const run = railRun(plan, slit => held(slit.third, slit.close_rad), [
      { at_mm, close_rad: Math.max(0, missing - plan.pull.rad) },
    ]);
    offers.push({
      remedy: 'kerf-extra-slit',
      fills: { ...fills, at: { v: at_mm, as: 'slit' } },
      minutes: 20,
      plan: { ...common, at_mm, close_rad: missing },
      after: after(run.worst_mm),
    });
  }
  offers.push({ remedy: 'leave-kerf', fills, minutes: 0, plan: common, after: after(left.worst_mm) });
  return {
    key: `kerf-narrow@${plan.rail}:${t.third}`,
    stage: 'cut',
    severity: Math.abs(left.worst_mm) > limit ? 'fix' : 'watch',
    words: 'kerf-narrow',
    fills,
    tall: { v: missing, as: 'angle' },
    worst_mm: Math.abs(left.worst_mm),
    limit: { v: limit, as: 'length' },
    offers: sortOffers(offers),
  };
};

/** Thirds whose slits were gauged narrower than they have to close. */
export const kerfFindings = (s: Situation): readonly Finding[] =>
  s.ramp.rails.flatMap(rail => {
    const plan = s.ramp.plans.get(rail);
    const thirds = new Set(thirdsOf(s, rail).map(t => t.third));
    return plan === undefined
      ? []
      : (s.measured.marks.get(rail) ?? [])
          .filter(t => thirds.has(t.third))
          .map(t => narrow(s, plan, t))
          .filter(f => f !== null);
  });

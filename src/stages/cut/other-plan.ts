import type { DesignField, RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { isSawn } from '../slit-strip.ts';
import { sortOffers } from '../sort-offers.ts';
import { RAIL_LIMIT, railRun } from './rail-run.ts';

/** Answers that change where a rail's slits stand or how far they close. */
const SHAPES_RAIL: readonly DesignField[] = ['shape', 'straight', 'tube', 'deck'];
/** What marking by tape brings back of a rail's line, mm (common practice). */
const MARKED_AGAIN = 0.5;
/** Minutes to slit, close and tack one slit again from a new blank (common practice). */
const NEW_RAIL_PER_SLIT = 12;

const changedSince = (s: Situation, n: number): boolean =>
  SHAPES_RAIL.some(field => (s.build.setAt.get(field) ?? 0) > n);

/** The offers for a rail part of whose slits were marked for another curve. */
const offersFor = (
  s: Situation,
  plan: RailPlan,
  worst: number,
  limit: number,
  fills: Fills,
): readonly Offer[] => {
  const { rail } = plan;
  const marked = plan.slits.filter(slit => slit.marked !== null);
  const thirds = s.measured.marks.get(rail) ?? [];
  const closed = new Set(thirds.filter(t => t.bent_rad !== null).map(t => t.third));
  const after = (v: number): NonNullable<Offer['after']> => ({
    v: Math.abs(v),
    as: 'length',
    within: Math.abs(v) <= limit,
  });
  const offers: Offer[] = [];
  if (!marked.some(slit => isSawn(s, rail, slit.third, slit.number))) {
    offers.push({
      remedy: 'slits-mark-again',
      fills,
      minutes: 15,
      plan: { rail, entries: thirds.map(t => t.entry) },
      after: after(MARKED_AGAIN),
    });
  }
  const open = marked.filter(slit => !closed.has(slit.third));
  const lever = (() => {
    const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(rail) };
    return tube.depth_mm - tube.wall_mm / 2;
  })();
  // Each marked slit bends by what its own stretch of back wall needs now, less what its weld will add.
  const pitch =
    open.length > 1 ? ((open.at(-1)?.at_mm ?? 0) - (open[0]?.at_mm ?? 0)) / (open.length - 1) : plan.pitch_mm;
  const close_rad = (pitch * plan.turn_rad) / plan.bend_mm - plan.pull.rad;
  if (open.length > 0 && close_rad > 0 && close_rad <= plan.kerf_mm / lever) {
    // What is not marked yet is laid out for what these then leave over, as it will be once they are read.
    const rest = plan.slits.filter(slit => slit.marked === null);
    const given = marked.reduce((sum, slit) => sum + (open.includes(slit) ? close_rad : slit.close_rad), 0);
    const left = plan.turn_rad - plan.pull.rad * plan.slits.length - given;
    const run = railRun(plan, slit =>
      slit.marked === null ? left / rest.length : open.includes(slit) ? close_rad : slit.close_rad,
    );
    offers.push({
      remedy: 'slits-close-anew',
      fills: { ...fills, close: { v: close_rad, as: 'angle' }, open: open.length },
      minutes: 5,
      plan: { rail, close_rad, slits: open.map(slit => slit.number) },
      after: after(run.worst_mm),
    });
  }
  return sortOffers([
    ...offers,
    { remedy: 'slits-design-back', fills, minutes: 3, plan: { rail }, after: after(0) },
    {
      remedy: 'slits-new-rail',
      fills,
      minutes: NEW_RAIL_PER_SLIT * plan.slits.length,
      plan: { rail, spoils: s.build.pieces.filter(p => p.serves === `curved rail@${rail}`).at(-1)?.id ?? '' },
      after: after(MARKED_AGAIN),
    },
    { remedy: 'leave-slits-marked', fills, minutes: 0, plan: { rail }, after: after(worst) },
  ]);
};

const railFinding = (s: Situation, rail: RailName): readonly Finding[] => {
  const plan = s.ramp.plans.get(rail);
  const marks = s.build.marks.filter(m => m.rail === rail);
  const oldest = Math.min(...marks.map(m => m.n));
  // Once the rail has been surveyed, what it is stands above what it was marked for.
  if (plan === undefined || marks.length === 0 || s.measured.curves.has(rail)) return [];
  if (!changedSince(s, oldest)) return [];
  const run = railRun(plan, slit => slit.close_rad);
  const limit = RAIL_LIMIT[s.ramp.design.tolerance];
  if (Math.abs(run.worst_mm) <= limit) return [];
  const fills: Fills = {
    rail,
    marked: plan.slits.filter(slit => slit.marked !== null).length,
    worst: { v: Math.abs(run.worst_mm), as: 'length' },
    count: plan.slits.length,
  };
  return [
    {
      key: `slits-other-plan@${rail}`,
      stage: 'cut',
      severity: 'fix',
      words: run.worst_mm > 0 ? 'slits-other-plan-in' : 'slits-other-plan-out',
      fills,
      tall: { v: run.worst_mm, as: 'length', sign: true },
      worst_mm: Math.abs(run.worst_mm),
      limit: { v: limit, as: 'length' },
      offers: offersFor(s, plan, run.worst_mm, limit, fills),
      blocks: [...new Set(plan.slits.map(slit => slit.third))].flatMap(third => [
        `cut/saw-third@${rail}:${third}`,
        `cut/mark-third@${rail}:${third}`,
      ]),
    },
  ];
};

/** Rails whose slits were marked before the curve was changed: what is on the steel against what is drawn now. */
export const otherPlanFindings = (s: Situation): readonly Finding[] =>
  s.ramp.rails.flatMap(rail => railFinding(s, rail));

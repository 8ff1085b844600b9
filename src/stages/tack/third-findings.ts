import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import { type Third, thirdsOf } from '../rail-thirds.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { worstLaid } from '../slit-errors.ts';
import { sortOffers } from '../sort-offers.ts';
import { BEND_LIMIT, SMOOTH_LIMIT } from './limits.ts';
import { bendAfter, KEYS, lastThird, leverOf } from './thirds.ts';

/** Minutes to break a slit's tack, set it and tack it again, and to read an angle twice (common practice). */
const AGAIN_MINUTES = 6;
const READ_MINUTES = 5;
/** What a re-closed third is brought back to, rad: the gauge's own step (exact). */
const GAUGE = (0.1 * Math.PI) / 180;

/** The error of every slit when a third is off and later slits take it back, or nothing does; rad. */
const errorsWhen = (plan: RailPlan, t: Third, off: number, takenBack: boolean): readonly number[] => {
  const later = plan.slits.filter(slit => slit.third > t.third).length;
  return plan.slits.map(slit => {
    if (slit.third === t.third) return off / t.slits.length;
    return takenBack && slit.third > t.third ? -off / later : 0;
  });
};

const findingOf = (s: Situation, rail: RailName, plan: RailPlan, t: Third): Finding | null => {
  const read = s.build.readings.get(readingKey(KEYS.read(rail, t.third), 'bent'));
  if (read === undefined) return null;
  const off = read.value - bendAfter(s, rail, t.third);
  const limit = BEND_LIMIT[s.ramp.design.tolerance];
  if (Math.abs(off) <= limit) return null;
  const isLast = t.third === lastThird(s, rail);
  const smooth = SMOOTH_LIMIT[s.ramp.design.tolerance];
  const after = (errors: readonly number[]): NonNullable<Offer['after']> => {
    const v = worstLaid(plan, errors);
    return { v, as: 'length', within: v <= smooth };
  };
  const left = after(errorsWhen(plan, t, off, !isLast));
  const each = Math.abs(off) / t.slits.length;
  const fills: Fills = {
    rail,
    third: t.third,
    first: t.slits[0]?.number ?? 0,
    last: t.slits.at(-1)?.number ?? 0,
    count: t.slits.length,
    off: { v: Math.abs(off), as: 'angle' },
    read: { v: read.value, as: 'angle' },
    wanted: { v: bendAfter(s, rail, t.third), as: 'angle' },
    each: { v: each, as: 'angle' },
    gap: { v: leverOf(s, rail) * each, as: 'thickness' },
    worst: { v: left.v, as: 'length' },
  };
  const frozen = { rail, third: t.third, off_rad: off, slits: t.slits.map(slit => slit.number) };
  const offers: readonly Offer[] = [
    { remedy: isLast ? 'leave-last-third' : 'leave-third', fills, minutes: 0, plan: frozen, after: left },
    { remedy: 'third-read-again', fills, minutes: READ_MINUTES, plan: frozen },
    {
      remedy: off > 0 ? 'third-open' : 'third-close',
      fills,
      minutes: AGAIN_MINUTES * t.slits.length,
      plan: frozen,
      after: after(errorsWhen(plan, t, Math.sign(off) * GAUGE, false)),
    },
  ];
  return {
    // A new reading is a new question.
    key: `third-off@${rail}:${t.third}:${read.entry}`,
    stage: 'tack',
    severity: isLast ? 'fix' : 'watch',
    words: off > 0 ? 'third-over' : 'third-under',
    fills,
    tall: { v: off, as: 'angle', sign: true },
    worst_mm: left.v,
    limit: { v: limit, as: 'angle' },
    offers: sortOffers(offers),
  };
};

/** Thirds whose bend came out other than their slits were closed for. */
export const thirdFindings = (s: Situation): readonly Finding[] =>
  s.ramp.rails.flatMap(rail => {
    const plan = s.ramp.plans.get(rail);
    if (plan === undefined) return [];
    return thirdsOf(s, rail)
      .map(t => findingOf(s, rail, plan, t))
      .filter(f => f !== null);
  });

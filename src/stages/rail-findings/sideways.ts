import { readStations } from '../../build/facts.ts';
import type { Survey } from '../../build/fold.ts';
import { countingSurvey } from '../../build/surveys.ts';
import type { RailName } from '../../ramp/design.ts';
import { sidewaysBow } from '../../reckon/rail/sideways.ts';
import { length, signed } from '../remedies/remedy.ts';
import { type BowCase, bowOffers, sideOf } from '../remedies/sideways.ts';
import type { Finding, Stage } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { limitsOf } from './limits.ts';

/** A rail bowed out of its plane, by the string along its side: one side wall is ahead of the other, or one slit closed askew. */
export const sidewaysFinding = (
  s: Situation,
  rail: RailName,
  phases: readonly Survey['phase'][],
  stage: Stage,
): Finding | null => {
  const survey = countingSurvey(s.build, rail, 'sideways');
  const plan = s.ramp.plans.get(rail);
  if (survey === null || plan === undefined || !phases.includes(survey.phase)) return null;
  const { stations_mm, offsets_mm } = readStations(survey);
  if (stations_mm.length < 3) return null;
  const seen = sidewaysBow(stations_mm, offsets_mm, survey.read_to_mm);
  const { sideways: limit_mm } = limitsOf(s);
  const worst = Math.abs(seen.worst_mm);
  if (worst <= limit_mm) return null;
  const at = seen.kink_at_mm;
  const kink =
    at === null || plan.slits.length === 0
      ? null
      : plan.slits.reduce((a, b) => (Math.abs(b.at_mm - at) < Math.abs(a.at_mm - at) ? b : a)).number;
  const c: BowCase = { s, survey, plan, bow_mm: seen.worst_mm, kink, limit_mm };
  const k = stations_mm.indexOf(seen.worst_at_mm);
  return {
    key: `rail-bow@${rail}#${survey.id}`,
    stage,
    severity: 'fix',
    words: kink === null ? `rail-bow-${sideOf(seen.worst_mm)}` : 'rail-bow-kink',
    fills: {
      rail,
      bow: length(worst),
      bowed: signed(seen.worst_mm),
      station: k + 1,
      slit: kink ?? 0,
      limit: length(limit_mm),
    },
    tall: { v: worst, as: 'length' },
    worst_mm: worst,
    limit: { v: limit_mm, as: 'length' },
    offers: sortOffers(bowOffers(c)),
  };
};

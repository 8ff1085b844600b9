import type { RailReading } from '../rail-findings/reading.ts';
import type { Offer } from '../sheet.ts';
import type { Ask, Situation } from '../situation.ts';
import { railAsk, railKnown } from './rail-ask.ts';
import { recutMinutes } from './re-cut.ts';
import { length, listed, offer, type RailCase } from './remedy.ts';
import { settingOf, slitsFree } from './slit-limits.ts';

/** Laying both rails side by side and marking the turned slits (common practice). */
const MINUTES = 25;

/** The question of how `other` is brought to match `this`; null where its slits cannot be got at. */
export const matchAsk = (s: Situation, other: RailReading, onto: RailReading): Ask | null =>
  slitsFree(other.survey.phase) ? railAsk(s, other, onto) : null;

/**
 * The other rail is made like this one: a pair that matches rides true even where it is off its line. This rail stays as
 * far off as it is.
 * @param other the rail whose slits are turned
 * @param after_mm worst that is left of what the finding is about
 */
export const offerMatchRail = (
  c: RailCase,
  other: RailReading,
  after: (pair_mm: number) => number,
): readonly Offer[] => {
  const ask = matchAsk(c.s, other, c.r);
  if (ask === null) return [];
  const known = railKnown(c.s, ask);
  if (known.is === 'pending' || known.value.recuts.length === 0) return [];
  const { recuts, recut_mm } = known.value;
  const slits = recuts.map(t => settingOf(other, t.slit, t.turn_rad));
  return [
    offer(
      c,
      'match-rail',
      MINUTES + recutMinutes(other.survey.phase, slits.length),
      after(recut_mm),
      {
        other: other.rail,
        slits: listed(slits.map(x => x.slit)),
        count: slits.length,
        pair: length(recut_mm),
      },
      { rail: other.rail, onto: c.r.rail, survey: other.survey.id, phase: other.survey.phase, slits },
    ),
  ];
};

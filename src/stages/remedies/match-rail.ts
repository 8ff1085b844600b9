import type { RailReading } from '../rail-findings/reading.ts';
import type { Offer } from '../sheet.ts';
import type { Ask, Situation } from '../situation.ts';
import { railAsk, railKnown } from './rail-ask.ts';
import { recutMinutes } from './re-cut.ts';
import { length, listed, offer, type RailCase } from './remedy.ts';
import { settingOf, slitsFree } from './slit-limits.ts';

/** Laying both rails side by side and marking the turned slits (common practice). */
const MINUTES = 25;

/** Another rail, and the question of how its slits bring it to match. */
export type Matching = Readonly<{ other: RailReading; ask: Ask }>;

/** Null where the other rail's slits cannot be got at. */
export const matchingOf = (s: Situation, other: RailReading, onto: RailReading): Matching | null => {
  const ask = slitsFree(other.survey.phase) ? railAsk(s, other, onto) : null;
  return ask === null ? null : { other, ask };
};

/**
 * The other rail is made like this one: a pair that matches rides true even where it is off its line. This rail stays as
 * far off as it is.
 * @param matching the rail whose slits are turned
 * @param after_mm worst that is left of what the finding is about
 */
export const offerMatchRail = (
  c: RailCase,
  matching: Matching | null,
  after: (pair_mm: number) => number,
): readonly Offer[] => {
  if (matching === null) return [];
  const { other, ask } = matching;
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

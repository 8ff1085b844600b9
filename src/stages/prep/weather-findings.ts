import { readingKey } from '../../build/fold.ts';
import type { Fills, Finding } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { HAND_WARM_C, WEATHER, weatherOf } from './weather.ts';

/** After so long the weather of the last evening says nothing of this one, ms (common practice: one reading a session). */
const GOOD_FOR_ms = 16 * 3_600_000;

/** Arcs are being struck: begun on the rails, and the frame not welded yet. */
const arcsGoOn = (s: Situation): boolean => {
  const begun = [...s.build.ticks.keys()].some(
    k => k.startsWith('tack/close-third') || k.startsWith('weld/sides'),
  );
  return begun && !s.build.ticks.has('assemble/weld') && !s.build.skips.has('assemble/weld');
};

/** The weather was read on another evening than this one. */
export const weatherFindings = (s: Situation): readonly Finding[] => {
  const weather = weatherOf(s);
  const read = s.build.readings.get(readingKey(WEATHER, 'steel'));
  if (weather === null || read === undefined || !arcsGoOn(s)) return [];
  const age_ms = s.now - Date.parse(read.at);
  if (!(age_ms > GOOD_FOR_ms)) return [];
  const days = Math.floor(age_ms / 86_400_000);
  const fills: Fills = {
    days,
    hours: Math.floor(age_ms / 3_600_000),
    steel: { v: weather.steel_C, as: 'temperature' },
    least: { v: weather.least_C, as: 'temperature' },
    hand: { v: HAND_WARM_C, as: 'temperature' },
  };
  const plan = { read: read.entry };
  return [
    {
      key: `weather-old@${read.entry}`,
      stage: 'prep',
      severity: 'watch',
      words: days >= 2 ? 'weather-old-days' : 'weather-old',
      fills,
      offers: sortOffers([
        { remedy: 'weather-again', fills, minutes: 5, plan },
        { remedy: 'weather-warm', fills, minutes: 30, plan },
        { remedy: 'leave-weather', fills, minutes: 0, plan },
      ]),
    },
  ];
};

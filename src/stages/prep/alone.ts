import type { Fills, Finding } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { lastSpark } from './fire-watch.ts';
import { valueAt } from './reading.ts';

/** Hot work of one evening for one person, s (common practice). */
export const EVENING_s = 2.5 * 3600;
/** A gap in the log as long as this begins another evening, s. */
const GAP_s = 3 * 3600;
/** The evening is still going on, s after its last entry. */
const STILL_s = 3600;

/** When this evening began, ms: the first entry after the last long gap; null when nobody is at it. */
const began = (s: Situation): number | null => {
  const { live } = s.build;
  let first = s.now;
  for (let i = live.length - 1; i >= 0; i--) {
    const at = Date.parse(live[i]?.at ?? '');
    if (!(first - at < GAP_s * 1000)) break;
    first = at;
  }
  const last = Date.parse(live.at(-1)?.at ?? '');
  return first === s.now || !(s.now - last < STILL_s * 1000) ? null : first;
};

/** Alone past the hours of one evening, sparks this evening: the hour in which hands slip. */
export const aloneFindings = (s: Situation): readonly Finding[] => {
  if ((valueAt(s, 'plan/helpers', 'helpers') ?? 0) > 0) return [];
  const spark = lastSpark(s);
  const from = spark === null ? null : began(s);
  if (spark === null || from === null || spark.at < from) return [];
  const on_s = (s.now - from) / 1000;
  if (on_s < EVENING_s) return [];
  const fills: Fills = { on: { v: on_s, as: 'time' }, most: { v: EVENING_s, as: 'time' } };
  const plan = { from };
  return [
    {
      key: `alone-late@${from}`,
      stage: 'prep',
      severity: 'fix',
      words: 'alone-late',
      fills,
      offers: sortOffers([
        { remedy: 'alone-stop', fills, minutes: 0, plan },
        { remedy: 'alone-somebody', fills, minutes: 10, plan },
        { remedy: 'alone-no-sparks', fills, minutes: 0, plan },
        { remedy: 'leave-alone', fills, minutes: 0, plan },
      ]),
    },
  ];
};

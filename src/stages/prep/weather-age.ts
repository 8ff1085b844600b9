import { WEATHER } from '../arc-steps.ts';
import type { Fills, Gate } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { once } from './once.ts';
import { readAt } from './reading.ts';

/** After so long what was read of the weather says nothing of the arc that is struck now, h (common practice: one reading a session). */
export const GOOD_FOR_h = 16;
const HOUR_ms = 3_600_000;
const GOOD_FOR_ms = GOOD_FOR_h * HOUR_ms;
/** From so many hours on it is told in days. */
const IN_DAYS_h = 48;

const NUMBERS = ['air', 'steel', 'damp'] as const;
const LATER = ['wet', 'wind'] as const;

/** The oldest of what was told of the weather, a reason for not reading it among it; null where nothing was, or all is fresh. */
const oldest = once((s): Readonly<{ entry: string; at_ms: number }> | null => {
  const told = [
    ...[...NUMBERS, ...LATER].map(ask => readAt(s, WEATHER, ask)),
    s.build.skips.get(WEATHER),
  ].flatMap(t => (t === undefined ? [] : [{ entry: t.entry, at_ms: Date.parse(t.at) }]));
  const old = told.filter(t => s.now - t.at_ms > GOOD_FOR_ms).sort((a, b) => a.at_ms - b.at_ms);
  return old[0] ?? null;
});

/** Whether something of the weather was told too long ago to strike an arc by it. */
export const weatherIsOld = (s: Situation): boolean => oldest(s) !== null;

/** A reason for going on with an old reading is good for as long as a reading is: after that it is asked for under a new name. */
const nameOf = (s: Situation, step: string, entry: string): string => {
  let id = `weather-old@${entry}`;
  for (;;) {
    const passed = s.build.overrides.get(`${step} ${id}`);
    if (passed === undefined || !(s.now - Date.parse(passed.at) > GOOD_FOR_ms)) return id;
    id += `+${passed.entry}`;
  }
};

/** Longer than a night: what comes after it is another evening, h. */
const NIGHT_h = 12;

/**
 * The end of the evening on which an entry was written, ms. Days are counted from there, as the pause after it counts them: weather
 * read at the evening's beginning is no day older than the work that followed it.
 */
const eveningEnds = (s: Situation, entry: string, at_ms: number): number => {
  const { live } = s.build;
  let end = at_ms;
  for (let i = live.findIndex(e => e.id === entry) + 1; i < live.length; i++) {
    const next = Date.parse(live[i]?.at ?? '');
    if (!(next - end <= NIGHT_h * HOUR_ms)) break;
    end = Math.max(end, next);
  }
  return end;
};

/**
 * Shut once the weather was read too long ago; reading all of it anew opens it.
 * @param step the step whose gate it is
 */
export const weatherOldGate = (s: Situation, step: string): readonly Gate[] => {
  const old = oldest(s);
  if (old === null) return [];
  const hours = Math.floor((s.now - old.at_ms) / HOUR_ms);
  const days = Math.floor((s.now - eveningEnds(s, old.entry, old.at_ms)) / (24 * HOUR_ms));
  const fills: Fills = { hours, days, good: GOOD_FOR_h };
  return [
    {
      id: nameOf(s, step, old.entry),
      words: hours >= IN_DAYS_h && days > 1 ? 'weather-old-days' : 'weather-old',
      shut: true,
      fills,
      measure: WEATHER,
      soon: true,
    },
  ];
};

import type { Situation } from '../situation.ts';
import { changedSince } from '../test-pieces.ts';
import { type Place, WALL_FIGURE, wallAt } from './places.ts';

export const PIECE_FINDING = 'piece-look@';

/** A knob turned after a test piece that did not hold: what is set instead, and when that was chosen. */
export type Turned = Readonly<{
  at_ms: number;
  amps: number | null;
  feed_m_min: number | null;
  volts: number | null;
  travel_mm_s: number | null;
}>;

const numberOr = (v: unknown): number | null => (typeof v === 'number' && v > 0 ? v : null);

const numbersOf = (plan: Readonly<Record<string, unknown>>): Record<string, number> =>
  Object.fromEntries(
    Object.entries(plan).filter((pair): pair is [string, number] => typeof pair[1] === 'number'),
  );

/** The last knob that was turned for a place because a piece did not hold, with the same wire, gas and wall; null where none was. */
export const turnedFor = (s: Situation, place: Place): Turned | null => {
  const chosen = s.build.chosen
    .filter(
      c =>
        c.finding.startsWith(PIECE_FINDING) &&
        c.plan.place === place &&
        numberOr(c.plan.amps) !== null &&
        changedSince(s, numbersOf(c.plan), { figure: WALL_FIGURE[place], now_mm: wallAt(s, place) }) === null,
    )
    .at(-1);
  if (chosen === undefined) return null;
  const { plan } = chosen;
  return {
    at_ms: Date.parse(chosen.at),
    amps: numberOr(plan.amps),
    feed_m_min: numberOr(plan.feed_m_min),
    volts: numberOr(plan.volts),
    travel_mm_s: numberOr(plan.travel_mm_s),
  };
};

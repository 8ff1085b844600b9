import type { Survey } from '../../build/fold.ts';

/** The two ways a rail can bow from a string along its side. */
export const SIDEWAYS = {
  plus: {
    name: 'TOWARD THE MIDDLE',
    seen: 'The rail bows in, toward the other rail, by {v}.',
    when: 'it bows toward the middle',
  },
  minus: { name: 'AWAY FROM THE MIDDLE', seen: 'The rail bows out, by {v}.', when: 'it bows away' },
} as const;

/** Two readings of one station seldom differ by more, mm (common practice). */
const APART = 3;

/** What a station read once more is likely to read: what it read before, give or take. */
export const aroundFirst = (survey: Survey, station: number): readonly [number, number] => {
  const first = survey.readings[station]?.offset_mm ?? 0;
  return [first - APART, first + APART];
};

/** Stations read twice, whose spread is what a reading is worth (common practice). */
const TWICE = 5;

/** A few stations spread over those read, counted from 0; none while stations are to be read or there are too few. */
export const repeats = (survey: Survey): readonly number[] => {
  const read = survey.readings.flatMap((r, i) => (r === null ? [] : [i]));
  if (read.length < TWICE) return [];
  return Array.from(
    { length: TWICE },
    (_, k) => read[Math.round((k * (read.length - 1)) / (TWICE - 1))] ?? 0,
  );
};

/** What a station is likely to read: within a little of a straight run through the last two. */
export const expectedFor = (survey: Survey, station: number): readonly [number, number] => {
  const a = survey.readings[station - 1]?.offset_mm;
  const b = survey.readings[station - 2]?.offset_mm;
  if (a === undefined) return [-25, 25];
  const next = b === undefined ? a : 2 * a - b;
  const slack = 6 + Math.abs(a) * 0.25;
  return [Math.min(a, next) - slack, Math.max(a, next) + slack];
};

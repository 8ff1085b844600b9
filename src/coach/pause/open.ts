import { type Build, readingKey, type Survey } from '../../build/fold.ts';
import type { Ask, LineName, Stage } from '../../stages/sheet.ts';

/** After so many days out of hand a thing is looked at again (common practice). */
export const DAYS = {
  /** Tacks creep, jigs move with the damp, things get leant on. */
  measured: 8,
  /** Bare steel indoors: one to two weeks. */
  bare: 8,
  welder: 14,
  /** Bare welded frame that waits for paint. */
  frame: 14,
  /** Primer alone is no coat for weather: looked at after four weeks, prepared anew after three months. */
  primed: 28,
  primedLong: 91,
  outdoors: 28,
} as const;

/** A number read before the pause, and read again. */
export type Again = Ask & Readonly<{ was: number }>;

/** One thing that was left open, with what is to be done about it. Words under `steps.<stage>.<words>`. */
export type Open = Readonly<{
  stage: Stage;
  name: string;
  words: string;
  /** Rail, or rail and third; empty for the whole build. */
  subject: string;
  rail?: string;
  /** What makes it the same thing still: a survey's id, a third. */
  same: string;
  days: number;
  asks: readonly Again[];
  items: readonly string[];
  /** What keeps waiting: everything about the rail, or all that is lit, or the rest of the build. */
  holds: 'rail' | 'arc' | 'frame';
  line?: LineName;
  survey?: Survey;
  fills: Readonly<Record<string, string | number>>;
  minutes: readonly [number, number];
}>;

/** What was read, or null. */
export const value = (b: Build, step: string, ask: string): number | null =>
  b.readings.get(readingKey(step, ask))?.value ?? null;

const indexed = new WeakMap<Build, ReadonlyMap<string, readonly string[]>>();

/** Names of ticked items by their step; looked through once a build. */
const itemsByStep = (b: Build): ReadonlyMap<string, readonly string[]> => {
  const kept = indexed.get(b);
  if (kept !== undefined) return kept;
  const index = new Map<string, string[]>();
  for (const key of b.ticks.keys()) {
    const at = key.indexOf('#');
    if (at < 0) continue;
    const step = key.slice(0, at);
    const names = index.get(step);
    if (names === undefined) index.set(step, [key.slice(at + 1)]);
    else names.push(key.slice(at + 1));
  }
  indexed.set(b, index);
  return index;
};

/** Names of a step's items that are ticked. */
export const begunItems = (b: Build, step: string): readonly string[] => itemsByStep(b).get(step) ?? [];

/** How far a tape's or a gauge's reading may differ from the last before the field asks once more, mm. */
export const NEAR = 3;

/** An offset of a survey, read again: `was` as it was read then, mm, + toward the centre. */
export const offsetAgain = (ask: string, survey: Survey, was: number): Again => ({
  ask,
  as: 'length',
  signed: true,
  was,
  expected: [was - NEAR, was + NEAR],
  possible: [-1000, 1000],
  line: survey.to,
});

type Look = Pick<Open, 'stage' | 'name' | 'days' | 'holds' | 'minutes'> & Partial<Open>;
/** A thing with what most have none of left empty. */
export const look = (open: Look): Open => ({
  words: `pause-${open.name}`,
  subject: '',
  same: '',
  asks: [],
  items: [],
  fills: {},
  ...open,
});

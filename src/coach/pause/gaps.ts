import type { Entry } from '../../build/entries.ts';
import { type Build, fold } from '../../build/fold.ts';

const DAY_ms = 86_400_000;
/** Longer than from one Saturday to the next: work at the bench was laid aside, days. */
export const LONG_PAUSE = 8;

/** What is done with steel in hand. A remark, a look round, a changed answer is no work at the bench. */
const WORK = new Set<Entry['kind']>([
  'step-ticked',
  'step-skipped',
  'reading-logged',
  'slits-marked',
  'slit-noted',
  'piece-cut',
  'piece-fated',
  'survey-opened',
  'offsets-read',
  'survey-closed',
]);

/** A time in which nobody worked on the build. */
export type Pause = Readonly<{
  /** The last entry before it. */
  after: string;
  days: number;
  /** When the first work after it was done; null while nobody has begun again. */
  until: string | null;
  /** The build as it was left. */
  left: Build;
}>;

const folded = new WeakMap<Entry, { count: number; build: Build }>();

/** The build up to an entry; kept, since each key asks for it again. */
const leftAt = (all: readonly Entry[], count: number): Build => {
  const last = all[count - 1] as Entry;
  const kept = folded.get(last);
  if (kept?.count === count) return kept.build;
  const build = fold(all.slice(0, count));
  folded.set(last, { count, build });
  return build;
};

/**
 * The long pauses of a build, the newest first: from one piece of work to the next, or to now. Entries stand in their order;
 * times that run back (two copies joined, a clock set wrong) make no pause.
 * @param now epoch milliseconds
 */
export const pausesOf = (all: readonly Entry[], now: number): readonly Pause[] => {
  const pauses: Pause[] = [];
  // The latest work by its time, and how far in order the work has come.
  let latest: Entry | undefined;
  let count = 0;
  const gap = (at: number, until: string | null): void => {
    if (latest === undefined) return;
    const away = at - Date.parse(latest.at);
    if (away < LONG_PAUSE * DAY_ms) return;
    pauses.push({
      after: latest.id,
      days: Math.floor(away / DAY_ms),
      until,
      left: leftAt(all, count),
    });
  };
  for (const [k, entry] of all.entries()) {
    if (!WORK.has(entry.kind)) continue;
    // Within one day there is no pause to be reckoned: the date as written tells, and no time is read.
    if (latest?.at.slice(0, 10) !== entry.at.slice(0, 10)) {
      const at = Date.parse(entry.at);
      if (Number.isNaN(at)) continue;
      gap(at, entry.at);
    }
    if (latest === undefined || entry.at >= latest.at) latest = entry;
    count = k + 1;
  }
  gap(now, null);
  return pauses.reverse();
};

import { type Build, readingKey } from '../../build/fold.ts';
import { pauseKey, repeatedBy } from '../../build/read-again.ts';
import type { Situation } from '../../stages/situation.ts';
import { type Pause, pausesOf } from './gaps.ts';
import { leftOpen } from './left-open.ts';
import type { Open } from './open.ts';

/** Something that was left open over a pause and is open still, with the key of the step that looks at it again. */
export type Check = Open & Readonly<{ key: string; pause: Pause; settled: boolean }>;

/** A choice that a new number is a slip of the tape: the old one stands, and is not asked for again. */
export const OLD_COUNTS = 'pause-old-counts';
export const movedKey = (check: string): string => `pause-moved@${check}`;

const sameThing = (o: Open): string => `${o.stage} ${o.name} ${o.subject} ${o.same}`;

/** Whether a check is settled: looked at, read again here or where it was read before, left with a reason, or decided on. */
const isSettled = (b: Build, o: Open, key: string, pause: Pause): boolean => {
  if (b.ticks.has(key) || b.skips.has(key)) return true;
  if (b.chosen.some(c => c.remedy === OLD_COUNTS && c.finding.startsWith(movedKey(key)))) return true;
  if (o.items.length > 0) return o.items.every(i => b.ticks.has(`${key}#${i}`) || b.skips.has(`${key}#${i}`));
  if (o.asks.length === 0) return false;
  const from = repeatedBy(key);
  return o.asks.every(a => {
    if (b.readings.has(readingKey(key, a.ask))) return true;
    const reading = from === null ? undefined : b.readings.get(readingKey(from, a.ask));
    return reading !== undefined && pause.until !== null && reading.at >= pause.until;
  });
};

/**
 * What the pauses of a build left to be looked at. A thing asked after a later pause is not asked for an earlier one; one that
 * was gone on with, or measured anew as a whole, is not asked at all. A pause over which all is settled asks nothing more.
 */
export const pauseChecks = (s: Situation): readonly Check[] => {
  const pauses = pausesOf(s.build.all, s.now);
  if (pauses.length === 0) return [];
  const still = new Set(leftOpen(s.build, s.ramp, Number.POSITIVE_INFINITY).map(sameThing));
  const asked = new Set<string>();
  return pauses.flatMap((pause): readonly Check[] => {
    const checks = leftOpen(pause.left, s.ramp, pause.days)
      .filter(o => still.has(sameThing(o)) && !asked.has(sameThing(o)))
      .map((o): Check => {
        const key = pauseKey(`${o.stage}/pause-${o.name}`, o.subject, pause.after);
        return { ...o, key, pause, settled: isSettled(s.build, o, key, pause) };
      });
    for (const c of checks) asked.add(sameThing(c));
    return checks;
  });
};

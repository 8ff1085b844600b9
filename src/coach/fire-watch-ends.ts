import { LATE_s, lastSpark, WATCH_s } from '../stages/prep/fire-watch.ts';
import type { View } from './view.ts';

/** When a fire watch may end, ms, whether that is still to come, and when to look once more; null for what was looked at or is past asking. */
export type WatchEnds = Readonly<{
  watch: Readonly<{ ends_ms: number; over: boolean }> | null;
  late: Readonly<{ ends_ms: number; over: boolean }> | null;
}>;

/** What of the fire watch after the last spark is still to be kept. */
export const fireWatchEnds = (view: View): WatchEnds => {
  const spark = lastSpark(view.situation);
  const open = (name: string): boolean => {
    const state = view.steps.find(s => s.key === `prep/${name}@${spark?.entry}`)?.state;
    return state !== undefined && state !== 'done' && state !== 'skipped';
  };
  const end = (name: string, after_s: number) => {
    if (spark === null || !open(name)) return null;
    const ends_ms = spark.at + after_s * 1000;
    return { ends_ms, over: view.situation.now >= ends_ms };
  };
  return { watch: end('watch', WATCH_s), late: end('watch-late', LATE_s) };
};

/** When a step of the fire watch may be ticked, ms; null for every other step, and once that time is over. */
export const opensAt = (view: View, key: string): number | null => {
  const name = /^prep\/(watch|watch-late)@/.exec(key)?.[1];
  if (name === undefined) return null;
  const ends = fireWatchEnds(view);
  const end = name === 'watch' ? ends.watch : ends.late;
  return end === null || end.over ? null : end.ends_ms;
};

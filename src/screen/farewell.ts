import { fireWatchEnds, type WatchEnds } from '../coach/fire-watch-ends.ts';
import type { View } from '../coach/view.ts';
import { counted } from '../words/counted.ts';
import type { Voice } from '../words/say.ts';
import { clockTime } from './pages/clock-time.ts';
import { stepText } from './pages/step-words.ts';

/** What of the fire watch goes on when the bench is left: the bench cannot call anybody back. */
const watchLine = ({ watch, late }: WatchEnds): string | null => {
  const once = late === null ? '' : `  Look once more at ${clockTime(late.ends_ms)}.`;
  if (watch !== null)
    return watch.over
      ? `Fire watch: walk the circle before you leave.${once}`
      : `Fire watch until ${clockTime(watch.ends_ms)}: stay, look, smell.${once}`;
  if (late === null) return null;
  return late.over ? 'Fire watch: walk the circle once more now.' : once.trim();
};

/** The last words when the bench is left: what is on disk, what burns, what is next, how to go on. */
export const farewell = (view: View, voice: Voice, resume: string): string => {
  const { next } = view;
  const title = next === null ? '' : (stepText(view, voice, next, 'title') ?? next.key);
  const watch = watchLine(fireWatchEnds(view));
  return [
    `${view.build.name}: ${counted(view.build.all.length, 'entry', 'entries')} on disk.`,
    ...(watch === null ? [] : [watch]),
    `${next === null ? 'Nothing is left to do.' : `Next: ${title} (${next.stage}).`}  Resume: ${resume}`,
    '',
  ].join('\n');
};

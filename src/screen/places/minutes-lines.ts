import { MINUTES_OF } from '../../build/shop/entries.ts';
import { learnedMinutes, type Shop, type TimedWork } from '../../build/shop/shop.ts';
import { doneSince, minutesLeft } from '../../coach/hours-left.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import { spanText } from '../pages/span-text.ts';
import type { Desk } from './desk.ts';

/** One thing the shop remembers, shown in a row and changed with Enter. */
export type Line = Readonly<{
  name: string;
  value: string;
  /** Opens its field, or takes the next of its choices. */
  change: (desk: Desk) => void;
}>;

/**
 * Minutes of a cut, a slit and a joint as they are known, and the hours left that are counted with them.
 * @param log asks for the minutes of what was done since they were last typed; never called where nothing was
 */
export const minutesLines = (
  desk: Desk,
  stage: Stage,
  now: Shop,
  log: (desk: Desk, what: TimedWork, count: number) => void,
): readonly Line[] => {
  const { voice } = desk;
  return [
    ...MINUTES_OF.map((what): Line => {
      const each = learnedMinutes(now, what);
      return {
        name: say(voice, { words: `says.prices-minutes-${what}` }),
        value: say(voice, {
          words: each.count === 0 ? 'says.prices-minutes-usual' : 'says.prices-minutes-learned',
          fills: { span: spanText(each), count: each.count },
        }),
        change: d => {
          const count = doneSince(d.view, what, now.minutesAt[what]);
          if (count === 0) d.say(say(d.voice, { words: 'says.prices-minutes-none' }));
          else log(d, what, count);
        },
      };
    }),
    ...([stage, null] as const).map((of): Line => {
      return {
        name: say(voice, {
          words: of === null ? 'says.prices-left-build' : 'says.prices-left-stage',
          fills: { stage: of ?? '' },
        }),
        value: spanText(minutesLeft(desk.view, now, of)),
        change: d => d.say(say(d.voice, { words: 'says.prices-left-why' })),
      };
    }),
  ];
};

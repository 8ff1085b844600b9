import type { Step } from '../../coach/walk.ts';
import { cellWidth } from '../../drawing/cells.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { stepText } from './step-words.ts';

const isOpen = (s: Step): boolean => s.state === 'to do' || s.state === 'waiting' || s.state === 'stop';

/**
 * Why the walk goes on in another stage, in a line; null where it stays in the one it was.
 * @param from the stage of what was just done
 */
export const stageChange = (c: PageContext, from: Stage, next: Step): string | null => {
  if (next.stage === from) return null;
  const left = c.view.steps.filter(s => s.stage === from && isOpen(s));
  const waits = left.find(s => s.waitsFor.includes(next.key));
  if (waits !== undefined) {
    const step = stepText(c.view, c.voice, waits, 'title') ?? waits.key;
    const text = say(c.voice, { words: 'says.stage-waits', fills: { to: next.stage, from, step } });
    // A long title is named by its stage alone, so that the line is whole.
    if (cellWidth(text) < c.look.columns) return text;
  }
  return say(c.voice, {
    words: left.length === 0 ? 'says.stage-done' : 'says.stage-before',
    fills: { to: next.stage, from, count: left.length },
  });
};

/** What is shown in place of a step that waits: that it comes first, and for what. */
export const comesFirst = (c: PageContext, waiting: Step): string => {
  const step = stepText(c.view, c.voice, waiting, 'title') ?? waiting.key;
  const text = say(c.voice, { words: 'says.comes-first', fills: { step } });
  return cellWidth(text) < c.look.columns ? text : say(c.voice, { words: 'says.comes-first-plain' });
};

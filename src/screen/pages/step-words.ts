import type { View } from '../../coach/view.ts';
import { sheetOf } from '../../coach/view.ts';
import { isInFeet } from '../../quantity/figure-parts.ts';
import { write } from '../../quantity/write.ts';
import type { LineRef } from '../../ramp/design.ts';
import type { Ask, Figure, Finding, LineName, StepDraft } from '../../stages/sheet.ts';
import { say, sayLines, textAt, type Voice } from '../../words/say.ts';

export type StepPart =
  | 'title'
  | 'do'
  | 'posture'
  | 'why'
  | 'caution'
  | 'brief'
  | 'measure'
  | 'more'
  | 'item'
  | 'tick'
  | 'all';

export const figuresOf = (view: View, step: StepDraft): readonly Figure[] => {
  const all = view.sheets.flatMap(s => s.figures);
  // Its own figures first: the part before @ names them in its words.
  const own = step.uses.flatMap(id => all.filter(f => f.id === id));
  return [...own, ...sheetOf(view, step.stage).figures];
};

/** A part of a step's words, or null where it has none. */
export const stepText = (view: View, voice: Voice, step: StepDraft, part: StepPart): string | null => {
  const words = `steps.${step.stage}.${step.words}.${part}`;
  if (textAt(voice.content, words) === undefined) return null;
  return say(voice, { words, fills: step.fills ?? {} }, figuresOf(view, step));
};

export const askLabel = (view: View, voice: Voice, step: StepDraft, ask: string): string =>
  say(
    voice,
    // An ask of one rail has the words of its kind: the part before @.
    { words: `steps.${step.stage}.${step.words}.asks.${ask.split('@')[0]}`, fills: step.fills ?? {} },
    figuresOf(view, step),
  );

/** The answers an ask offers where it is no measure, first the one of its least number; none where a number is typed. */
export const askChoices = (view: View, voice: Voice, step: StepDraft, ask: string): readonly string[] =>
  sayLines(
    voice,
    {
      words: `steps.${step.stage}.${step.words}.choices.${ask.split('@')[0]}`,
      fills: step.fills ?? {},
    },
    figuresOf(view, step),
  );

/** What was read, in words: the answer chosen, or the number with its unit. */
export const readingText = (
  view: View,
  voice: Voice,
  step: StepDraft,
  ask: Pick<Ask, 'ask' | 'as' | 'possible'>,
  value: number,
): string =>
  askChoices(view, voice, step, ask.ask)[Math.round(value) - (ask.possible?.[0] ?? 0)] ??
  write(value, ask.as, voice.system, { feet: isInFeet(value, ask.as, voice.system) });

/** What was read at a step that asks it no more, in words: the answer chosen, as its like has it; else as it was typed. */
export const goneReadingText = (
  view: View,
  voice: Voice,
  like: StepDraft,
  ask: string,
  value: number,
  typed: string,
): string =>
  // Lists that go with their step (what a test piece shows, what stands on spool and bottle) count from one.
  askChoices(view, voice, like, ask)[Math.round(value) - 1] ?? typed;

/** A figure's number with its unit, or the answer that stands for it. */
export const figureNumber = (voice: Voice, figure: Figure, v: number, unit = true): string =>
  (figure.answers === undefined
    ? undefined
    : sayLines(voice, { words: figure.answers })[Math.round(v) - 1]) ??
  write(v, figure.as, voice.system, { unit, feet: isInFeet(v, figure.as, voice.system) });

export const findingText = (voice: Voice, f: Finding, part: 'title' | 'sure' | 'not'): string | null => {
  const words = `findings.${f.words}.${part}`;
  return textAt(voice.content, words) === undefined ? null : say(voice, { words, fills: f.fills ?? {} });
};

export const findingLines = (voice: Voice, f: Finding): readonly string[] =>
  sayLines(voice, { words: `findings.${f.words}.text`, fills: f.fills ?? {} });

/** The line a number belongs to, in words, capitals on the face. */
export const lineText = (line: LineRef | LineName | undefined): string => {
  if (line === undefined) return '';
  if (typeof line === 'string') return `line: ${line.toUpperCase()}`;
  const face =
    line.face === 'hinge line'
      ? 'BACK WALL'
      : line.face.replace(/(top|bottom) face|deck top|ground/, w => w.toUpperCase());
  return `line: ${face}${line.rail === undefined ? '' : ` of ${line.rail}`}`;
};

import type { Build } from '../build/fold.ts';
import type { Measured } from '../ramp/measured.ts';
import type { Ramp } from '../ramp/ramp.ts';
import type { HeavyAsk as Ask, SheetDraft } from './sheet.ts';

export type { HeavyAsk as Ask } from './sheet.ts';

export type Answer<T> =
  | { readonly is: 'known'; readonly value: T }
  | { readonly is: 'pending'; readonly ask: Ask };
/** Answers kept, by topic and input as text. */
export type Answers = ReadonlyMap<string, unknown>;

/** Inputs written out already, by what they are: a frame that is kept is asked about at every entry. */
const written = new WeakMap<object, string>();

const textOf = (input: unknown): string => {
  if (typeof input !== 'object' || input === null) return JSON.stringify(input);
  const known = written.get(input);
  if (known !== undefined) return known;
  const text = JSON.stringify(input);
  written.set(input, text);
  return text;
};

/** The name of a question: its topic and its input, which nobody changes once it is asked. */
export const askKey = (ask: Ask): string => `${ask.topic} ${textOf(ask.input)}`;

export const answer = <T>(kept: Answers, ask: Ask): Answer<T> => {
  const value = kept.get(askKey(ask));
  return value === undefined ? { is: 'pending', ask } : { is: 'known', value: value as T };
};

/** Everything a page may know. */
export type Situation = Readonly<{
  build: Build;
  measured: Measured;
  ramp: Ramp;
  answers: Answers;
  /** Epoch milliseconds. */
  now: number;
}>;

export type StageSheet = (s: Situation) => SheetDraft;

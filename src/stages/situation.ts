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

export const askKey = (ask: Ask): string => `${ask.topic} ${JSON.stringify(ask.input)}`;

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

import type { Key } from '../terminal/split-keys.ts';

/** A list from which one is chosen: lit row and Enter, no letters and no numbers. */
export type Choice = Readonly<{ count: number; lit: number }>;

export type ChoiceDone =
  | Readonly<{ is: 'moving' }>
  | Readonly<{ is: 'chosen'; index: number }>
  | Readonly<{ is: 'close' }>
  /** The key means nothing in a list; the page may have a use for it. */
  | Readonly<{ is: 'other' }>;

const PAGE_STEP = 5;

/** A list with its lit row; a row outside the list becomes the nearest one in it. */
export const openChoice = (count: number, lit = 0): Choice => ({ count, lit: within(lit, count) });

const within = (lit: number, count: number): number => Math.max(0, Math.min(lit, count - 1));

const STEPS: Readonly<Record<string, number>> = {
  up: -1,
  p: -1,
  down: 1,
  n: 1,
  'page-up': -PAGE_STEP,
  'page-down': PAGE_STEP,
  home: Number.NEGATIVE_INFINITY,
  end: Number.POSITIVE_INFINITY,
};

/** One key in a list. It does not go round at its ends: held down, it must stop where the eye expects it. */
export const pressChoice = (choice: Choice, key: Key): { choice: Choice; done: ChoiceDone } => {
  if (key.pasted === true) return { choice, done: { is: 'other' } };
  const step = STEPS[key.name === 'char' ? (key.char ?? '') : key.name];
  if (step !== undefined) {
    return { choice: { ...choice, lit: within(choice.lit + step, choice.count) }, done: { is: 'moving' } };
  }
  if (key.name === 'enter' && choice.count > 0) return { choice, done: { is: 'chosen', index: choice.lit } };
  if (key.name === 'esc') return { choice, done: { is: 'close' } };
  return { choice, done: { is: 'other' } };
};

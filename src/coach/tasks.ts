import type { Answers, Ask } from '../stages/situation.ts';
import { askKey } from '../stages/situation.ts';
import type { Keeper } from './keeper.ts';
import type { View } from './view.ts';

/** Kept at most: a build asks few things at a time. */
const KEPT = 32;

/** The heavy questions that the pages of a view ask and that have no answer yet. */
export const asksOf = (view: View): readonly Ask[] => {
  const asked = new Map<string, Ask>();
  for (const sheet of view.sheets) for (const ask of sheet.asked ?? []) asked.set(askKey(ask), ask);
  return [...asked.values()].filter(a => !view.situation.answers.has(askKey(a)));
};

export const withAnswer = (answers: Answers, ask: Ask, value: unknown): Answers =>
  new Map([...answers, [askKey(ask), value] as const].slice(-KEPT));

/** Computes here and now everything the pages ask, until nothing is asked any more; for commands, where nobody waits at a key. */
export const settleAnswers = async (keeper: Keeper): Promise<View> => {
  for (let round = 0; round < 4; round++) {
    const asks = asksOf(keeper.view());
    if (asks.length === 0) break;
    const { compute } = await import('./compute.ts');
    let answers = keeper.view().situation.answers;
    for (const ask of asks) answers = withAnswer(answers, ask, await compute(ask));
    keeper.know(answers);
  }
  return keeper.view();
};

import { railAnswer } from '../stages/heavy/rail-answer.ts';
import { springBackAnswer } from '../stages/heavy/spring-back-answer.ts';
import { stockAnswer } from '../stages/heavy/stock-answer.ts';
import { strengthAnswer } from '../stages/heavy/strength-answer.ts';
import type { Ask } from '../stages/situation.ts';

/** The answer to a heavy question. Pure: the same in the worker, in a command and in a test. */
export const compute = async (ask: Ask): Promise<unknown> => {
  switch (ask.topic) {
    case 'rail':
      return railAnswer(ask.input as never);
    case 'spring-back':
      return springBackAnswer(ask.input as never);
    case 'stock':
      return stockAnswer(ask.input as never);
    case 'strength':
      return strengthAnswer(ask.input as never);
  }
};

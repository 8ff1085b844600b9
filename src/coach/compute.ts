import type { Ask } from '../stages/situation.ts';

/** The answer to a heavy question. Pure: the same in the worker, in a command and in a test. */
export const compute = async (ask: Ask): Promise<unknown> => {
  switch (ask.topic) {
    case 'rail':
      return (await import('../stages/heavy/rail-answer.ts')).railAnswer(ask.input as never);
    case 'spring-back':
      return (await import('../stages/heavy/spring-back-answer.ts')).springBackAnswer(ask.input as never);
    case 'stock':
      return (await import('../stages/heavy/stock-answer.ts')).stockAnswer(ask.input as never);
    case 'strength':
      return (await import('../stages/heavy/strength-answer.ts')).strengthAnswer(ask.input as never);
  }
};

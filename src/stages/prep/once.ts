import type { Situation } from '../situation.ts';

/** A question of a situation that is reckoned once for it: several steps, figures and findings of one page ask the same. */
export const once = <T>(ask: (s: Situation) => T): ((s: Situation) => T) => {
  const known = new WeakMap<Situation, { answer: T }>();
  return s => {
    const before = known.get(s);
    if (before !== undefined) return before.answer;
    const answer = ask(s);
    known.set(s, { answer });
    return answer;
  };
};

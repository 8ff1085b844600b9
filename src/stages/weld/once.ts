import type { Situation } from '../situation.ts';

/** A telling that is asked many times of one situation, and told once: situations never change. */
export const once = <T, K = undefined>(tell: (s: Situation, of: K) => T): ((s: Situation, of: K) => T) => {
  const kept = new WeakMap<Situation, Map<K, T>>();
  return (s, of) => {
    const told = kept.get(s) ?? new Map<K, T>();
    if (!told.has(of)) {
      told.set(of, tell(s, of));
      kept.set(s, told);
    }
    return told.get(of) as T;
  };
};

/** The same of a telling that is of the situation alone. */
export const onceAlone = <T>(tell: (s: Situation) => T): ((s: Situation) => T) => {
  const told = once<T>(s => tell(s));
  return s => told(s, undefined);
};

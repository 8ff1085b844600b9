import { TURN } from '../order.ts';
import type { Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { valueAt } from './reading.ts';

export const STEEL = 'prep/steel';

/** What the skin of the tube shows, by number from 1, and what the can is; null where it may be used. */
const LOOKS = [null, 'tube-zinc', 'tube-plated', 'tube-unknown'] as const;
const CLEANERS = [null, 'cleaner-chlorine', 'cleaner-unknown'] as const;

/** Zinc, plating, paint and what is not known; chlorine in the cleaner: no reason lets an arc near them. */
export const steelGates = (s: Situation): readonly Gate[] => {
  const look = LOOKS[(valueAt(s, STEEL, 'look') ?? 1) - 1] ?? null;
  const cleaner = CLEANERS[(valueAt(s, STEEL, 'cleaner') ?? 1) - 1] ?? null;
  return [look, cleaner]
    .filter(id => id !== null)
    .map(id => ({ id, shut: true, never: true as const, measure: STEEL }));
};

export const steelStep = (s: Situation): StepDraft => {
  const look = {
    ask: 'look',
    as: 'count',
    expected: [1, 1],
    possible: [1, LOOKS.length],
    unlit: true,
  } as const;
  const cleaner = {
    ask: 'cleaner',
    as: 'count',
    expected: [1, 1],
    possible: [1, CLEANERS.length],
    unlit: true,
  } as const;
  // What bars the arc comes first, so that it is the one that is read again.
  const cleanerBars = (valueAt(s, STEEL, 'cleaner') ?? 1) > 1 && (valueAt(s, STEEL, 'look') ?? 1) === 1;
  return {
    key: STEEL,
    stage: 'prep',
    words: 'steel',
    turn: TURN.receive + 5,
    needs: ['plan/dangers'],
    uses: [],
    asks: cleanerBars ? [cleaner, look] : [look, cleaner],
    cautions: ['prep-solvent'],
    minutes: [3, 5],
  };
};

import type { Chosen, Survey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { RailAnswer } from '../heavy/rail-answer.ts';
import type { RailReading } from '../rail-findings/reading.ts';
import type { Fills, Offer, Stage, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** A rail that lies off its line, as the remedies see it. */
export type RailCase = Readonly<{
  s: Situation;
  r: RailReading;
  /** Null while it is still being worked out. */
  answer: RailAnswer | null;
  limit_mm: number;
  /** Worst with the rail laid at its best, mm. */
  best_mm: number;
}>;

/** A remedy: what it offers for a rail, and the steps it gives once chosen. Each lives in a file of its own. */
export type Offering = (c: RailCase) => readonly Offer[];
export type Injecting = (s: Situation, chosen: Chosen) => readonly StepDraft[];

const NO_TURN = 1e-9;

export const within = (v: number, limit_mm: number): boolean => v <= limit_mm + NO_TURN;

/** An offer with the worst deviation predicted after it. */
export const offer = (
  c: RailCase,
  remedy: string,
  minutes: number,
  after_mm: number,
  fills: Fills,
  plan: Offer['plan'],
): Offer => ({
  remedy,
  minutes,
  fills: { rail: c.r.rail, ...fills },
  after: { v: after_mm, as: 'length', within: within(after_mm, c.limit_mm) },
  plan: { rail: c.r.rail, survey: c.r.survey.id, phase: c.r.survey.phase, ...plan },
});

export const length = (v: number) => ({ v, as: 'length' }) as const;
export const signed = (v: number) => ({ v, as: 'length', sign: true }) as const;
export const angle = (v: number) => ({ v, as: 'angle' }) as const;
export const thin = (v: number) => ({ v, as: 'thickness' }) as const;

/** What a rule, a feeler and a marked line are good for at the bench, mm (common practice). */
export const BENCH = { near: thin(0.5), feeler: thin(0.05), mark: thin(0.3) } as const;

/** Numbers of things as they are read out: "5, 10, 18". */
export const listed = (numbers: readonly (number | string)[]): string => numbers.join(', ');

/** The page on which a rail of this phase is measured. */
export const stageOfPhase = (phase: unknown): Stage => {
  switch (phase as Survey['phase']) {
    case 'tacked':
      return 'tack';
    case 'half-welded':
    case 'cold':
      return 'weld';
    default:
      return 'brace';
  }
};

/**
 * What a chosen remedy froze, by name. A journal may come from another version or another hand: what is not of the shape
 * that was written is left out, and nothing is made up for it.
 */
export const frozenNumber = (chosen: Chosen, name: string): number => {
  const v = chosen.plan[name];
  return typeof v === 'number' && Number.isFinite(v) ? v : 0;
};

export const frozenText = (chosen: Chosen, name: string): string => {
  const v = chosen.plan[name];
  return typeof v === 'string' ? v : '';
};

export const frozenNumbers = (chosen: Chosen, name: string): readonly number[] => {
  const list = chosen.plan[name];
  return Array.isArray(list) ? list.filter(v => typeof v === 'number' && Number.isFinite(v)) : [];
};

/** Rows of numbers (and of texts and marks beside them), each with all the numbers it is to have. */
export const frozenRows = <T extends object>(
  chosen: Chosen,
  name: string,
  numbers: readonly (keyof T & string)[],
): readonly T[] => {
  const list = chosen.plan[name];
  if (!Array.isArray(list)) return [];
  return list.filter(
    (row): row is T =>
      typeof row === 'object' &&
      row !== null &&
      numbers.every(key => Number.isFinite((row as Record<string, unknown>)[key])),
  );
};

export const railOf = (s: Situation, chosen: Chosen): { rail: RailName; index: number } | null => {
  const rail: RailName = frozenText(chosen, 'rail');
  const index = s.ramp.rails.indexOf(rail);
  return index < 0 ? null : { rail, index };
};

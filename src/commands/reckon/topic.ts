import type { Outcome } from '../../quantity/outcome.ts';

/**
 * What one field of a topic takes. A number's unit is the ending of its field's name (`_mm`, `_deg`, `_N_mm` …);
 * the reader takes a plain number in that unit or a text with a unit of the same quantity.
 */
export type FieldSpec = Readonly<
  (
    | { is: 'number'; above?: number; atLeast?: number; below?: number; atMost?: number; whole?: true }
    | { is: 'choice'; of: readonly string[] }
    | { is: 'text' }
    | { is: 'flag' }
    | { is: 'list'; of: FieldSpec; least?: number; most?: number }
    | { is: 'tuple'; of: readonly FieldSpec[] }
    | { is: 'record'; fields: FieldSpecs }
  ) & { optional?: true; about?: string }
>;

export type FieldSpecs = Readonly<Record<string, FieldSpec>>;

/** The input after reading: numbers in the unit named, lists and records in the shape of the fields. */
export type TopicInput = Readonly<Record<string, unknown>>;
export type TopicAnswer = Readonly<Record<string, unknown>>;

/** One topic of the number command: what it takes, and the kernel behind it. */
export type Topic = Readonly<{
  name: string;
  /** One line for the list of topics. */
  summary: string;
  fields: FieldSpecs;
  /** An example that a person can paste after `curvewright reckon`. */
  example: string;
  run: (input: TopicInput) => Outcome<TopicAnswer> | Promise<Outcome<TopicAnswer>>;
}>;

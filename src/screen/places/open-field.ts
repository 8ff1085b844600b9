import type { FieldSpec } from '../fields/field-spec.ts';
import type { NumberField } from '../fields/number-field.ts';
import type { TypedLine } from '../fields/typed-line.ts';

/** A number field that a place has open, and what to do with what is typed. */
export type OpenField = Readonly<{
  field: NumberField;
  spec: FieldSpec;
  keep: (value: number, typed: string, replaces: boolean) => void;
  several?: (values: readonly number[], typed: string) => void;
  otherWay?: () => void;
  /** Called after the field was closed with Esc. */
  close?: () => void;
  /** What Esc does in an empty field, where it does not only close it. */
  escape?: Readonly<{ words: string; go: () => void }>;
  /** What w opens here, on the bottom row, where it is not the why of a step. */
  whyWords?: string;
  /** ↑ in an empty field: the one before. */
  before?: () => void;
}>;

/** A line of free text that is being typed: a reason, a remark, a name. */
export type OpenText = Readonly<{
  title: string;
  line: TypedLine;
  submit: (text: string) => void;
  close?: () => void;
}>;

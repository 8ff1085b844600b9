import type { Row } from '../../drawing/row.ts';
import type { Stage } from '../../stages/sheet.ts';
import type { FieldSpec } from '../fields/field-spec.ts';
import type { NumberField } from '../fields/number-field.ts';
import type { Act } from '../key-table.ts';
import type { LineItem, PageKey } from '../keys.ts';
import type { Desk } from './desk.ts';

/** A number field that a place has open, and what to do with what is typed. */
export type OpenField = Readonly<{
  field: NumberField;
  spec: FieldSpec;
  keep: (value: number, typed: string, replaces: boolean) => void;
  several?: (values: readonly number[], typed: string) => void;
  otherWay?: () => void;
  /** Called after the field was closed with Esc. */
  close?: () => void;
  /** ↑ in an empty field: the one before. */
  before?: () => void;
}>;

/** A line of free text that is being typed: a reason, a remark, a name. */
export type OpenText = Readonly<{
  title: string;
  value: string;
  submit: (text: string) => void;
  close?: () => void;
}>;

/**
 * One place of the bench: how it looks, and what its keys do. Places stand on a stack; Esc takes the top one off.
 * A place keeps its own state; the desk redraws after every key.
 */
export type Place = {
  /** The stage it belongs to, for the strip. */
  stage?: () => Stage;
  rows: (desk: Desk) => Row[];
  /** What the key asks for on this page. True when something was done (or answered). */
  act: (desk: Desk, act: Act | string, char: string) => boolean;
  /** Letters of its own, at most two. */
  own?: readonly PageKey[];
  /** Keys for the bottom row. */
  keys: (desk: Desk) => readonly LineItem[];
  field?: OpenField | null;
};

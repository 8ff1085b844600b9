import { type Fault, refuse } from '../../quantity/outcome.ts';
import { read } from '../../quantity/read.ts';
import { shownStep } from '../../quantity/usual.ts';
import { write } from '../../quantity/write.ts';
import type { FieldSpec } from './field-spec.ts';

/** What the text in a number field says. */
export type Understood =
  | Readonly<{ is: 'empty' }>
  /** `surprising`: outside the expected band. Values in the quantity's inner unit, + toward the centre, never -0. */
  | Readonly<{ is: 'number'; value: number; surprising: boolean }>
  | Readonly<{ is: 'several'; values: readonly number[] }>
  | Readonly<{ is: 'fault'; fault: Fault }>;

/** More stations than any rail has; a longer list is something else that was pasted. */
const MOST_NUMBERS = 500;

const fault = (found: { fault: Fault }): Understood => ({ is: 'fault', fault: found.fault });

/**
 * The numbers of a paste, as texts. Lines, tabs and semicolons part them; in one line spaces do, where each piece is a
 * plain decimal and it cannot be one number with a gap for thousands.
 */
const pieces = (text: string): string[] => {
  const parted = text
    .split(/[\n\t;]+/)
    .map(piece => piece.trim())
    .filter(piece => piece !== '');
  if (parted.length !== 1) return parted;
  const spaced = text.trim().split(/ +/);
  const thousands = /^\d{1,3}(?: \d{3})+$/.test(text.trim());
  const plain = spaced.every(piece => /^[+\-−]?(?:\d+[.,]?\d*|[.,]\d+)$/.test(piece));
  return plain && !thousands ? spaced : parted;
};

const written = (value: number, { quantity, system }: FieldSpec): string => write(value, quantity, system);

/** The refusal of a number there cannot be, or null. */
const impossible = (value: number, spec: FieldSpec): Understood | null => {
  const [low, high] = spec.possible ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  if (value >= low && value <= high) return null;
  const limit =
    value < low ? `less than ${written(low, spec)} cannot be` : `more than ${written(high, spec)} cannot be`;
  const range =
    Number.isFinite(low) && Number.isFinite(high) ? `${written(low, spec)} to ${written(high, spec)}` : '';
  return fault(refuse('out-of-range', null, limit, spec.instead ?? range));
};

const one = (text: string, spec: FieldSpec): Understood => {
  const outcome = read(text, spec.quantity, spec.system);
  if (!outcome.ok) return fault(outcome);
  const { value } = outcome;
  if (value < 0 && spec.sign === undefined && spec.possible === undefined) {
    return fault(refuse('out-of-range', null, 'this number has no side', 'the number without a sign'));
  }
  const refused = impossible(value, spec);
  if (refused !== null) return refused;
  // What reads as the limit is no surprise: 0.75 m of a lip that is 749.9 mm.
  const hair = shownStep(spec.quantity, spec.system) / 2;
  const surprising =
    spec.expected !== undefined && (value < spec.expected[0] - hair || value > spec.expected[1] + hair);
  return { is: 'number', value, surprising };
};

const several = (texts: readonly string[], spec: FieldSpec): Understood => {
  if (spec.several === undefined) {
    return fault(
      refuse('not-a-number', null, `${texts.length} numbers were pasted, one is wanted`, 'one number'),
    );
  }
  if (texts.length > MOST_NUMBERS) {
    return fault(
      refuse('too-many-values', null, `${texts.length} numbers are too many`, `at most ${MOST_NUMBERS}`),
    );
  }
  const values: number[] = [];
  for (const [index, text] of texts.entries()) {
    const meaning = one(text, spec);
    if (meaning.is === 'number') values.push(meaning.value);
    else if (meaning.is === 'fault') {
      const { code, field, message, accepted } = meaning.fault;
      return fault(refuse(code, field, `number ${index + 1} of ${texts.length}: ${message}`, accepted));
    }
  }
  return { is: 'several', values };
};

/** 40x40x3 */
const TIMES = /\s*[x×*]\s*/i;
/** A number with its unit or without it, and an x: 40x, 1 1/2" x, 38 mm x. */
const BEFORE_TIMES = /\d\s*(?:["″”]|in|mm|cm)?\s*[x×*]/i;
const UNIT_AT_END = /(?:[a-z]+|["″”])\s*$/i;

/** Numbers with an x between them: all that may be typed at once, or the word that one is asked. */
const timesOf = (text: string, spec: FieldSpec): Understood => {
  const texts = text.split(TIMES).filter(piece => piece !== '');
  const { together } = spec;
  const alone = spec.asks === undefined ? 'the one number asked' : `the ${spec.asks}`;
  if (together === undefined) return fault(refuse('not-a-number', null, 'one number at a time', alone));
  if (texts.length !== together.length) {
    const names = together.map(part => part.name).join(' x ');
    return fault(refuse('not-a-number', null, 'one at a time, or all at once', `${alone}, or ${names}`));
  }
  // A unit at the end stands for all of them: 40x40x3 mm.
  const unit = UNIT_AT_END.exec(texts.at(-1) ?? '')?.[0] ?? '';
  const values: number[] = [];
  for (const [at, piece] of texts.entries()) {
    const part = together[at];
    const { possible: _possible, ...rest } = spec;
    const meaning = one(UNIT_AT_END.test(piece) ? piece : `${piece}${unit === '' ? '' : ` ${unit}`}`, {
      ...rest,
      ...(part?.possible === undefined ? {} : { possible: part.possible }),
    });
    if (meaning.is === 'fault') {
      const { code, field, message, accepted } = meaning.fault;
      return fault(refuse(code, field, `${part?.name}: ${message}`, accepted));
    }
    if (meaning.is !== 'number') return meaning;
    values.push(meaning.value);
  }
  return { is: 'several', values };
};

/**
 * What a typed or pasted text says in a field.
 * @param pasted whether it came in a paste, in which several numbers can stand.
 */
export const understand = (text: string, pasted: boolean, spec: FieldSpec): Understood => {
  const bare = text.trim();
  if (bare === '' || bare === '-' || bare === '+') return { is: 'empty' };
  if (spec.several === undefined && BEFORE_TIMES.test(bare)) return timesOf(bare, spec);
  if (!pasted) return one(bare, spec);
  const texts = pieces(bare);
  return texts.length > 1 ? several(texts, spec) : one(texts[0] ?? bare, spec);
};

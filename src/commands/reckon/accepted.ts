import { acceptedFor } from '../../quantity/accepted.ts';
import { fieldName, unitAfter } from './field-unit.ts';
import type { FieldSpec } from './topic.ts';

type NumberSpec = Extract<FieldSpec, { is: 'number' }>;

/** A number field's limits in words, each with its unit: `above 0°, at most 120°`. Empty when it has none. */
export const limitsOf = (spec: NumberSpec, name: string): string => {
  const sign = unitAfter(fieldName(name).unit);
  const limits: readonly (readonly [string, number | undefined])[] = [
    ['above', spec.above],
    ['at least', spec.atLeast],
    ['below', spec.below],
    ['at most', spec.atMost],
  ];
  return limits
    .filter(([, value]) => value !== undefined)
    .map(([word, value]) => `${word} ${value}${sign}`)
    .join(', ');
};

/** What a number field takes, in words: its kind, its unit and its limits. */
export const acceptedNumber = (spec: NumberSpec, name: string): string => {
  const { unit } = fieldName(name);
  const kind = spec.whole ? 'a whole number' : unit === undefined ? 'a number' : acceptedFor(unit);
  const limits = limitsOf(spec, name);
  return limits === '' ? kind : `${kind}; ${limits}`;
};

/** What a field takes, in words; `name` is the field's own or the nearest one above it. */
export const acceptedOf = (spec: FieldSpec, name: string): string => {
  switch (spec.is) {
    case 'number':
      return acceptedNumber(spec, name);
    case 'choice':
      return spec.of.map(one => `"${one}"`).join(' or ');
    case 'text':
      return 'a text';
    case 'flag':
      return 'true or false';
    case 'record':
      return `an object of ${Object.keys(spec.fields).join(', ')}`;
    case 'tuple':
      return `a list of ${spec.of.length}, each ${acceptedOf(spec.of[0] ?? { is: 'number' }, name)}`;
    case 'list':
      return `a list${sizeOf(spec)}, each ${acceptedOf(spec.of, name)}`;
  }
};

const sizeOf = ({ least, most }: Extract<FieldSpec, { is: 'list' }>): string =>
  `${least === undefined ? '' : ` of at least ${least}`}${most === undefined ? '' : ` of at most ${most}`}`;

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { acceptedOf } from './accepted.ts';
import type { Raw } from './raw.ts';
import { readJson } from './read-json.ts';
import type { FieldSpec } from './topic.ts';

/**
 * A flag's text as its field means it: numbers, texts and choices as typed; a list, tuple or record as JSON, a list or
 * tuple of plain values also separated by commas. Refused: a flag without a value (missing-field), JSON that is none.
 */
export const readFlagText = (
  spec: FieldSpec,
  text: string | undefined,
  place: string,
  name: string,
): Outcome<Raw> => {
  if (text === undefined)
    return spec.is === 'flag'
      ? good(true)
      : refuse('missing-field', place, `--${name} is given no value.`, acceptedOf(spec, name));
  if (spec.is === 'flag' && (text === 'true' || text === 'false')) return good(text === 'true');
  if (spec.is !== 'list' && spec.is !== 'tuple' && spec.is !== 'record') return good(text);
  if (spec.is !== 'record' && !/^\s*[[{]/.test(text))
    return good(text.trim() === '' ? [] : text.split(',').map(one => one.trim()));
  const json = readJson(text);
  return json.ok ? json : refuse(json.fault.code, place, json.fault.message, json.fault.accepted);
};

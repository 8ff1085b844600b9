import { type Fault, type FaultCode, good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { readAs } from '../../quantity/read-unit.ts';
import { acceptedNumber, acceptedOf } from './accepted.ts';
import { fieldName } from './field-unit.ts';
import { nearest } from './nearest.ts';
import { isRecord, isText, type Raw, type RawRecord } from './raw.ts';
import { readFlagText } from './read-flag-text.ts';
import type { FieldSpec, FieldSpecs, TopicInput } from './topic.ts';

type NumberSpec = Extract<FieldSpec, { is: 'number' }>;

/**
 * Holds written input against a topic's fields and gives numbers in the units that the fields name. The first fault in
 * the order of the input is the one given; what a record lacks is told after all that stands in it.
 * Paths count list places from 0: `pieces.2.length_mm`.
 *
 * Refused: unknown-field, missing-field, too-many-values (a field given twice, a tuple with too many places),
 * not-a-number, wrong-unit, out-of-range (a value, a choice, a list too short, a thing of another kind), too-large
 * (a list longer than the topic takes).
 */
export const readInput = (fields: FieldSpecs, raw: Raw): Outcome<TopicInput> =>
  isRecord(raw)
    ? readRecord(fields, raw, '')
    : refuse(
        'missing-field',
        null,
        'The input is not one JSON object.',
        'an object of fields, such as {"name": value}',
      );

/** No figure of a frame is near it; below it nothing a topic multiplies grows past all numbers. */
const LARGEST = 1e15;

const within = (path: string, name: string | number): string => (path === '' ? `${name}` : `${path}.${name}`);

const readRecord = (fields: FieldSpecs, raw: RawRecord, path: string): Outcome<TopicInput> => {
  const read: Record<string, unknown> = {};
  for (const [name, value] of raw.entries) {
    const place = within(path, name);
    const spec = Object.hasOwn(fields, name) ? fields[name] : undefined;
    if (spec === undefined) return unknownField(fields, name, place);
    if (Object.hasOwn(read, name))
      return refuse('too-many-values', place, `${place} is given twice.`, `${place} once`);
    const outcome = readValue(spec, value, place, name);
    if (!outcome.ok) return outcome;
    read[name] = outcome.value;
  }
  const lacking = Object.entries(fields).find(([name, spec]) => !spec.optional && !Object.hasOwn(read, name));
  if (lacking === undefined) return good(read);
  const place = within(path, lacking[0]);
  return refuse('missing-field', place, `${place} is missing.`, acceptedOf(lacking[1], lacking[0]));
};

const unknownField = (fields: FieldSpecs, name: string, place: string): { ok: false; fault: Fault } => {
  const meant = nearest(name, Object.keys(fields));
  return refuse(
    'unknown-field',
    place,
    `There is no field ${place}.${meant === undefined ? '' : ` Did you mean ${meant}?`}`,
    Object.keys(fields).join(', '),
  );
};

/** `name` is the nearest field's name above the value: its ending is the unit of every number under it. */
const readValue = (spec: FieldSpec, raw: Raw, place: string, name: string): Outcome<unknown> => {
  if (isText(raw)) {
    const written = readFlagText(spec, raw.text, place, name);
    return written.ok ? readValue(spec, written.value, place, name) : written;
  }
  const other = (code: FaultCode = 'out-of-range') =>
    refuse(code, place, `${place} is ${kindOf(raw)}.`, acceptedOf(spec, name));

  switch (spec.is) {
    case 'number':
      return readNumber(spec, raw, place, name);
    case 'choice': {
      if (typeof raw !== 'string') return other();
      if (spec.of.includes(raw)) return good(raw);
      const meant = nearest(raw, spec.of);
      const hint = meant === undefined ? '' : ` Did you mean "${meant}"?`;
      return refuse('out-of-range', place, `${place} cannot be "${raw}".${hint}`, acceptedOf(spec, name));
    }
    case 'text':
      // A joint called 1 is as good as one called "1".
      if (typeof raw === 'number' && Number.isFinite(raw)) return good(String(raw));
      return typeof raw === 'string' ? good(raw) : other();
    case 'flag':
      return typeof raw === 'boolean' ? good(raw) : other();
    case 'record':
      return isRecord(raw) ? readRecord(spec.fields, raw, place) : other();
    case 'list':
      return Array.isArray(raw) ? readList(spec, raw as readonly Raw[], place, name) : other();
    case 'tuple':
      return Array.isArray(raw) ? readTuple(spec, raw as readonly Raw[], place, name) : other();
  }
};

const readNumber = (spec: NumberSpec, raw: Raw, place: string, name: string): Outcome<number> => {
  const accepted = acceptedNumber(spec, name);
  if (typeof raw !== 'number' && typeof raw !== 'string')
    return refuse('not-a-number', place, `${place} is ${kindOf(raw)}.`, accepted);
  if (typeof raw === 'number' && Number.isNaN(raw))
    return refuse('not-a-number', place, `${place} is not a number.`, accepted);
  const number =
    typeof raw === 'number' ? good(raw) : readAs(raw, fieldName(name).unit ?? (spec.whole ? 'each' : 'one'));
  if (!number.ok) {
    const { code, message, accepted: instead } = number.fault;
    return refuse(code, place, message, instead);
  }
  const { value } = number;
  const outside =
    !(Math.abs(value) <= LARGEST) ||
    (spec.whole === true && !Number.isSafeInteger(value)) ||
    (spec.above !== undefined && value <= spec.above) ||
    (spec.atLeast !== undefined && value < spec.atLeast) ||
    (spec.below !== undefined && value >= spec.below) ||
    (spec.atMost !== undefined && value > spec.atMost);
  if (!outside) return number;
  const said = typeof raw === 'string' ? raw.trim() : `${raw}`;
  return refuse('out-of-range', place, `${place} cannot be ${said}.`, accepted);
};

const readList = (
  spec: Extract<FieldSpec, { is: 'list' }>,
  raw: readonly Raw[],
  place: string,
  name: string,
): Outcome<readonly unknown[]> => {
  const { least = 0, most = Number.POSITIVE_INFINITY } = spec;
  const size = `${place} has ${raw.length} ${raw.length === 1 ? 'entry' : 'entries'}.`;
  if (raw.length > most) return refuse('too-large', place, size, acceptedOf(spec, name));
  const read = readEach(raw, () => spec.of, place, name);
  if (!read.ok || raw.length >= least) return read;
  return refuse('out-of-range', place, size, acceptedOf(spec, name));
};

const readTuple = (
  spec: Extract<FieldSpec, { is: 'tuple' }>,
  raw: readonly Raw[],
  place: string,
  name: string,
): Outcome<readonly unknown[]> => {
  const size = `${place} has ${raw.length} of ${spec.of.length} places.`;
  if (raw.length > spec.of.length) return refuse('too-many-values', place, size, acceptedOf(spec, name));
  const read = readEach(raw, at => spec.of[at] as FieldSpec, place, name);
  if (!read.ok || raw.length === spec.of.length) return read;
  return refuse('missing-field', within(place, raw.length), size, acceptedOf(spec, name));
};

const readEach = (
  raw: readonly Raw[],
  specAt: (at: number) => FieldSpec,
  place: string,
  name: string,
): Outcome<readonly unknown[]> => {
  const read: unknown[] = [];
  for (const [at, one] of raw.entries()) {
    const outcome = readValue(specAt(at), one, within(place, at), name);
    if (!outcome.ok) return outcome;
    read.push(outcome.value);
  }
  return good(read);
};

const kindOf = (raw: Raw): string => {
  if (raw === null) return 'null';
  if (Array.isArray(raw)) return 'a list';
  if (typeof raw === 'object') return 'an object';
  return typeof raw === 'string' ? `the text "${raw}"` : `${raw}`;
};

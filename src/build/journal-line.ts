import { sumOf } from './crc32.ts';

/**
 * One line of a journal, and the rule by which it is written and trusted.
 *
 * A line is one JSON object in UTF-8 without a line break. Keys stand in one order: for an entry `id`, `n`, `v`, `at`,
 * `kind`, `replaces`; then every other key, at every depth, sorted by UTF-16 code unit; no spaces; numbers and strings as
 * JSON.stringify writes them. Last comes `"sum"`: the CRC-32, eight small hexadecimal digits, of the UTF-8 bytes of the
 * same line without it, that is of everything before `,"sum":` followed by `}`. Example, body and line:
 *
 *     {"id":"a1","n":1,"v":1,"at":"2026-05-01T18:00:00Z","kind":"stopped"}
 *     {"id":"a1","n":1,"v":1,"at":"2026-05-01T18:00:00Z","kind":"stopped","sum":"e7214591"}
 *
 * So the same entry is the same bytes wherever it was written, and a flipped bit anywhere in a line is noticed.
 */
export type StoredEntry = Readonly<{
  id: string;
  n: number;
  v: number;
  at: string;
  kind: string;
  replaces?: readonly string[] | undefined;
  [more: string]: unknown;
}>;

export type JournalFormat = 'curvewright-build' | 'curvewright-shop';

/** The first line of a journal. `build` is the random id that says which journals are copies of one another. */
export type Header = Readonly<{ format: JournalFormat; version: number; build: string; created: string }>;

export const HEADER_VERSION = 1;

/** Longest line written or believed, in UTF-8 bytes without its line break. An act of a person is some hundred. */
export const LONGEST_LINE = 1_048_576;

/** Deepest nesting believed: an entry needs four or five, and a bottomless one would overflow the stack. */
const DEEPEST = 32;

/** Counts above this are not counts; it keeps `n + 1` exact for ever. */
const GREATEST_N = 1_000_000_000_000;

export type DamageReason = 'not-text' | 'too-long' | 'no-sum' | 'wrong-sum' | 'not-json' | 'not-a-number';

/** What is wrong with a damaged line, in plain words. */
export const DAMAGE_WORDS: Readonly<Record<DamageReason, string>> = {
  'not-text': 'the bytes are not text',
  'too-long': 'the line is longer than any entry',
  'no-sum': 'the line is torn: its check sum is missing',
  'wrong-sum': 'the line was changed: its check sum does not fit',
  'not-json': 'the line cannot be taken apart',
  'not-a-number': 'the line holds a number or a nesting out of all bounds',
};

export type LineReading =
  | Readonly<{ is: 'entry'; entry: StoredEntry }>
  | Readonly<{ is: 'header'; header: Header }>
  | Readonly<{ is: 'damaged'; reason: DamageReason }>
  /** Whole (its sum fits) but of no shape this version knows: somebody newer wrote it. */
  | Readonly<{ is: 'newer'; reason: string }>;

const ENTRY_FIRST = ['id', 'n', 'v', 'at', 'kind', 'replaces'];
const HEADER_FIRST = ['format', 'version', 'build', 'created'];

const valueText = (value: unknown, depth: number): string => {
  if (depth > DEEPEST) throw new RangeError('an entry nests too deep to be kept');
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new RangeError('an entry holds a number that is not finite');
  }
  if (Array.isArray(value)) return `[${value.map(v => valueText(v, depth + 1)).join(',')}]`;
  if (typeof value === 'object' && value !== null) return objectText(value, [], depth);
  const text = JSON.stringify(value);
  if (text === undefined) throw new TypeError(`an entry cannot keep a ${typeof value}`);
  return text;
};

const objectText = (object: object, first: readonly string[], depth: number): string => {
  const held = Object.entries(object).filter(([, value]) => value !== undefined);
  const rank = (key: string): number => (first.includes(key) ? first.indexOf(key) : first.length);
  held.sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));
  return `{${held.map(([key, value]) => `${JSON.stringify(key)}:${valueText(value, depth + 1)}`).join(',')}}`;
};

const withSum = (body: string): string => `${body.slice(0, -1)},"sum":"${sumOf(body)}"}`;

/**
 * The one text of an entry, without its sum: equal texts are equal entries.
 * Throws when the entry cannot be kept (a number that is not finite, a function, a field named `sum`): that is a bug.
 */
export const entryText = (entry: StoredEntry): string => {
  if ('sum' in entry) throw new RangeError('`sum` belongs to the line, not to the entry');
  return objectText(entry, ENTRY_FIRST, 0);
};

/** The line of an entry, without its line break. Throws as `entryText` does. */
export const writeLine = (entry: StoredEntry): string => withSum(entryText(entry));

/** The first line of a journal, without its line break. */
export const writeHeader = (header: Header): string => withSum(objectText(header, HEADER_FIRST, 0));

const FRAME = /^(\{.*),"sum":"([0-9a-f]{8})"\}$/su;

/** Nothing not finite (JSON's 1e999 reads as Infinity), nothing bottomless, no key that would reach a prototype. */
const sound = (value: unknown, depth: number): boolean => {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object' || value === null) return true;
  if (depth >= DEEPEST) return false;
  if (Array.isArray(value)) return value.every(v => sound(v, depth + 1));
  return Object.keys(value).every(
    key => key !== '__proto__' && sound((value as Record<string, unknown>)[key], depth + 1),
  );
};

const isText = (value: unknown, longest: number): value is string =>
  typeof value === 'string' && value.length > 0 && value.length <= longest;

const isCount = (value: unknown): value is number =>
  Number.isInteger(value) && (value as number) >= 1 && (value as number) <= GREATEST_N;

const isFormat = (value: unknown): value is JournalFormat =>
  value === 'curvewright-build' || value === 'curvewright-shop';

const isEntry = (o: Readonly<Record<string, unknown>>): boolean =>
  isText(o.id, 200) &&
  isCount(o.n) &&
  isCount(o.v) &&
  isText(o.at, 40) &&
  isText(o.kind, 64) &&
  (o.replaces === undefined || (Array.isArray(o.replaces) && o.replaces.every(id => isText(id, 200)))) &&
  !('sum' in o);

/**
 * What a line of a journal holds. Never throws.
 * @param text the line without its line break (a carriage return left by another system's editor is forgiven)
 */
export const readLine = (text: string): LineReading => {
  const line = text.endsWith('\r') ? text.slice(0, -1) : text;
  // UTF-8 is never shorter than the text has code units; the exact length was looked at where the bytes were read.
  if (line.length > LONGEST_LINE) return { is: 'damaged', reason: 'too-long' };
  const [, start, sum] = FRAME.exec(line) ?? [];
  if (start === undefined) return { is: 'damaged', reason: 'no-sum' };
  const body = `${start}}`;
  if (sumOf(body) !== sum) return { is: 'damaged', reason: 'wrong-sum' };

  let held: unknown;
  try {
    held = JSON.parse(body);
  } catch {
    return { is: 'damaged', reason: 'not-json' };
  }
  if (!sound(held, 0)) return { is: 'damaged', reason: 'not-a-number' };

  const o = held as Record<string, unknown>;
  if (isFormat(o.format) && o.kind === undefined) {
    if (!isCount(o.version) || !isText(o.build, 200) || !isText(o.created, 40)) {
      return { is: 'newer', reason: 'its first line is of a kind this version does not know' };
    }
    return {
      is: 'header',
      header: { format: o.format, version: o.version, build: o.build, created: o.created },
    };
  }
  if (!isEntry(o)) return { is: 'newer', reason: 'a line is of a kind this version does not know' };
  return { is: 'entry', entry: o as StoredEntry };
};

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Raw } from './raw.ts';

/** Deeper than any topic's input goes; a bound keeps a hostile file from using up the stack. */
const DEEPEST = 24;

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const STRING = /"[^"\\\u0000-\u001f]*(?:\\.[^"\\\u0000-\u001f]*)*"/y;
/** The last three are no JSON, but other languages write them, and each is better refused at its own field. */
const WORDS: readonly (readonly [string, Raw])[] = [
  ['true', true],
  ['false', false],
  ['null', null],
  ['NaN', Number.NaN],
  ['Infinity', Number.POSITIVE_INFINITY],
  ['-Infinity', Number.NEGATIVE_INFINITY],
];

class Malformed extends Error {}
class TooDeep extends Error {}

/**
 * Reads JSON text, keeping the order of a record's entries and doubled names, so that the first fault in the input is
 * the one that is told. Refused: text that is not JSON (missing-field, the place said), nesting past 24 (too-large).
 */
export const readJson = (source: string): Outcome<Raw> => {
  // Some editors write a mark of three bytes in front of the text.
  const text = source.replace(/^\uFEFF/, '');
  let at = 0;
  let deep = 0;

  const blank = () => {
    while (' \t\n\r'.includes(text[at] ?? '?')) at += 1;
  };
  const match = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(text)?.[0];
    at += found?.length ?? 0;
    return found;
  };
  const take = (sign: string): boolean => {
    blank();
    const there = text.startsWith(sign, at);
    if (there) at += sign.length;
    return there;
  };
  const need = (sign: string, wanted: string) => {
    if (!take(sign)) throw new Malformed(wanted);
  };
  const string = (): string => {
    blank();
    const start = at;
    const token = match(STRING);
    if (token === undefined) throw new Malformed('a name or text in double quotes');
    try {
      return JSON.parse(token) as string;
    } catch {
      at = start;
      throw new Malformed('a text whose backslashes are those of JSON');
    }
  };
  const several = <T>(close: string, one: () => T): T[] => {
    const found: T[] = [];
    if (take(close)) return found;
    do found.push(one());
    while (take(','));
    need(close, `a comma or ${close}`);
    return found;
  };
  const entry = (): readonly [string, Raw] => {
    const name = string();
    need(':', 'a colon');
    return [name, value()];
  };
  const nested = (read: () => Raw): Raw => {
    deep += 1;
    if (deep > DEEPEST) throw new TooDeep();
    const raw = read();
    deep -= 1;
    return raw;
  };
  const value = (): Raw => {
    blank();
    if (take('{')) return nested(() => ({ entries: several('}', entry) }));
    if (take('[')) return nested(() => several(']', value));
    if (text[at] === '"') return string();
    const word = WORDS.find(([spelt]) => take(spelt));
    if (word !== undefined) return word[1];
    const number = match(NUMBER);
    if (number === undefined) throw new Malformed('a value');
    return Number(number);
  };

  try {
    const raw = value();
    blank();
    if (at < text.length) throw new Malformed('the end of the input');
    return good(raw);
  } catch (caught) {
    if (caught instanceof TooDeep)
      return refuse(
        'too-large',
        null,
        'The input is nested too deep.',
        `at most ${DEEPEST} levels of { and [`,
      );
    if (!(caught instanceof Malformed)) throw caught;
    return refuse(
      'missing-field',
      null,
      `The input is not JSON: ${placeOf(text, at)}.`,
      `${caught.message} there`,
    );
  }
};

const placeOf = (text: string, at: number): string => {
  if (text.trim() === '') return 'it is empty';
  const before = text.slice(0, at).split('\n');
  const there = at < text.length ? `"${text.slice(at, at + 12).split('\n')[0]}"` : 'the end';
  return `at line ${before.length}, column ${(before.at(-1) as string).length + 1} stands ${there}`;
};

import { UNITS, type Unit, type UnitCode, type UnitKind } from './units.ts';

type Spelling = Readonly<{ code: UnitCode; kind: UnitKind; way: RegExp; mega: boolean }>;

/** A unit found in a text, and where the text goes on after it. */
export type SpelledUnit = Readonly<{ code: UnitCode; end: number }>;

const pattern = (spelling: string): string =>
  spelling
    .replace('µ', 'u')
    .replace(/[$.*?^()[\]{}|\\]/g, '\\$&')
    .replace(/(?<=[a-z])[2²]/g, '(?:²|\\^?2)')
    .replace(/(?<=[a-z])[3³]/g, '(?:³|\\^?3)')
    .replace(/(?<=[a-z])[4⁴]/g, '(?:⁴|\\^?4)')
    .replace(/ /g, ' ?[·⋅*-]? ?')
    .replace(/(?<=.)\//g, '(?: ?/ ?| per )');

const spellingsOf = ([code, unit]: [string, Unit]): Spelling[] => {
  const texts = unit.label === '' ? [] : [code, unit.label, ...(unit.also ?? [])];
  return [...new Set(texts)].map(text => ({
    code: code as UnitCode,
    kind: unit.kind,
    way: new RegExp(pattern(text), 'yui'),
    mega: text.startsWith('M'),
  }));
};

const SPELLINGS: readonly Spelling[] = Object.entries<Unit>(UNITS).flatMap(spellingsOf);

/** The end of the spelling at `start`, or null. A unit ends where no letter, power, product or division goes on. */
const endOf = (text: string, start: number, { way, mega }: Spelling): number | null => {
  // Capitals are forgiven (MPA, Kg), but mPa is not read as MPa: a thousandth is no million.
  if (mega && /^m[a-z]*[A-Z]/.test(text.slice(start))) return null;
  way.lastIndex = start;
  const found = way.exec(text)?.[0];
  if (found === undefined) return null;
  const end = start + found.length;
  const rest = text.slice(end);
  if (/['"%°]$/.test(found)) return end;
  if (/^(?:[\p{L}_²³⁴^%°]| ?[/·⋅*])/u.test(rest)) return null;
  return /^\.(?![\d.,])/.test(rest) ? end + 1 : end;
};

/**
 * The longest unit of one kind that is spelled at `start`, or null. "5 ft3in" is feet in a length and would be cubic
 * feet in a volume, so the kind decides.
 */
export const unitAt = (text: string, start: number, kind: UnitKind): SpelledUnit | null => {
  let longest: SpelledUnit | null = null;
  for (const spelling of SPELLINGS) {
    if (spelling.kind !== kind) continue;
    const end = endOf(text, start, spelling);
    if (end !== null && end > (longest?.end ?? start)) longest = { code: spelling.code, end };
  }
  return longest;
};

/** The unit of any kind that makes up the whole text ("m/s", "°F"), or null. */
export const foreignUnit = (text: string): UnitCode | null =>
  SPELLINGS.find(spelling => endOf(text, 0, spelling) === text.length)?.code ?? null;

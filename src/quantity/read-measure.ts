import { acceptedFor, kindName } from './accepted.ts';
import { convert, convertFraction } from './convert.ts';
import { good, type Outcome, refuse } from './outcome.ts';
import { amountAt } from './typed-number.ts';
import { plainText, quoted } from './typed-text.ts';
import { foreignUnit, unitAt } from './unit-spelling.ts';
import { type UnitCode, unitOf } from './units.ts';

/** Which smaller unit may follow which: 12 ft 6 in, 2 lb 3 oz, 1 h 20 min, 1 m 20 cm. */
const FOLLOWS: Partial<Record<UnitCode, readonly UnitCode[]>> = {
  ft: ['in'],
  lb: ['oz'],
  h: ['min', 's'],
  min: ['s'],
  m: ['cm', 'mm'],
  cm: ['mm'],
};

/** Spellings that mean different things to different people, and what to type instead. */
const UNCLEAR: readonly (readonly [RegExp, string])[] = [
  [/^mils?$/i, 'mil is a thousandth of an inch to some, a millimetre to others: type thou or mm'],
  [/^(?:ga|gauge|gage|swg|bwg)\.?$/i, 'gauge numbers differ by trade: measure the wall, type it in mm or in'],
  [/^(?:tons?|tonnes?|t)$/i, 'tons differ: type kg or lb'],
];

/** Nothing is colder, in °C: 0 K by definition. */
const ABSOLUTE_ZERO_C = -273.15;
const LAST_BIT = 1e-9;

type Refusal = ReturnType<typeof refuse>;
/** top ÷ bottom of a unit. */
type Measure = Readonly<{ top: number; bottom: number; unit: UnitCode }>;

/** Why the text from `start` on does not go on from the amount before it. */
const refuseRest = (text: string, start: number, bare: UnitCode): Refusal => {
  const accepted = acceptedFor(bare);
  const wanted = kindName(unitOf(bare).kind);
  const rest = text.slice(start).trim();
  const foreign = foreignUnit(rest);
  if (foreign !== null && unitOf(foreign).kind !== unitOf(bare).kind) {
    const found = kindName(unitOf(foreign).kind);
    return refuse('wrong-unit', null, `${rest} is ${found}, and ${wanted} is wanted`, accepted);
  }
  const unclear = UNCLEAR.find(([spelling]) => spelling.test(rest));
  if (unclear !== undefined) return refuse('wrong-unit', null, unclear[1], accepted);
  if (/^[\p{L}%°][^\d]*$/u.test(rest)) {
    return refuse('wrong-unit', null, `${quoted(rest)} is no unit for ${wanted}`, accepted);
  }
  if (/^\d{1,3}(?: \d{3})+$/.test(text)) {
    const closed = text.replaceAll(' ', '');
    return refuse('not-a-number', null, `${quoted(text)} has a gap: ${closed}?`, `${closed}, without a gap`);
  }
  return refuse('not-a-number', null, `${quoted(text)} is not one number`, accepted);
};

/** `1 in 12` and `1:12`: a rise over a run, as a ratio or as the angle that has it. Null where the text is none. */
const slope = (text: string, bare: UnitCode): Outcome<Measure> | null => {
  const { kind } = unitOf(bare);
  if (kind !== 'angle' && kind !== 'ratio') return null;
  const sides = /^(\d{1,6}(?:\.\d{1,6})?)(?: in | ?: ?)(\d{1,6}(?:\.\d{1,6})?)$/.exec(text);
  if (sides === null) return null;
  const rise = Number(sides[1]);
  const run = Number(sides[2]);
  if (run === 0) return refuse('not-a-number', null, `${quoted(text)} divides by 0`, acceptedFor(bare));
  if (kind === 'angle') return good({ top: Math.atan(rise / run), bottom: 1, unit: 'rad' });
  return good({ top: rise, bottom: run, unit: 'one' });
};

/** Two amounts as one, in the smaller unit: 5 ft and 3 1/2 in are 63 1/2 in. */
const joined = (
  larger: Measure & { whole: boolean },
  smaller: Measure,
  text: string,
  accepted: string,
): Outcome<Measure> => {
  const { label } = unitOf(larger.unit);
  if (!larger.whole) {
    return refuse('not-a-number', null, `${quoted(text)}: part of a ${label} is given twice`, accepted);
  }
  if (smaller.top / smaller.bottom >= convert(1, larger.unit, smaller.unit)) {
    return refuse(
      'out-of-range',
      null,
      `${quoted(text)}: what follows the ${label} is one ${label} or more`,
      accepted,
    );
  }
  const { bottom, unit } = smaller;
  return good({ top: convert(larger.top, larger.unit, unit) * bottom + smaller.top, bottom, unit });
};

/** The amounts and units of an unsigned text, joined into one. */
const unsigned = (text: string, bare: UnitCode): Outcome<Measure> => {
  const accepted = acceptedFor(bare);
  const { kind } = unitOf(bare);
  let total: (Measure & { whole: boolean }) | null = null;
  let at = 0;
  while (true) {
    const amount = amountAt(text, at, accepted);
    if (amount === null) return refuse('not-a-number', null, `${quoted(text)} is not a number`, accepted);
    if (!amount.ok) return amount;

    const { top, bottom, whole, end } = amount.value;
    const gap = text[end] === ' ' ? end + 1 : end;
    const follow: readonly UnitCode[] = total === null ? [] : (FOLLOWS[total.unit] ?? []);
    let unit = unitAt(text, gap, kind);
    if (unit === null && gap >= text.length) {
      // 5'3 1/2 needs no inch mark; 1 m 20 does need its cm, for some would mean mm.
      if (total !== null && total.unit !== 'ft') return refuseRest(text, at, bare);
      unit = { code: total === null ? bare : 'in', end: text.length };
    }
    // "20°" beside a thermometer is in the degrees of the build.
    if (unit === null && kind === 'temperature' && text.slice(gap) === '°')
      unit = { code: bare, end: gap + 1 };
    if (unit === null) return refuseRest(text, gap, bare);
    if (total !== null && !follow.includes(unit.code)) return refuseRest(text, at, bare);

    const part: Measure = { top, bottom, unit: unit.code };
    const sum: Outcome<Measure> = total === null ? good(part) : joined(total, part, text, accepted);
    if (!sum.ok || unit.end === text.length) return sum;

    // Between feet and inches stands nothing, a space or a hyphen, but no hyphen that looks like a minus: 5' -3.
    const between = /^(?:-| - | )?(?=[\d.,])/.exec(text.slice(unit.end))?.[0];
    if (between === undefined || !(unit.code in FOLLOWS) || foreignUnit(text.slice(gap)) !== null) {
      return refuseRest(text, gap, bare);
    }
    total = { ...sum.value, whole };
    at = unit.end + between.length;
  }
};

/**
 * Reads one number with or without a unit.
 *
 * @param text what was typed
 * @param bare the unit that a bare number counts in; units of its kind are accepted
 * @param wanted the unit of the answer, of the same kind
 * @returns a finite number, never -0; or a fault: `not-a-number`, `wrong-unit` or `out-of-range`
 */
export const readMeasure = (text: string, bare: UnitCode, wanted: UnitCode): Outcome<number> => {
  const accepted = acceptedFor(bare);
  const plain = plainText(text, accepted);
  if (!plain.ok) return plain;

  const [, sign = '', rest = ''] = /^([+-]?) ?(.*)$/.exec(plain.value) ?? [];
  if (/^[+-]/.test(rest))
    return refuse('not-a-number', null, `${quoted(plain.value)} has two signs`, accepted);

  const measure = slope(rest, bare) ?? unsigned(rest, bare);
  if (!measure.ok) return measure;
  const { top, bottom, unit } = measure.value;
  const value = convertFraction(sign === '-' ? -top : top, bottom, unit, wanted);

  const { kind } = unitOf(wanted);
  if (kind === 'temperature' && convert(value, wanted, 'C') < ABSOLUTE_ZERO_C - LAST_BIT) {
    return refuse('out-of-range', null, `${quoted(plain.value)} is colder than anything can be`, accepted);
  }
  if (kind === 'count' && !(value >= 0 && Number.isInteger(value))) {
    return refuse('out-of-range', null, `${quoted(plain.value)} is no whole number from 0 up`, accepted);
  }
  return good(value === 0 ? 0 : value);
};

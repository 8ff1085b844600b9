import type { Quantity } from '../../quantity/quantities.ts';
import { UNITS, type Unit, unitOf } from '../../quantity/units.ts';
import { innerUnit } from '../../quantity/usual.ts';

/** Signs a number can begin with, and those it can go on with once a digit stands. Letters are lower case. */
export type NumberSigns = Readonly<{ first: ReadonlySet<string>; any: ReadonlySet<string> }>;

const FIRST = '0123456789.,½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞';
/** Fractions, feet and inches with their typographic twins, slopes (1:12). */
const FURTHER = '/⁄:\'"′″’”';

const spellings = (unit: Unit, code: string): string => [code, unit.label, ...(unit.also ?? [])].join('');

/** The signs of the numbers of a quantity: digits and marks, and the letters of the units it can be typed in. */
export const numberSigns = (quantity: Quantity): NumberSigns => {
  const { kind } = unitOf(innerUnit(quantity));
  const units = Object.entries<Unit>(UNITS)
    .filter(([, unit]) => unit.kind === kind)
    .map(([code, unit]) => spellings(unit, code))
    .join('')
    .toLowerCase()
    .replace(/[\s_]/g, '');
  // "1 in 12" is an angle and a ratio.
  const slope = kind === 'angle' || kind === 'ratio' ? 'in' : '';
  return { first: new Set(FIRST), any: new Set(FIRST + FURTHER + units + slope) };
};

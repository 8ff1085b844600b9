import { convert } from './convert.ts';
import type { Quantity, System } from './quantities.ts';
import { decimals, feetAndInches, isRuleStep, nearest, ruled } from './rounding.ts';
import { type UnitCode, unitOf } from './units.ts';
import { innerUnit, stepAt, usual } from './usual.ts';

/** How a figure is asked for. */
export type FigureOptions = Readonly<{
  /** Round to this, in the usual unit of the system: 1 (mm) for uprights, 1/32 (in) for slit marks. */
  step?: number;
  /** From 24 in up, feet and inches. */
  feet?: boolean;
  /** Keep a closing zero also where the step is 0.5: 6.0 under 15.5. */
  fixed?: boolean;
  /** Write in the usual unit alone, so that a bare number can be read back (a time in minutes). */
  bare?: boolean;
}>;

/** A figure taken apart: which side of zero it lies on after rounding, its digits, its unit ('' for a count). */
export type FigureParts = Readonly<{ side: -1 | 0 | 1; digits: string; unit: string }>;

/** Past it a float no longer tells one unit from the next. */
const WRITABLE_BELOW = 1e15;

/** From here up a tape is read in feet and inches. */
export const FEET_FROM_IN = 24;

const inUnit = (
  size: number,
  unit: UnitCode,
  step: number,
  options: FigureOptions,
): Omit<FigureParts, 'side'> => {
  const { label } = unitOf(unit);
  if (unit !== 'in' || !isRuleStep(step)) return { digits: decimals(size, step, options.fixed), unit: label };
  if (!options.feet) return { digits: ruled(size, step), unit: label };
  const long = nearest(size, step) >= FEET_FROM_IN;
  return { digits: long ? feetAndInches(size, step) : ruled(size, step), unit: '"' };
};

/** Whether a US tape reads a length in feet and inches. */
export const isInFeet = (value: number, quantity: Quantity, system: System): boolean =>
  system === 'us' &&
  quantity === 'length' &&
  nearest(convert(Math.abs(value), 'mm', 'in'), usual(quantity, system).step) >= FEET_FROM_IN;

/** A reach in inches as a US tape has it: 20 1/2 in, 5'-3". A number of a span keeps its mark, for "8 to 3'-5" says nothing. */
const marked = (inches: number, step: number, bare: boolean): Omit<FigureParts, 'side'> => {
  const size = nearest(inches, step);
  if (size >= FEET_FROM_IN) return { digits: `${feetAndInches(inches, step)}"`, unit: '' };
  const digits = ruled(inches, step);
  return bare && size > 0 ? { digits: `${digits}"`, unit: '' } : { digits, unit: 'in' };
};

/** A time in the unit that suits its size: 0.62 s, 45 s, 2.5 min, 12 min. */
const time = (seconds: number): Omit<FigureParts, 'side'> => {
  if (nearest(seconds, 0.01) < 10) return { digits: decimals(seconds, 0.01), unit: 's' };
  if (nearest(seconds, 1) < 90) return { digits: decimals(seconds, 1), unit: 's' };
  const minutes = convert(seconds, 's', 'min');
  return { digits: decimals(minutes, nearest(minutes, 0.5) < 10 ? 0.5 : 1), unit: 'min' };
};

/**
 * Takes a figure apart for writing. A value that is no number, or past all writing, gives a dash.
 *
 * @param value in the quantity's inner unit
 */
export const figureParts = (
  value: number,
  quantity: Quantity,
  system: System,
  options: FigureOptions = {},
): FigureParts => {
  const { unit } = usual(quantity, system);
  const shown = convert(value, innerUnit(quantity), unit);
  const size = Math.abs(shown);
  const step = options.step ?? stepAt(size, quantity, system);
  if (!(size < WRITABLE_BELOW)) return { side: 0, digits: '–', unit: '' };
  const parts =
    quantity === 'time' && options.step === undefined && !options.bare
      ? time(Math.abs(value))
      : quantity === 'reach' && unit === 'in' && isRuleStep(step)
        ? marked(size, step, options.bare === true)
        : inUnit(size, unit, step, options);
  const isZero = !/[1-9]/.test(parts.digits);
  return { side: isZero ? 0 : shown < 0 ? -1 : 1, ...parts };
};

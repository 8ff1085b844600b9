import { convert } from './convert.ts';
import { figureParts } from './figure-parts.ts';
import type { Quantity, System } from './quantities.ts';
import { nearest } from './rounding.ts';

export type WriteOptions = {
  /** Round to this instead, in the usual unit of the system (mm or in for a length). */
  step?: number;
  /** Write + as well as −. Zero, and what rounds to zero, has no sign. */
  sign?: boolean;
  /** false leaves the unit out; the figure then reads back as a bare number. */
  unit?: boolean;
  /** US lengths from 24 in up as 5'-3 1/2", below as 15 3/4". */
  feet?: boolean;
  /** Keep the closing zero of a step of 0.5, for columns: 6.0 under 15.5. */
  fixed?: boolean;
};

/** From here up a time is written in hours and minutes. */
const HOURS_FROM_MIN = 120;

const hours = (seconds: number): string | null => {
  const minutes = nearest(convert(seconds, 's', 'min'), 1);
  if (minutes < HOURS_FROM_MIN) return null;
  const left = minutes % 60;
  return `${(minutes - left) / 60} h${left === 0 ? '' : ` ${left} min`}`;
};

const joint = (unit: string): string => (unit === '' || unit === '°' || unit === '"' ? '' : ' ');

/**
 * A number as a person reads it, in the usual unit of the system, rounded to what the bench can show. All of it can be
 * typed back. No mark for thousands: a tape has none.
 *
 * @param value in the quantity's inner unit (see quantities.ts), with its sign
 */
export const write = (
  value: number,
  quantity: Quantity,
  system: System,
  options: WriteOptions = {},
): string => {
  const { sign = false, unit = true, ...how } = options;
  const parts = figureParts(value, quantity, system, { ...how, bare: !unit });
  const before = parts.side < 0 ? '−' : parts.side > 0 && sign ? '+' : '';
  const clock = quantity === 'time' && parts.unit === 'min' && unit && how.step === undefined;
  const long = clock ? hours(Math.abs(value)) : null;
  if (long !== null) return `${before}${long}`;
  return `${before}${parts.digits}${unit ? `${joint(parts.unit)}${parts.unit}` : ''}`;
};

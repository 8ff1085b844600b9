import { convert } from './convert.ts';
import { FEET_FROM_IN } from './figure-parts.ts';
import type { Quantity, System } from './quantities.ts';
import { nearest } from './rounding.ts';
import { usual } from './usual.ts';
import { write } from './write.ts';

/** Echoes in inches are to a hundredth beside the fraction: fine enough to see which way the fraction was rounded. */
const HUNDREDTH_IN = 0.01;
const TENTH_MM = 0.1;

/** A length in both ways a US shop has it: `= 0.61 in = 5/8 in`, and one of them where they say the same. */
const inches = (value: number, quantity: 'length' | 'slit'): string => {
  const exact = convert(Math.abs(value), 'mm', 'in');
  const ruled = nearest(exact, usual(quantity, 'us').step);
  const hundredths = write(value, quantity, 'us', { step: HUNDREDTH_IN });
  if (ruled === 0 && exact >= HUNDREDTH_IN / 2) return `= ${hundredths}`;
  const feet = quantity === 'length' && ruled >= FEET_FROM_IN;
  const fraction = write(value, quantity, 'us', { feet });
  return Math.abs(ruled - exact) < 1e-6 || ruled === 0 ? `= ${fraction}` : `= ${hundredths} = ${fraction}`;
};

/**
 * The echo of a typed number in the other system: `= 0.61 in = 5/8 in` for a metric typing, `= 2438.4 mm` for a US one.
 * Empty where both systems write alike (angles, times, amps).
 *
 * @param value in the quantity's inner unit
 * @param system the one that was typed in
 */
export const inBoth = (value: number, quantity: Quantity, system: System): string => {
  const other: System = system === 'metric' ? 'us' : 'metric';
  if (!Number.isFinite(value) || usual(quantity, system).unit === usual(quantity, other).unit) return '';
  if (quantity === 'length' || quantity === 'slit') {
    if (other === 'us') return inches(value, quantity);
    return `= ${write(value, quantity, other, { step: TENTH_MM })}`;
  }
  return `= ${write(value, quantity, other)}`;
};

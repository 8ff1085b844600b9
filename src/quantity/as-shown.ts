import { convert } from './convert.ts';
import type { Quantity, System } from './quantities.ts';
import { nearest } from './rounding.ts';
import { innerUnit, shownStep, stepAt, usual } from './usual.ts';

/**
 * A value as a page shows it, in its inner unit: sums of these close for whoever adds up the page.
 * @param value in the quantity's inner unit, with its sign
 */
export const asShown = (value: number, quantity: Quantity, system: System): number => {
  const { unit, step: finest } = usual(quantity, system);
  const size = convert(Math.abs(value), innerUnit(quantity), unit);
  const step = (shownStep(quantity, system) * stepAt(size, quantity, system)) / finest;
  return Math.sign(value) * nearest(Math.abs(value) / step, 1) * step;
};

import type { Quantity, System } from './quantities.ts';
import { nearest } from './rounding.ts';
import { shownStep } from './usual.ts';

/**
 * A value as a page shows it, in its inner unit: sums of these close for whoever adds up the page.
 * @param value in the quantity's inner unit, with its sign
 */
export const asShown = (value: number, quantity: Quantity, system: System): number => {
  const step = shownStep(quantity, system);
  return Math.sign(value) * nearest(Math.abs(value) / step, 1) * step;
};

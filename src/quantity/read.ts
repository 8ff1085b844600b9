import type { Outcome } from './outcome.ts';
import type { Quantity, System } from './quantities.ts';
import { readMeasure } from './read-measure.ts';
import { innerUnit, usual } from './usual.ts';

/**
 * What a person typed as a number of the quantity, in its inner unit (see quantities.ts), with its sign.
 * Units of both systems are read; a bare number counts in the usual unit of the system (see usualLabel).
 *
 * @returns the number, or a fault `not-a-number`, `wrong-unit` or `out-of-range` whose field is null
 */
export const read = (text: string, quantity: Quantity, system: System): Outcome<number> =>
  readMeasure(text, usual(quantity, system).unit, innerUnit(quantity));

import { figureParts } from './figure-parts.ts';
import type { Quantity, System } from './quantities.ts';

export type TallOptions = {
  /** Round to this instead, in the usual unit of the system: 1 for uprights. */
  step?: number;
  /** Write + as well as -. */
  sign?: boolean;
  /** No feet, however long: for what stands beside a list in inches. */
  feet?: false;
};

/**
 * A number in the characters that tall figures have (digits, `.`, `+`, `-`, `'`, `"`, `/`, space), and the unit to
 * stand beside it. US lengths from 24 in up are in feet and inches; slit marks stay in inches, as one hook of the tape
 * reads them. Decimals stay (393.0), so that figures read one after another keep their width.
 *
 * @param value in the quantity's inner unit, with its sign
 */
export const tall = (
  value: number,
  quantity: Quantity,
  system: System,
  options: TallOptions = {},
): { digits: string; unit: string } => {
  const { sign = false, ...how } = options;
  const parts = figureParts(value, quantity, system, { feet: quantity === 'length', ...how, fixed: true });
  const before = parts.side < 0 ? '-' : parts.side > 0 && sign ? '+' : '';
  // Below 24 in nothing on the line is in feet, and "in" is the plainer unit.
  const unit = parts.unit === '"' && !parts.digits.includes("'") ? 'in' : parts.unit;
  return { digits: `${before}${parts.digits}`, unit };
};

import type { Quantity, System } from '../../quantity/quantities.ts';
import { read } from '../../quantity/read.ts';
import { type Decided, no } from './refusal.ts';

/** A number as the person typed it, or bare as a script gives it: both count in the build's own unit. */
export const amount = (
  raw: unknown,
  quantity: Quantity,
  system: System,
  field?: string,
): Decided<{ value: number; typed: string }> => {
  if (typeof raw !== 'string' && typeof raw !== 'number') {
    return no('no-number', {}, field === undefined ? {} : { field });
  }
  // A bare number of a field that names its unit is in that unit, whatever the build's own.
  const typed = typeof raw === 'number' && field?.endsWith('_mm') === true ? `${raw} mm` : String(raw).trim();
  const got = read(typed, quantity, system);
  return got.ok
    ? { ok: true, value: { value: got.value, typed } }
    : no(
        'not-read',
        { message: got.fault.message, accepted: got.fault.accepted },
        {
          fault: got.fault,
          ...(field === undefined ? {} : { field }),
        },
      );
};

/** A number within a range, else refused with the range in words. */
export const amountWithin = (
  raw: unknown,
  quantity: Quantity,
  system: System,
  range: readonly [number, number] | undefined,
  field?: string,
): Decided<{ value: number; typed: string }> => {
  const got = amount(raw, quantity, system, field);
  if (!got.ok || range === undefined) return got;
  const [low, high] = range;
  return got.value.value < low || got.value.value > high
    ? no(
        'impossible',
        { typed: got.value.typed, low: { v: low, as: quantity }, high: { v: high, as: quantity } },
        field === undefined ? {} : { field },
      )
    : got;
};

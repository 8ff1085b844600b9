import type { Band } from '../../build/shop/learned.ts';

/** A band of minutes, in hours where it is long. */
export const spanText = ({ low, high }: Band): string =>
  high < 120
    ? `${Math.round(low)} to ${Math.round(high)} min`
    : `${Math.max(1, Math.round(low / 60))} to ${Math.round(high / 60)} h`;

import type { Quantity, System } from '../../quantity/quantities.ts';
import { write } from '../../quantity/write.ts';

/** Design numbers that are no lengths. */
const NOT_LENGTHS: Readonly<Record<string, Quantity>> = {
  exit: 'angle',
  rider: 'mass',
  layers: 'count',
  clamps: 'count',
};

/** Sizes read with a caliper: shown to a hundredth, not to the nearest sixteenth. */
const BY_CALIPER = new Set(['depth_mm', 'wall_mm', 'kerf_mm', 'layer_mm', 'thickness_mm']);

const one = (name: string, value: unknown, system: System): string =>
  typeof value === 'number'
    ? write(value, NOT_LENGTHS[name] ?? (BY_CALIPER.has(name) ? 'thickness' : 'length'), system)
    : value === true
      ? 'yes'
      : value === false
        ? 'no'
        : String(value);

/** What a design field was set to, in a person's words: "height 600 mm, exit 30.0°". */
export const designWords = (field: string, value: unknown, system: System): string =>
  typeof value === 'object' && value !== null
    ? Object.entries(value)
        .map(([name, v]) =>
          name === 'kind' ? String(v) : `${name.replace(/_mm$/, '')} ${one(name, v, system)}`,
        )
        .join(', ')
    : one(field, value, system);

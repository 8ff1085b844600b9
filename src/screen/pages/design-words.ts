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
/** What is read with a caliper all round, its width too. */
const SECTIONS = new Set(['tube', 'post']);

const quantityOf = (field: string, name: string): Quantity =>
  NOT_LENGTHS[name] ?? (BY_CALIPER.has(name) || SECTIONS.has(field) ? 'thickness' : 'length');

const one = (field: string, name: string, value: unknown, system: System): string =>
  typeof value === 'number'
    ? write(value, quantityOf(field, name), system)
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
          name === 'kind' ? String(v) : `${name.replace(/_mm$/, '')} ${one(field, name, v, system)}`,
        )
        .join(', ')
    : one(field, field, value, system);

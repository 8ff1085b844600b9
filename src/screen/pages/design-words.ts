import { inBoth } from '../../quantity/both.ts';
import { isInFeet } from '../../quantity/figure-parts.ts';
import type { Quantity, System } from '../../quantity/quantities.ts';
import { usualLabel } from '../../quantity/usual.ts';
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
    ? write(value, quantityOf(field, name), system, {
        feet: isInFeet(value, quantityOf(field, name), system),
      })
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

const OTHER = { metric: 'us', us: 'metric' } as const;

/** What is said as its sizes alone, one by the other. */
const BY_SIZES = new Set(['tube', 'post', 'door']);

const sizes = (field: string, all: readonly [string, unknown][], system: System): string =>
  all
    .map(([name, v], i) => write(Number(v), quantityOf(field, name), system, { unit: i === all.length - 1 }))
    .join(' x ');

const oneInBoth = (field: string, name: string, value: unknown, system: System): string => {
  const shown = one(field, name, value, system);
  if (typeof value !== 'number') return shown;
  // To a tenth of a millimetre, as the field echoed it: half of one would not be what was typed.
  const echo = inBoth(value, quantityOf(field, name), system);
  return echo === '' ? shown : `${shown} ${echo}`;
};

/** The same in both systems, the build's first: "height 24 in = 609.5 mm, exit 30.0°". */
export const designInBoth = (field: string, value: unknown, system: System): string => {
  if (typeof value !== 'object' || value === null) return oneInBoth(field, field, value, system);
  const all = Object.entries(value);
  if (BY_SIZES.has(field)) return `${sizes(field, all, system)} = ${sizes(field, all, OTHER[system])}`;
  return all
    .map(([name, v]) =>
      name === 'kind' ? String(v) : `${name.replace(/_mm$/, '')} ${oneInBoth(field, name, v, system)}`,
    )
    .join(', ');
};

/** A tube as its label has it: 40 x 40 x 3 mm, 1.5 x 1.5 x 0.12 in. */
export const sectionWords = (
  tube: Readonly<{ depth_mm: number; width_mm: number; wall_mm: number }>,
  system: System,
): string => {
  const [depth, width, wall] = [tube.depth_mm, tube.width_mm, tube.wall_mm].map(v =>
    write(v, 'thickness', system, { unit: false }).replace(/\.?0+$/, ''),
  );
  return `${depth} x ${width} x ${wall} ${usualLabel('thickness', system)}`;
};

import { DESIGN_VALUES, type Doing } from '../../build/entries.ts';
import type { Quantity, System } from '../../quantity/quantities.ts';
import { DESIGN_FIELDS, type DesignField } from '../../ramp/design.ts';
import { amountWithin } from './amount.ts';
import { type Decided, no } from './refusal.ts';

type Range = readonly [number, number];
type Spec = readonly [Quantity, Range];

const DEG = Math.PI / 180;
const SHAPE: Readonly<Record<string, Spec>> = {
  height: ['length', [60, 4000]],
  run: ['length', [200, 20_000]],
  radius: ['length', [400, 40_000]],
  exit: ['angle', [2 * DEG, 75 * DEG]],
  arc: ['length', [200, 20_000]],
};
const TUBE: Readonly<Record<string, Spec>> = {
  depth_mm: ['thickness', [10, 150]],
  width_mm: ['thickness', [10, 150]],
  wall_mm: ['thickness', [0.5, 12]],
};
/** Fields that are one number, with the range that can be meant at all. */
const PLAIN: Readonly<Partial<Record<DesignField, Spec>>> = {
  straight: ['length', [0, 2000]],
  width: ['length', [200, 6000]],
  grinder: ['length', [75, 300]],
  rider: ['mass', [10, 250]],
  clamps: ['count', [0, 60]],
  spacing: ['length', [100, 1500]],
  diagonals: ['length', [80, 2000]],
  rails: ['count', [2, 8]],
};
const RECORDS: Readonly<Partial<Record<DesignField, Readonly<Record<string, Spec>>>>> = {
  shape: SHAPE,
  tube: TUBE,
  post: TUBE,
  door: { width_mm: ['length', [300, 20_000]], height_mm: ['length', [300, 20_000]] },
  cutter: { kerf_mm: ['thickness', [0.2, 6]] },
  deck: {
    layer_mm: ['thickness', [3, 30]],
    thickness_mm: ['thickness', [12, 80]],
    board_mm: ['length', [50, 400]],
  },
};

const isRecord = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw);

/** The value a design field gets from what was typed: numbers read in the build's unit, choices checked. */
export const designValue = (field: DesignField, raw: unknown, system: System): Decided<unknown> => {
  const plain = PLAIN[field];
  if (plain !== undefined) {
    const got = amountWithin(raw, plain[0], system, plain[1], field);
    return got.ok ? { ok: true, value: got.value.value } : got;
  }
  let value: unknown = raw;
  const record = RECORDS[field];
  if (record !== undefined) {
    if (!isRecord(raw)) return no('needs-parts', { parts: Object.keys(record).join(', ') }, { field });
    const parts: Record<string, unknown> = {};
    for (const [name, part] of Object.entries(raw)) {
      const spec = record[name];
      if (spec === undefined) {
        parts[name] = part;
        continue;
      }
      const got = amountWithin(part, spec[0], system, spec[1], `${field}.${name}`);
      if (!got.ok) return got;
      parts[name] = got.value.value;
    }
    value = parts;
    if (field === 'shape' && (Object.keys(parts).length === 0 || Object.keys(parts).length > 2)) {
      return no('two-sizes', {}, { field });
    }
    if (field === 'deck' && typeof parts.layers === 'number' && (parts.layers < 1 || parts.layers > 6)) {
      return no('layers-range', {}, { field });
    }
  }
  const parsed = DESIGN_VALUES[field].safeParse(value);
  if (parsed.success) return { ok: true, value: parsed.data };
  const choices = CHOICES[field];
  return choices === undefined
    ? no('not-understood', { field }, { field })
    : no('no-such-choice', { field, choices }, { field });
};

const CHOICES: Readonly<Partial<Record<DesignField, string>>> = {
  use: 'bike, scooter, skate, inline skates',
  route: 'slit, rolled',
  cutter: 'kind: thin disc, band saw, hacksaw or chop saw, and kerf_mm',
  deck: 'kind sheet with layer_mm and layers, or kind boards with thickness_mm and board_mm',
  first: 'true or false',
  sequence: 'in step, one after the other',
  tolerance: 'novice, careful shop',
  standard: 'AISC, EN',
  ground: DESIGN_VALUES.ground.options.join(', '),
};

/** What this program does not help with, whoever asks; each has its own words under `refusals.use-<name>`. */
export const REFUSED_USES: readonly string[] = [
  'vehicle',
  'wheelchair',
  'footbridge',
  'public',
  'street',
  'roof',
  'towed',
  'water',
];

/** The entry that answers a question of the design, before it is held against the ramp it gives. */
export const answerEntry = (
  fieldName: string,
  raw: unknown,
  system: System,
  before: string | undefined,
): Decided<Doing & { kind: 'design-set' }> => {
  const field = DESIGN_FIELDS.find(f => f === fieldName);
  if (field === undefined)
    return no('no-such-field', { field: fieldName, fields: DESIGN_FIELDS.join(', ') }, { field: fieldName });
  if (field === 'use' && typeof raw === 'string' && REFUSED_USES.includes(raw))
    return no(`use-${raw}`, {}, { field });
  const value = designValue(field, raw, system);
  if (!value.ok) return value;
  return {
    ok: true,
    value: {
      kind: 'design-set',
      field,
      value: value.value,
      ...(before === undefined ? {} : { replaces: [before] }),
    },
  };
};

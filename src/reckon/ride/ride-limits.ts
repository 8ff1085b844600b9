import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Drag } from './air.ts';

/**
 * What the ride kernels take, in the units of the fields of the number command: wide enough for anything on wheels,
 * narrow enough that no square overflows. Judgement.
 */
export const RIDE_LIMITS = {
  speed_m_s: { above: 0, atMost: 100 },
  /** 0 is a roll-off; straight up, a rider comes down where he left. */
  exit_deg: { atLeast: 0, below: 90 },
  /** A curve that is climbed; past 120° no arc of ours goes. */
  climb_deg: { above: 0, atMost: 120 },
  drop_m: { atLeast: -100, atMost: 100 },
  gap_m: { atLeast: 0, atMost: 200 },
  slope_deg: { atLeast: -45, atMost: 80 },
  run_in_slope_deg: { atLeast: 0.1, below: 90 },
  radius_m: { atLeast: 0.1, atMost: 1000 },
  flat_m: { atLeast: 0, atMost: 10_000 },
  mass_kg: { atLeast: 1, atMost: 1000 },
  rolling: { atLeast: 0, below: 1 },
  drag_area_m2: { atLeast: 0, atMost: 10 },
  air_kg_m3: { atLeast: 0, atMost: 2 },
} as const;

type RideField = keyof typeof RIDE_LIMITS;
type Limit = Readonly<{ above?: number; atLeast?: number; below?: number; atMost?: number }>;

/** What is said of a number past its limit: the name a rider has for it, and its unit. */
const SAID: Readonly<Record<RideField, readonly [name: string, unit: string, field?: string]>> = {
  speed_m_s: ['speed', 'm/s'],
  exit_deg: ['exit angle', '°'],
  climb_deg: ['exit angle', '°', 'exit_deg'],
  drop_m: ['drop', 'm'],
  gap_m: ['gap', 'm'],
  slope_deg: ['landing slope', '°'],
  run_in_slope_deg: ['slope', '°', 'slope_deg'],
  radius_m: ['radius', 'm'],
  flat_m: ['flat', 'm'],
  mass_kg: ['mass', 'kg'],
  rolling: ['rolling resistance', ''],
  drag_area_m2: ['drag area', 'm²'],
  air_kg_m3: ['density of the air', 'kg/m³'],
};

/** An angle comes in radians, so a limit in whole degrees may be missed by its last bit. */
const NOISE = 1e-9;

const within = (value: number, { above, atLeast, below, atMost }: Limit): boolean =>
  (above === undefined || value > above) &&
  (atLeast === undefined || value >= atLeast - NOISE) &&
  (below === undefined || value < below - NOISE) &&
  (atMost === undefined || value <= atMost + NOISE);

const accepted = ({ above, atLeast, below, atMost }: Limit, unit: string): string => {
  const parts = [
    above === undefined ? '' : `above ${above}`,
    atLeast === undefined ? '' : `at least ${atLeast}`,
    below === undefined ? '' : `below ${below}`,
    atMost === undefined ? '' : `at most ${atMost}`,
  ];
  return `${parts.filter(part => part !== '').join(', ')} ${unit}`.trim();
};

type RideValues = Readonly<Partial<Record<RideField, number | undefined>>>;

/**
 * Good when every number given lies within its limit; else out-of-range for the first that does not, or missing-field
 * for a drag area without the mass it slows.
 * @param values in the units of the names; what is undefined was not given
 */
export const withinRideLimits = (values: RideValues): Outcome<null> => {
  for (const [field, value] of Object.entries(values) as [RideField, number | undefined][]) {
    if (value === undefined || within(value, RIDE_LIMITS[field])) continue;
    const [name, unit, shown = field] = SAID[field];
    return refuse(
      'out-of-range',
      shown,
      `The ${name} cannot be ${`${value} ${unit}`.trim()}.`,
      accepted(RIDE_LIMITS[field], unit),
    );
  }
  if ((values.drag_area_m2 ?? 0) > 0 && values.mass_kg === undefined)
    return refuse(
      'missing-field',
      'mass_kg',
      'Drag slows a mass, and none is given.',
      'the mass with the drag area',
    );
  return good(null);
};

/** The numbers of drag as fields, to hold against their limits. */
export const dragFields = ({ mass_kg, drag_area_m2, air_kg_m3 }: Drag): RideValues => ({
  mass_kg,
  drag_area_m2,
  air_kg_m3,
});

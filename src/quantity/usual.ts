import { convertStep } from './convert.ts';
import type { Quantity, System } from './quantities.ts';
import { type UnitCode, unitOf } from './units.ts';

/** The unit a bare number counts in, and the finest rounding that is shown. */
export type Usual = Readonly<{ unit: UnitCode; step: number }>;

type Habit = Readonly<{ inner: UnitCode } & Record<System, Usual>>;

/** One habit for both systems, for what a metric and a US shop write alike. */
const alike = (inner: UnitCode, unit: UnitCode, step: number): Habit => ({
  inner,
  metric: { unit, step },
  us: { unit, step },
});

/** How a shop writes each quantity [practice]: steps are what a tape, caliper, gauge or dial can be read to. */
const HABITS: Readonly<Record<Quantity, Habit>> = {
  length: { inner: 'mm', metric: { unit: 'mm', step: 0.5 }, us: { unit: 'in', step: 1 / 16 } },
  slit: { inner: 'mm', metric: { unit: 'mm', step: 0.1 }, us: { unit: 'in', step: 1 / 32 } },
  thickness: { inner: 'mm', metric: { unit: 'mm', step: 0.01 }, us: { unit: 'in', step: 0.001 } },
  distance: { inner: 'm', metric: { unit: 'm', step: 0.01 }, us: { unit: 'ft', step: 0.1 } },
  reach: { inner: 'm', metric: { unit: 'm', step: 0.01 }, us: { unit: 'in', step: 1 / 2 } },
  angle: alike('rad', 'deg', 0.1),
  speed: { inner: 'm_s', metric: { unit: 'km_h', step: 0.1 }, us: { unit: 'mph', step: 0.1 } },
  mass: { inner: 'kg', metric: { unit: 'kg', step: 0.1 }, us: { unit: 'lb', step: 0.1 } },
  force: { inner: 'N', metric: { unit: 'N', step: 1 }, us: { unit: 'lbf', step: 1 } },
  moment: { inner: 'Nmm', metric: { unit: 'Nm', step: 0.1 }, us: { unit: 'lbfft', step: 0.1 } },
  stress: { inner: 'MPa', metric: { unit: 'MPa', step: 1 }, us: { unit: 'ksi', step: 0.1 } },
  temperature: { inner: 'C', metric: { unit: 'C', step: 0.5 }, us: { unit: 'F', step: 1 } },
  time: alike('s', 'min', 0.1),
  area: { inner: 'm2', metric: { unit: 'm2', step: 0.01 }, us: { unit: 'ft2', step: 0.1 } },
  volume: { inner: 'l', metric: { unit: 'l', step: 0.1 }, us: { unit: 'gal', step: 0.01 } },
  gas: { inner: 'l', metric: { unit: 'l', step: 10 }, us: { unit: 'ft3', step: 1 } },
  count: alike('each', 'each', 1),
  ratio: alike('one', 'one', 0.01),
  percent: alike('pct', 'pct', 1),
  current: alike('A', 'A', 1),
  tension: alike('V', 'V', 0.1),
  flow: { inner: 'l_min', metric: { unit: 'l_min', step: 0.5 }, us: { unit: 'ft3_h', step: 1 } },
  feed: { inner: 'm_min', metric: { unit: 'm_min', step: 0.1 }, us: { unit: 'in_min', step: 1 } },
  travel: { inner: 'mm_s', metric: { unit: 'mm_s', step: 0.1 }, us: { unit: 'in_min', step: 0.5 } },
};

/** From so many pounds up a mass is said whole: a tenth of a pound is nothing to who lifts it [practice]. */
const WHOLE_POUNDS_FROM = 20;

/** From so many inches up a reach is said in whole ones: no flight is known to half an inch [practice]. */
const WHOLE_INCHES_FROM = 24;

/** The rounding of a size, in the usual unit: that of its habit, but coarser where nothing finer is read. */
export const stepAt = (size: number, quantity: Quantity, system: System): number =>
  system === 'us' &&
  ((quantity === 'mass' && size >= WHOLE_POUNDS_FROM - 0.05) ||
    (quantity === 'reach' && size >= WHOLE_INCHES_FROM - 0.25))
    ? 1
    : HABITS[quantity][system].step;

/** The unit in which a quantity is kept inside. */
export const innerUnit = (quantity: Quantity): UnitCode => HABITS[quantity].inner;

/** The unit a bare number counts in and the step a figure is rounded to (in that unit). */
export const usual = (quantity: Quantity, system: System): Usual => HABITS[quantity][system];

/** The name of the unit a bare number counts in ("mm", "in", "°"), to be said beside a field. Empty for a count. */
export const usualLabel = (quantity: Quantity, system: System): string =>
  unitOf(HABITS[quantity][system].unit).label;

/** The step a figure is rounded to on a page, in the quantity's inner unit (1/16 in of a length is 1.5875 mm). */
export const shownStep = (quantity: Quantity, system: System): number => {
  const { inner } = HABITS[quantity];
  const { unit, step } = HABITS[quantity][system];
  return convertStep(step, unit, inner);
};

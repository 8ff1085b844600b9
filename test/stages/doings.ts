import type { Doing } from '../../src/build/entries.ts';

export const DEG = Math.PI / 180;

/** An invented build is begun. */
export const begun = (system: 'metric' | 'us' = 'metric'): Doing => ({
  kind: 'build-begun',
  name: 'Quarry Lane kicker',
  system,
  invented: true,
});

export const set = (field: string, value: unknown): Doing => ({ kind: 'design-set', field, value }) as Doing;

/** A number read at a step, in inner units. */
export const read = (step: string, ask: string, value: number): Doing => ({
  kind: 'reading-logged',
  step,
  ask,
  value,
  typed: String(value),
  basis: {},
});

export const tick = (step: string, basis: Record<string, number> = {}): Doing => ({
  kind: 'step-ticked',
  step,
  basis,
});

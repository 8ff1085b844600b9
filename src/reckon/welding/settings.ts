import { type Outcome, refuse } from '../../quantity/outcome.ts';
import { type CoredWireInput, coredWireSettings } from './cored-wire-settings.ts';
import { type RodInput, rodSettings } from './rod-settings.ts';
import type { Settings } from './setting.ts';
import { type SolidWireInput, solidWireSettings } from './solid-wire-settings.ts';

export type SettingsInput =
  | (Readonly<{ process: 'gmaw' }> & SolidWireInput)
  | (Readonly<{ process: 'fcaw-s' }> & CoredWireInput)
  | (Readonly<{ process: 'smaw' }> & RodInput);

/** Walls that settings are given for: the thinnest tube a beginner welds, and 1/4 in. */
export const WALL_LIMITS_mm = { atLeast: 1.5, atMost: 6.4 } as const;

/**
 * What to set a machine to before the first coupon, each as a start and a band: a place to begin, which the door chart
 * of the machine and the person's own coupon replace.
 * Refuses out-of-range for a wall that is too thin or too thick, and what the process refuses.
 */
export const settings = (input: SettingsInput): Outcome<Settings> => {
  const { atLeast, atMost } = WALL_LIMITS_mm;
  if (!(input.wall_mm >= atLeast && input.wall_mm <= atMost))
    return refuse(
      'out-of-range',
      'wall_mm',
      `No settings are given for a wall of ${input.wall_mm} mm.`,
      `at least ${atLeast}, at most ${atMost} mm`,
    );
  switch (input.process) {
    case 'gmaw':
      return solidWireSettings(input);
    case 'fcaw-s':
      return coredWireSettings(input);
    case 'smaw':
      return rodSettings(input);
  }
};

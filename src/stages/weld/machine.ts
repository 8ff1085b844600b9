import { readingKey } from '../../build/fold.ts';
import type { Outcome } from '../../quantity/outcome.ts';
import type { Process } from '../../reckon/welding/process.ts';
import { RODS } from '../../reckon/welding/rod-settings.ts';
import type { Settings } from '../../reckon/welding/setting.ts';
import { type SettingsInput, settings } from '../../reckon/welding/settings.ts';
import { SOLID_WIRES } from '../../reckon/welding/solid-wire-settings.ts';
import type { Situation } from '../situation.ts';

export const MACHINE = 'weld/machine';

/**
 * The machine as the person tells it by a number: 1 solid wire and mixed gas, 2 solid wire and CO2, 3 cored wire without gas,
 * 4 rutile rods (E6013), 5 low-hydrogen rods (E7018).
 */
export type Kind = 1 | 2 | 3 | 4 | 5;
export const KINDS: readonly Kind[] = [1, 2, 3, 4, 5];

const PROCESS: Readonly<Record<Kind, Process>> = { 1: 'gmaw', 2: 'gmaw', 3: 'fcaw-s', 4: 'smaw', 5: 'smaw' };
/** Wires and cores that settings are known for, mm (trade sizes). */
const FILLERS: Readonly<Record<Kind, readonly number[]>> = {
  1: SOLID_WIRES.map(w => w.mm),
  2: SOLID_WIRES.map(w => w.mm),
  3: [0.8, 0.9, 1.1],
  4: RODS.E6013.map(r => r.mm),
  5: RODS.E7018.map(r => r.mm),
};

export type Machine = Readonly<{
  kind: Kind;
  process: Process;
  /** The wire or rod, as the nearest size that is made; null until it is told. */
  filler_mm: number | null;
  /** What to set for the rail's wall with this wire, or why it cannot be. */
  set: Outcome<Settings>;
}>;

/** Wall of the rails that are slit, the thinnest in hand, mm. */
export const railWall = (s: Situation): number =>
  Math.min(s.ramp.design.tube.wall_mm, ...[...s.measured.tubes.values()].map(t => t.wall_mm ?? Infinity));

export const kindOf = (s: Situation): Kind | null => {
  const told = s.build.readings.get(readingKey(MACHINE, 'kind'))?.value;
  return KINDS.find(kind => kind === told) ?? null;
};

const inputFor = (kind: Kind, wall_mm: number, filler_mm: number | undefined): SettingsInput => {
  switch (kind) {
    case 1:
      return { process: 'gmaw', wall_mm, gas: '75/25', filler_mm };
    case 2:
      return { process: 'gmaw', wall_mm, gas: 'CO2', filler_mm };
    case 3:
      return { process: 'fcaw-s', wall_mm, filler_mm };
    case 4:
      return { process: 'smaw', wall_mm, rod: 'E6013', filler_mm };
    case 5:
      return { process: 'smaw', wall_mm, rod: 'E7018', filler_mm };
  }
};

/** Settings for a wall on the machine that was told, with its own wire. */
export const settingsFor = (kind: Kind, wall_mm: number, filler_mm: number | null): Outcome<Settings> =>
  settings(inputFor(kind, wall_mm, filler_mm ?? undefined));

/** The machine at this bench and what to set on it; null until it is told. */
export const machineOf = (s: Situation): Machine | null => {
  const kind = kindOf(s);
  if (kind === null) return null;
  const told = s.build.readings.get(readingKey(MACHINE, 'wire'))?.value;
  const filler_mm =
    told === undefined
      ? null
      : FILLERS[kind].reduce((best, mm) => (Math.abs(mm - told) < Math.abs(best - told) ? mm : best));
  return { kind, process: PROCESS[kind], filler_mm, set: settingsFor(kind, railWall(s), filler_mm) };
};

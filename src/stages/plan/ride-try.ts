import type { System } from '../../quantity/quantities.ts';
import { saidSpeed } from '../riding.ts';
import type { Fills } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import type { Change } from './ride-change.ts';

/** A change, tried one after the other until the limit is kept. */
export type Try = Readonly<{ change: Change; fills: Fills }>;
/** A remedy and the changes it may be, least first; minutes it takes. */
export type Way = Readonly<{ remedy: string; tries: readonly Try[]; minutes?: number }>;

/** A tenth of the unit that speeds are read in, m/s: kilometres or miles an hour. */
const TENTH = { metric: 0.1 / 3.6, us: 0.044704 } as const;

/** A speed to whole tenths as it is read, so that what stands on the page can be typed: downward, or upward. */
export const tenthDown = (m_s: number, system: System): number =>
  Math.floor(m_s / TENTH[system] + 1e-6) * TENTH[system];
export const tenthUp = (m_s: number, system: System): number =>
  Math.ceil(m_s / TENTH[system] - 1e-6) * TENTH[system];

/** A change of one thing that was read. */
export const reading = (step: string, ask: string, value: number): Change => ({
  readings: [{ step, ask, value }],
});

const ride = (v: number): Try => ({
  change: reading('plan/ride', 'entry-speed', v),
  fills: { speed: { v, as: 'speed' } },
});

/** The ride slower, at each of these speeds below what was said. */
export const slower = (s: Situation, tries: readonly number[]): readonly Way[] => {
  const now = saidSpeed(s);
  return now === null
    ? []
    : [
        {
          remedy: 'ride-slower',
          tries: tries
            .map(v => tenthDown(v, s.build.system))
            .filter(v => v > 1 && v < now)
            .map(ride),
        },
      ];
};

/** A speed, and half a kilometre an hour less at a time, down to half of it. */
export const downFrom = (most_m_s: number): readonly number[] =>
  Array.from({ length: 20 }, (_, k) => most_m_s - (k * 0.5) / 3.6).filter(v => v > most_m_s / 2);

/** The same below the speed that was said. */
export const stepsDown = (s: Situation): readonly number[] => downFrom(saidSpeed(s) ?? 0).slice(1);

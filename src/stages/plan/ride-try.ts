import { saidSpeed } from '../riding.ts';
import type { Fills } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import type { Change } from './ride-change.ts';

/** A change, tried one after the other until the limit is kept. */
export type Try = Readonly<{ change: Change; fills: Fills }>;
/** A remedy and the changes it may be, least first; minutes it takes. */
export type Way = Readonly<{ remedy: string; tries: readonly Try[]; minutes?: number }>;

/** Whole tenths of a kilometre an hour, downward. */
const tenth = (m_s: number): number => Math.floor(m_s * 36 + 1e-9) / 36;

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
            .map(tenth)
            .filter(v => v > 1 && v < now)
            .map(ride),
        },
      ];
};

/** Half a kilometre an hour slower at a time, down to half the speed. */
export const stepsDown = (s: Situation): readonly number[] => {
  const now = saidSpeed(s) ?? 0;
  return Array.from({ length: 20 }, (_, k) => now - ((k + 1) * 0.5) / 3.6).filter(v => v > now / 2);
};

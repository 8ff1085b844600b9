import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Process } from './process.ts';

/** What a hobby machine on such a mains burns, and for what share of ten minutes [practice]: 90 A at 20 %, 140 A at 30 %. */
const PLATES = {
  low: { amps: 90, share: 0.2 },
  high: { amps: 140, share: 0.3 },
} as const;
/** Mains up to this are the low ones (110 to 130 V). */
const LOW_MAINS_V = 130;
/** Thickest wall that wire on the low mains goes into in one pass, mm [practice]. */
const LOW_MAINS_WALL_mm = 3.2;

/** What is taken for a mains at a bench, V: a generator's least, and three phases. */
export const MAINS_V = { atLeast: 90, atMost: 480 } as const;

const mainsFault = (mains_V: number) =>
  refuse(
    'out-of-range',
    'mains_V',
    `No welder is plugged into ${mains_V} V.`,
    `at least ${MAINS_V.atLeast}, at most ${MAINS_V.atMost} V`,
  );

/**
 * Share of ten minutes that a hobby machine on such a mains may burn at a current, 0 to 1: its plate's duty times (plate current ÷
 * current)², at most 1. The square is the usual approximation [memory]; the plates are common practice, and the machine's own
 * plate goes before them.
 * @param amps more than 0
 * Refuses out-of-range for a mains that there is none of, or no current.
 */
export const dutyShare = (mains_V: number, amps: number): Outcome<number> => {
  if (!(mains_V >= MAINS_V.atLeast && mains_V <= MAINS_V.atMost)) return mainsFault(mains_V);
  if (!(amps > 0 && amps <= 1000))
    return refuse('out-of-range', 'amps', `No arc has ${amps} A.`, 'above 0, at most 1000 A');
  const plate = mains_V <= LOW_MAINS_V ? PLATES.low : PLATES.high;
  return good(Math.min(1, plate.share * (plate.amps / amps) ** 2));
};

/** Thickest wall a wire machine on such a mains goes into in one pass, mm; null where the mains sets no limit. */
export const thickestOnePass = (mains_V: number, process: Process): number | null =>
  mains_V <= LOW_MAINS_V && process !== 'smaw' ? LOW_MAINS_WALL_mm : null;

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Process } from './process.ts';

type Row = Readonly<{ below_A: number; rod_below_mm: number; least: number; suggested: number | null }>;

/**
 * Least shade: 29 CFR 1910.133(a)(5) [found]. Suggested, to find a comfortable one from: ANSI Z49.1:2012, as helmet
 * manuals print it [found]; below 60 A it suggests none. Rods: under 3/32 in (2.4 mm), to 5/32 (4.0),
 * to 1/4 (6.4).
 */
const ROD_ROWS: readonly Row[] = [
  { below_A: 60, rod_below_mm: 2.38, least: 7, suggested: null },
  { below_A: 160, rod_below_mm: 4.01, least: 8, suggested: 10 },
  { below_A: 250, rod_below_mm: 6.36, least: 10, suggested: 12 },
];
const WIRE_ROWS: readonly Row[] = [
  { below_A: 60, rod_below_mm: Number.POSITIVE_INFINITY, least: 7, suggested: null },
  { below_A: 160, rod_below_mm: Number.POSITIVE_INFINITY, least: 10, suggested: 11 },
  { below_A: 250, rod_below_mm: Number.POSITIVE_INFINITY, least: 10, suggested: 12 },
];

/** What a beginner starts with, one darker if he sees an after-image [practice]. */
const START: Readonly<Record<Process, number>> = { gmaw: 11, 'fcaw-s': 11, smaw: 10 };

export type Shade = Readonly<{
  /** Never lighter. */
  least: number;
  suggested: number | null;
  /** What to set first: the bench's own, or the suggested one where that is darker. */
  start: number;
}>;

/**
 * The shade of a welding lens. A current on a row's edge, or a rod that asks a darker row than the current does, takes
 * the darker row.
 * Refuses out-of-range for a current or rod that no such machine has.
 * @param amps of the arc
 * @param rod_mm core of a covered rod; only that process is asked
 */
export const shade = (process: Process, amps: number, rod_mm = 0): Outcome<Shade> => {
  if (!(amps > 0 && amps <= 250))
    return refuse('out-of-range', 'amps', `No lens is chosen here for ${amps} A.`, 'above 0, at most 250 A');
  if (!(rod_mm >= 0 && rod_mm <= 6.35))
    return refuse(
      'out-of-range',
      'rod_mm',
      `No lens is chosen here for a rod of ${rod_mm} mm.`,
      'at most 6.35 mm',
    );
  const rows = process === 'smaw' ? ROD_ROWS : WIRE_ROWS;
  const row = rows.find(one => amps < one.below_A && rod_mm < one.rod_below_mm) ?? rows.at(-1);
  if (row === undefined) throw new Error('a shade table without rows');
  const { least, suggested } = row;
  return good({ least, suggested, start: Math.max(START[process], least, suggested ?? 0) });
};

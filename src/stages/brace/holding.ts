import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { Situation } from '../situation.ts';
import { diagonalsOf, KEYS, standName, uprightsOf } from './side.ts';

/** A rail pulled farther than this onto its blocks wants one more upright before any clamp comes off, mm (bench rule; derived from a plane frame). */
export const FORCED_FAR = 5;
const FEW = 2;
const MORE = 3;
/** An upright tacked on its four sides holds as much as this share of a welded one (common practice). */
const TACKED_HOLDS = 0.3;

/**
 * How far the clamps pull a rail onto its line, mm: as read at the blocks before they close; until then the worst offset of the
 * survey that counts, as if all of it were pulled. Null where neither is known.
 */
export const forcedOf = (s: Situation, rail: RailName): { mm: number; read: boolean } | null => {
  const reading = s.build.readings.get(readingKey(KEYS.forced(rail), 'forced'));
  if (reading !== undefined) return { mm: Math.abs(reading.value), read: true };
  const offsets = s.measured.curves.get(rail)?.offsets_mm;
  return offsets === undefined ? null : { mm: Math.max(...offsets.map(Math.abs)), read: false };
};

export type Holding = Readonly<{
  /** The lip upright is welded. */
  lip: boolean;
  /** Other uprights in, a tacked one counted for its share. */
  between: number;
  /** How many of them it takes. */
  needed: number;
  /** Diagonals not welded yet. */
  diagonalsOpen: number;
  base: boolean;
  enough: boolean;
}>;

/** What holds a rail to its line once the clamps are off: read from the ticks of its welds. */
export const holdingOf = (s: Situation, rail: RailName): Holding => {
  const { ticks } = s.build;
  const welded = ticks.has(KEYS.weld(rail));
  const counts = uprightsOf(s, rail).map((m): number => {
    if (!ticks.has(`${KEYS.fit(rail)}#${standName(m)}`)) return 0;
    return welded ? 1 : TACKED_HOLDS;
  });
  const [lip = 0, ...others] = counts;
  const between = Math.round(others.reduce((a, b) => a + b, 0) * 10) / 10;
  const wanted = (forcedOf(s, rail)?.mm ?? 0) > FORCED_FAR ? MORE : FEW;
  const needed = Math.min(others.length, wanted);
  const diagonalsOpen = ticks.has(KEYS.weldDiagonals(rail)) ? 0 : diagonalsOf(s, rail).length;
  const base = ticks.has(KEYS.hold(rail));
  return {
    lip: lip === 1,
    between,
    needed,
    diagonalsOpen,
    base,
    enough: lip === 1 && between >= needed && diagonalsOpen === 0 && base,
  };
};

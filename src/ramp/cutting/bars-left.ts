import type { Sawn } from './needed.ts';
import type { OpenBar } from './question.ts';

/** A bar or an offcut that lies in the shop as it was before this build cut into it. */
export type HeldBar = Readonly<{
  id: string;
  from: 'bought' | 'offcut';
  length_mm: number;
  /** What is chalked on it: "2", "2b" for a part that the yard cut. */
  label: string;
  /** What squaring takes of its ends, where the yard's cut leaves less than is usual, mm. */
  trim_mm?: number;
  /** Needs that were to be cut from it when it was bought. */
  needs: readonly string[];
}>;

/** A held bar with what has been sawn off it. */
export type WorkedBar = OpenBar & Readonly<{ sawn: readonly Sawn[] }>;

/** Shorter ends are no offcuts: the least upright worth cutting [practice]. */
export const LEAST_OFFCUT = 100;

/** Two lengths of one end as a tape reads them, mm. */
export const SAME_END = 0.5;

/**
 * What is left of the bars: each sawn piece, spoiled ones too, is taken off the bar it was to come from; one that was in no
 * bar's list, or no longer fits there, off the first opened bar it fits, then off any. A piece that fits none came from elsewhere.
 * An end is all that is left of one bar.
 * @param sawn in the order they were cut
 * @param trim_mm squaring of a bar's ends, taken with its first cut
 */
export const barsLeft = (
  held: readonly HeldBar[],
  sawn: readonly Sawn[],
  kerf_mm: number,
  trim_mm: number,
): readonly WorkedBar[] => {
  const bars = held.map(h => ({ ...h, trim: h.trim_mm ?? trim_mm, left: h.length_mm, taken: [] as Sawn[] }));
  type Bar = (typeof bars)[number];
  const trimOf = (bar: Bar): number => (bar.taken.length === 0 ? bar.trim : 0);
  const fits = (bar: Bar, piece: Sawn): boolean => bar.left - trimOf(bar) >= piece.length_mm - 1;
  for (const piece of sawn) {
    const own = bars.find(b => b.needs.includes(piece.need) && fits(b, piece));
    const end = piece.isEnd ? bars.find(b => Math.abs(b.left - piece.length_mm) < SAME_END) : undefined;
    const opened = bars.find(b => b.taken.length > 0 && fits(b, piece));
    const bar = own ?? end ?? opened ?? bars.find(b => fits(b, piece));
    if (bar === undefined) continue;
    bar.left = Math.max(0, bar.left - trimOf(bar) - piece.length_mm - kerf_mm);
    bar.taken.push(piece);
  }
  return bars.map(b => ({
    id: b.id,
    from: b.from,
    label: b.label,
    whole_mm: b.length_mm,
    squared: b.taken.length > 0,
    trim_mm: trimOf(b),
    left_mm: b.left,
    sawn: b.taken,
  }));
};

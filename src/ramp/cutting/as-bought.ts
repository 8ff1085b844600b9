import type { HeldBar, WorkedBar } from './bars-left.ts';
import type { PlannedBar } from './cut-bars.ts';
import type { Lump, OpenBar, Question } from './question.ts';

/** A piece may be drawn this much longer than when its bar was bought, mm: half of the step that lengths are read to, in either system. */
const FITS = 0.8;

/**
 * The plan that the bars were bought for, while it still holds: every piece not cut yet from the bar it was meant for. Nothing
 * takes less, since nothing is bought; and a piece keeps its bar, so that rails stay paired and chalk marks stay true.
 * @returns null when a piece was meant for no bar, or no longer fits the one it was meant for
 */
export const asBought = (
  q: Question,
  held: readonly HeldBar[],
  worked: readonly WorkedBar[],
): readonly PlannedBar[] | null => {
  // The newest first: what was bought again for a piece is what it is cut from.
  const bars = held
    .flatMap(h => {
      const bar = worked.find(w => w.id === h.id);
      return bar === undefined
        ? []
        : [
            {
              bar,
              needs: new Set(h.needs),
              lumps: [] as Lump[],
              room: roomIn(q, bar) + FITS * h.needs.length,
            },
          ];
    })
    .reverse();
  for (const lump of q.lumps) {
    const own = bars.find(b => lump.pieces.every(p => b.needs.has(p.need)) && b.room >= lump.length_mm);
    if (own === undefined) return null;
    own.lumps.push(lump);
    own.room -= lump.length_mm + q.kerf_mm;
  }
  return bars
    .reverse()
    .filter(b => b.lumps.length > 0)
    .map(b => ({ source: { is: 'open', bar: b.bar }, lumps: b.lumps }));
};

const roomIn = (q: Question, bar: OpenBar): number => bar.left_mm - (bar.squared ? 0 : q.trim_mm);

import { type HeldBar, LEAST_OFFCUT, type WorkedBar } from './bars-left.ts';
import type { PlannedBar } from './cut-bars.ts';
import { layBar } from './lay-bar.ts';
import type { Needed } from './needed.ts';
import { type Lump, type Question, together } from './question.ts';

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
      return bar === undefined ? [] : [{ bar, needs: new Set(h.needs), lumps: [] as Lump[] }];
    })
    .reverse();
  type Bar = (typeof bars)[number];
  /** What a bar keeps free beside these pieces as they will lie at the saw, mitres turned: a part of a bar has room for that and for no more. */
  const free = (b: Bar, lumps: readonly Lump[]): number => {
    // In the order they were laid when they were bought: another order of the same mitres is longer or shorter.
    const order = [...b.needs];
    const pieces = lumps.flatMap(l => l.pieces).sort((x, y) => order.indexOf(x.need) - order.indexOf(y.need));
    const end = layBar(pieces, 0, q.kerf_mm).cuts.at(-1)?.to_mm ?? 0;
    return b.bar.left_mm - b.bar.trim_mm - end;
  };
  const holds = (b: Bar, lump: Lump): boolean => free(b, [...b.lumps, lump]) >= -FITS * b.needs.size;
  // Rails that come from one bar may lie in two parts of it.
  const lumps = q.lumps.flatMap(l =>
    bars.some(b => l.pieces.every(p => b.needs.has(p.need)))
      ? [l]
      : l.pieces.map(p => together([p], q.kerf_mm)),
  );
  for (const lump of lumps.filter(l => !isSpare(l))) {
    const own = bars.find(b => lump.pieces.every(p => b.needs.has(p.need)) && holds(b, lump));
    if (own === undefined) return null;
    own.lumps.push(lump);
  }
  // A spare stretch is what was bought as one: the tenth of what is still to be cut may want it in other lengths.
  for (const lump of lumps.filter(isSpare)) {
    const own = bars.find(b => lump.pieces.every(p => b.needs.has(p.need)));
    if (own === undefined) continue;
    const long_mm = Math.min(lump.length_mm, free(own, own.lumps) - (own.lumps.length > 0 ? q.kerf_mm : 0));
    if (long_mm >= LEAST_OFFCUT)
      own.lumps.push(
        together(
          lump.pieces.map(p => spareOf(p, long_mm)),
          q.kerf_mm,
        ),
      );
  }
  return bars
    .reverse()
    .filter(b => b.lumps.length > 0)
    .map(b => ({ source: { is: 'open', bar: b.bar }, lumps: b.lumps }));
};

const isSpare = (l: Lump): boolean => l.pieces.every(p => p.kind === 'spare');

const spareOf = (p: Needed, long_mm: number): Needed => ({
  ...p,
  long_mm,
  short_mm: long_mm,
  plan_mm: long_mm,
});

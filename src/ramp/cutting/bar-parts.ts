import type { System } from '../design.ts';
import type { CutBar, PlannedBar } from './cut-bars.ts';
import { together } from './question.ts';
import { yardCuts } from './yard-cuts.ts';

/** What part k of a bar is called, from 0: "2a", "2b". */
export const partName = (bar: string, k: number): string =>
  `${bar}${String.fromCharCode('a'.charCodeAt(0) + k)}`;

/**
 * The parts that a bar goes home in, each with the pieces it is for: "2a", "2b". A part's marks count from its own squared end. Where
 * the yard's saw has less room than squaring takes, its cut is the end.
 * @param bar to buy
 * @param trim_mm for squaring both ends of a part
 * @param carry_mm the longest that goes home
 * @returns the bar itself, whole, where it needs no cut
 */
export const barParts = (
  bar: CutBar,
  trim_mm: number,
  kerf_mm: number,
  carry_mm: number,
  system: System,
): readonly PlannedBar[] => {
  const { source } = bar;
  const { at_mm, ahead } = yardCuts(bar, carry_mm, system);
  const marks = [0, ...at_mm, bar.length_mm];
  const pieces = [0, ...ahead, bar.cuts.length];
  return marks.slice(1).map((mark, k): PlannedBar => {
    const cuts = bar.cuts.slice(pieces[k], pieces[k + 1]);
    const length_mm = mark - (marks[k] ?? 0);
    const [first, last] = [cuts[0], cuts.at(-1)];
    const spare =
      first === undefined || last === undefined ? length_mm : length_mm - (last.to_mm - first.from_mm);
    return {
      source,
      lumps: cuts.map(c => together([c.piece], kerf_mm)),
      part: {
        label: at_mm.length === 0 ? bar.label : partName(bar.label, k),
        length_mm,
        trim_mm: Math.max(0, Math.min(trim_mm, spare)),
      },
    };
  });
};

import { asShown } from '../../quantity/as-shown.ts';
import type { System } from '../design.ts';
import type { CutBar } from './cut-bars.ts';

/** What a bar goes into, mm: trim + pieces + saw − turned + left is its length, each as a tape shows it. */
export type Closing = Readonly<{
  trim_mm: number;
  pieces_mm: number;
  saw_mm: number;
  turned_mm: number;
  left_mm: number;
}>;

/** The sum of one bar in the steps of a tape, so that it closes for whoever adds it up; what rounding leaves is in what is left over. */
export const closingOf = (bar: CutBar, system: System): Closing => {
  const shown = (v: number): number => asShown(v, 'length', system);
  const trim_mm = shown(bar.trim_mm);
  const pieces_mm = bar.cuts.reduce((sum, c) => sum + shown(c.to_mm - c.from_mm), 0);
  const saw_mm = shown(bar.kerfs_mm);
  const turned_mm = shown(bar.turned_mm);
  const left_mm = shown(bar.length_mm) - trim_mm - pieces_mm - saw_mm + turned_mm;
  // A bar that is used to the last leaves nothing: the saw takes up what rounding says.
  return left_mm >= 0
    ? { trim_mm, pieces_mm, saw_mm, turned_mm, left_mm }
    : { trim_mm, pieces_mm, saw_mm: saw_mm + left_mm, turned_mm, left_mm: 0 };
};

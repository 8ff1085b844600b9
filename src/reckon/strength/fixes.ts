import type { Outcome } from '../../quantity/outcome.ts';
import { good } from '../../quantity/outcome.ts';
import { type Change, type Changed, changesFor } from './frame-changes.ts';
import type { SideFrameInput } from './side-frame-input.ts';
import type { Standard } from './tube-strength.ts';
import { type Governing, type Holding, willItHold } from './will-it-hold.ts';

/** Walls a yard keeps, mm: metric tube, and 16, 14 and 11 gauge with 3/16 and 1/4 in [practice]. */
export const YARD_WALLS_MM: Readonly<Record<Standard, readonly number[]>> = {
  EN: [1.5, 2, 2.5, 3, 4, 5, 6],
  AISC: [0.065, 0.083, 0.12, 0.1875, 0.25].map(inch => inch * 25.4),
};

/** One change by itself, and how the frame stands with it. */
export type Fix = Readonly<{
  change: Change;
  /** Greatest use of anything after the change, and what it then is. */
  utilisation: number;
  governing: Governing;
  holds: boolean;
  /** The frame with the change, to go on from. */
  input: SideFrameInput;
}>;

/** How often a change is made greater before it is given up: walls, or uprights added. */
const MOST_STEPS = 4;

/**
 * What single change mends a side frame: the frame is reckoned again with each. A kind of change that comes in steps (next wall,
 * one more upright) is taken as far as it must go to hold, four steps at most. Those that mend it come first, then the least used.
 * Changes that the frame has no room for are left out; an empty list when it holds as it is.
 * Refuses what `willItHold` refuses of the frame as it is.
 * @param holding what `willItHold` said of it, when that is known already
 * @param walls_mm walls that can be had; a yard's when left out
 */
export const fixesFor = async (
  input: SideFrameInput,
  holding?: Holding,
  walls_mm: readonly number[] = YARD_WALLS_MM[input.standard],
): Promise<Outcome<readonly Fix[]>> => {
  const first = holding === undefined ? await willItHold(input) : good(holding);
  if (!first.ok) return first;
  if (first.value.holds) return good([]);
  const fixes: Fix[] = [];
  for (const change of changesFor(input, first.value.governing, walls_mm)) {
    const fix = await carriedOn(change, walls_mm);
    if (fix !== null) fixes.push(fix);
  }
  return good(fixes.sort((a, b) => Number(b.holds) - Number(a.holds) || a.utilisation - b.utilisation));
};

/** A change, made greater while it does not yet hold and there is more of it to be had. */
const carriedOn = async (start: Changed, walls_mm: readonly number[]): Promise<Fix | null> => {
  let best: Fix | null = null;
  let next: Changed | undefined = start;
  for (let step = 0; step < MOST_STEPS && next !== undefined; step++) {
    const tried: Outcome<Holding> = await willItHold(next.input);
    if (!tried.ok) break;
    const { governing, holds } = tried.value;
    const fix: Fix = {
      change: next.change,
      utilisation: governing.utilisation,
      governing,
      holds,
      input: next.input,
    };
    if (best === null || fix.utilisation < best.utilisation) best = fix;
    if (holds) break;
    next = next.further?.(governing, walls_mm);
  }
  return best;
};

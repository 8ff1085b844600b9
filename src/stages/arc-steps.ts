import type { StepKey } from '../build/fold.ts';
import type { Stage } from './sheet.ts';

/** What every arc waits for: the weather read, and the step that stands while something of place, steel or weather bars an arc. */
export const WEATHER = 'prep/weather';
export const ARC_BAR = 'prep/dry-steel';

/** Steps in which an arc is struck, by their names within the stage: tacks, beads, test beads, and what is ground out and welded again. */
export const ARC_STEPS: Readonly<Partial<Record<Stage, readonly string[]>>> = {
  tack: [
    'close-third',
    'tack-rest',
    'third-open',
    'third-close',
    'twist-tack-again',
    're-cut',
    'add-slit-close',
    'again-close',
    'bow-retack',
  ],
  weld: [
    'test-piece',
    'coupons',
    'worked-slits',
    'worked-joints',
    'sides-first',
    'sides-rest',
    'tops-odd',
    'tops-even',
    'half-open-gaps',
    'half-check-tacks',
    're-cut',
    're-cut-weld',
    'add-slit-close',
    'add-slit-weld',
    'again-weld',
  ],
  brace: ['join-entry', 'fit-uprights', 'weld-joints', 'weld-uprights', 'weld-diagonals'],
  assemble: ['crossmembers', 'weld-joints', 'stand-up', 'feet', 'lugs', 'bearers', 'entry-plate'],
  finish: ['mend'],
};

const NAMES = new Set(
  Object.entries(ARC_STEPS).flatMap(([stage, names]) => names.map(name => `${stage}/${name}`)),
);

/** Kept by key: each key press asks it of every step. */
const known = new Map<StepKey, boolean>();

/** Whether an arc is struck in a step, or in one of its items, by its key. */
export const strikesArc = (key: StepKey): boolean => {
  const before = known.get(key);
  if (before !== undefined) return before;
  const strikes = NAMES.has(key.split(/[@#:]/)[0] ?? '');
  known.set(key, strikes);
  return strikes;
};

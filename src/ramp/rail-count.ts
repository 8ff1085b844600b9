import { boardSpan } from './deck.ts';
import { type RailName, railNames } from './design.ts';
import type { Design } from './settle.ts';

/** Curved rails the deck asks for: two under a sheet, more where boards would span too far or the design asks for more. */
export const railCount = (d: Design): number => {
  if (d.deck.kind === 'sheet') return d.rails;
  const span = boardSpan(d.deck.thickness_mm, d.deck.board_mm);
  return Math.max(d.rails, Math.ceil((d.width - d.tube.width_mm) / span - 1e-9) + 1);
};

export const railsOf = (d: Design): readonly RailName[] => railNames(railCount(d));

/** Clear width between neighbouring rails, mm. */
export const clearWidth = (d: Design): number => {
  const n = railCount(d);
  return (d.width - n * d.tube.width_mm) / (n - 1);
};

import { crossFlats } from '../cross-members.ts';
import { BOARD_GAP } from '../deck.ts';
import { deckLength } from '../mass.ts';
import type { Ramp } from '../ramp.ts';

/** Screws along a sheet's edges and in its field, mm apart: 150 and 300 (6 and 12 in) [memory: APA; practice]. */
const EDGE_APART = 150;
const FIELD_APART = 300;
/** Bought over [practice]. */
const OVER = 1.05;

/**
 * Deck screws to buy before the deck is measured: two to a board at every rail; along a sheet's two edges on the rails, and on
 * each crossmember between, the end ones as edges. Only the top layer of a sheet deck takes the long ones.
 */
export const deckScrews = (ramp: Ramp): number => {
  const { design } = ramp;
  const along = deckLength(design);
  if (design.deck.kind === 'boards') {
    const boards = Math.ceil(along / (design.deck.board_mm + BOARD_GAP));
    return Math.ceil(boards * ramp.rails.length * 2 * OVER);
  }
  const first = ramp.plans.get(ramp.rails[0] ?? '');
  const between = first === undefined ? 0 : crossFlats(design, first).length;
  const row = (long: number, apart: number): number => Math.ceil(long / apart) + 1;
  const edges = 2 * row(along, EDGE_APART) + 2 * row(design.width, EDGE_APART);
  return Math.ceil((edges + between * row(design.width, FIELD_APART)) * OVER);
};

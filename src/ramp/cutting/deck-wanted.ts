import { asShown } from '../../quantity/as-shown.ts';
import { BOARD_GAP } from '../deck.ts';
import { deckLength } from '../mass.ts';
import type { Ramp } from '../ramp.ts';
import { type Needed, type Sawn, squarePiece, type Wanted } from './needed.ts';
import { boardStock, type StockSection, sheetStock } from './stock-section.ts';

/** A sheet of ply as a yard sells it, mm: 2440 × 1220, in the US 96 × 48 in (trade sizes). */
export const SHEET = {
  metric: { long: 2440, wide: 1220 },
  us: { long: 2438.4, wide: 1219.2 },
} as const;

/** Least distance between the joints of two layers, mm: one crossmember's spacing (common practice). */
const STAGGER = 200;
/** Boards bought over, for splits and knots: 10 % [practice]. */
const BOARDS_OVER = 1.1;

/** Strips of a length laid end to end, the first of its own length, the last whatever is left. */
const strips = (deck_mm: number, sheet_mm: number, first_mm: number): number[] => {
  const list: number[] = [];
  for (let left = deck_mm, next = first_mm; left > 1; next = sheet_mm) {
    const long = Math.min(next, left);
    list.push(long);
    left -= long;
  }
  return list;
};

/** Lengths along the curve of one layer's strips. Every second layer begins with a short one, so that joints do not meet. */
export const layerStrips = (deck_mm: number, sheet_mm: number, layer: number): readonly number[] => {
  const plain = strips(deck_mm, sheet_mm, sheet_mm);
  if (plain.length < 2 || layer % 2 === 0) return plain;
  // The last strip laid first cuts no sheet more; where its end would come too near a joint below, half a sheet goes first.
  const last = plain.at(-1) ?? 0;
  const clear = last >= STAGGER && sheet_mm - last >= STAGGER;
  return strips(deck_mm, sheet_mm, clear ? last : sheet_mm / 2);
};

/** What of a deck's pieces is not cut yet; a spoiled one is wanted again. */
const stillWanted = (section: StockSection, pieces: readonly Needed[], sawn: readonly Sawn[]): Wanted => {
  const done = new Set(sawn.filter(s => !s.spoiled).map(s => s.need));
  return {
    section,
    pieces: pieces.filter(p => !done.has(p.need)),
    needs: new Set(pieces.map(p => p.need)),
  };
};

const sheets = (ramp: Ramp, sawn: readonly Sawn[]): readonly Wanted[] => {
  const { deck, width, system } = ramp.design;
  if (deck.kind !== 'sheet') return [];
  const sheet = SHEET[system];
  const columns = Math.max(1, Math.ceil(width / sheet.wide - 1e-9));
  const pieces: Needed[] = [];
  for (let layer = 0; layer < deck.layers; layer++) {
    for (let column = 0; column < columns; column++) {
      layerStrips(deckLength(ramp.design), sheet.long, layer).forEach((long, i) => {
        const name = columns > 1 ? `${layer + 1}.${column + 1}.${i + 1}` : `${layer + 1}.${i + 1}`;
        pieces.push(squarePiece(`deck strip@:${name}`, 'deck strip', asShown(long, 'length', system)));
      });
    }
  }
  return [stillWanted(sheetStock(sheet.wide, deck.layer_mm), pieces, sawn)];
};

/**
 * What the deck is still to be cut from: boards as long as the ramp is wide with a tenth over, or strips of sheet for each layer.
 * @param sawn pieces that are cut, spoiled ones too
 */
export const deckWanted = (ramp: Ramp, sawn: readonly Sawn[] = []): readonly Wanted[] => {
  const { deck, width, system } = ramp.design;
  if (deck.kind === 'sheet') return sheets(ramp, sawn);
  const count = Math.ceil((deckLength(ramp.design) / (deck.board_mm + BOARD_GAP)) * BOARDS_OVER - 1e-9);
  const pieces = Array.from({ length: count }, (_, i) =>
    squarePiece(`board@:${i + 1}`, 'board', asShown(width, 'length', system)),
  );
  return [stillWanted(boardStock(deck.board_mm, deck.thickness_mm), pieces, sawn)];
};

import type { Piece } from '../../build/fold.ts';
import { deckWanted } from '../../ramp/cutting/deck-wanted.ts';
import type { Needed } from '../../ramp/cutting/needed.ts';
import { pieceName } from '../piece-name.ts';
import { NO_TURN, offer, TAPE } from '../piece-remedies.ts';
import type { Fills, Finding } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';

/** What a board's end or a strip's joint may be off before the eye sees it along the edge, mm (a bench rule of ours; practice). */
const LIMIT = 3;

const length = (v: number) => ({ v, as: 'length' }) as const;

const findingOf = (piece: Piece, asked: Needed, count: number): Finding | null => {
  const off = piece.length_mm - asked.long_mm;
  if (Math.abs(off) <= LIMIT + NO_TURN) return null;
  const fills: Fills = {
    piece: pieceName(asked.need),
    cut: length(piece.length_mm),
    needed: length(asked.long_mm),
    asked: length(piece.asked_mm),
    off: length(Math.abs(off)),
  };
  const left = (v: number) => ({ v, as: 'length', within: v <= LIMIT }) as const;
  const plan = { piece: piece.id, need: asked.need, off_mm: off };
  return {
    key: `piece@${asked.need}#${count}`,
    stage: 'finish',
    severity: 'fix',
    words: off > 0 ? 'piece-long' : 'piece-short',
    fills,
    tall: length(Math.abs(off)),
    worst_mm: Math.abs(off),
    limit: length(LIMIT),
    offers: sortOffers([
      ...(off > 0 ? [offer('piece-trim', 4, { ...plan, to_mm: asked.long_mm }, fills, left(TAPE))] : []),
      offer('piece-new', 9, { need: asked.need, spoils: piece.id, to_mm: asked.long_mm }, fills, left(TAPE)),
      offer('leave-piece', 0, plan, fills, left(Math.abs(off))),
    ]),
  };
};

/** Boards and strips of the deck that were logged too short or too long to lie where they are meant. */
export const deckPieceFindings = (s: Situation): readonly Finding[] => {
  const spoiled = new Set(s.build.chosen.map(c => c.plan.spoils));
  const cut = s.build.pieces.filter(p => p.fate !== 'spoiled' && !spoiled.has(p.id));
  if (cut.every(p => !/^(board|deck strip)@/.test(p.serves))) return [];
  return deckWanted(s.ramp).flatMap(({ pieces }) =>
    pieces.flatMap((asked): Finding[] => {
      const piece = cut.filter(p => p.serves === asked.need).at(-1);
      if (piece === undefined) return [];
      const count = s.build.pieces.filter(p => p.need === asked.need).length;
      const finding = findingOf(piece, asked, count);
      return finding === null ? [] : [finding];
    }),
  );
};

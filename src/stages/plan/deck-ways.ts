import type { DesignAnswers } from '../../ramp/design.ts';
import { saidSpeed } from '../riding.ts';
import type { Fills } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { slower, stepsDown, type Try, type Way } from './ride-try.ts';

const length = (v: number) => ({ v, as: 'length' }) as const;

/** Decks that may carry the wheel: thicker or more sheet, boards, more rails, or a slower ride. */
export const deckWays = (s: Situation): readonly Way[] => {
  const { deck } = s.ramp.design;
  const us = s.build.system === 'us';
  const as = (value: DesignAnswers['deck'], fills: Fills): Try => ({
    change: { field: 'deck', value },
    fills,
  });
  const layers = us ? [9.525, 12.7, 15.875] : [9, 12, 15, 18];
  const boards = us ? [38.1, 63.5, 88.9] : [28, 38, 45, 50, 63, 75];
  const board_mm = deck.kind === 'boards' ? deck.board_mm : us ? 139.7 : 145;
  const thickness = (v: number) => ({ v, as: 'thickness' }) as const;
  const sheets: Way = {
    remedy: 'deck-thicker-sheet',
    tries: layers
      .filter(layer => deck.kind === 'boards' || layer > deck.layer_mm)
      .map(layer_mm => as({ kind: 'sheet', layer_mm, layers: 2 }, { layers: 2, layer: thickness(layer_mm) })),
  };
  const thickerBoards: Way = {
    remedy: 'deck-boards',
    tries: boards
      .filter(thick => deck.kind === 'sheet' || thick > deck.thickness_mm)
      .map(thickness_mm =>
        as(
          { kind: 'boards', thickness_mm, board_mm },
          { thick: thickness(thickness_mm), wide: length(board_mm) },
        ),
      ),
  };
  // What it is made of stays, if it can.
  return [
    ...(deck.kind === 'boards' ? [thickerBoards, sheets] : [sheets]),
    ...(deck.kind === 'sheet'
      ? [
          {
            remedy: 'deck-more-layers',
            tries: [deck.layers + 1, deck.layers + 2].map(count =>
              as({ ...deck, layers: count }, { layers: count, layer: thickness(deck.layer_mm) }),
            ),
          },
        ]
      : []),
    ...(deck.kind === 'boards' ? [] : [thickerBoards]),
    ...(deck.kind === 'boards'
      ? [
          {
            remedy: 'deck-more-rails',
            minutes: 240,
            tries: [1, 2].map((more): Try => {
              const count = s.ramp.rails.length + more;
              return { change: { field: 'rails', value: count }, fills: { count } };
            }),
          },
        ]
      : []),
    ...((saidSpeed(s) ?? 0) > 0 ? slower(s, stepsDown(s)) : []),
  ];
};

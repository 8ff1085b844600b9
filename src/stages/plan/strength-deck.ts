import { entryPlate as plateOf } from '../../ramp/deck.ts';
import type { Ramp } from '../../ramp/ramp.ts';
import { boardCheck, deckWheel } from '../../reckon/strength/deck-board.ts';
import { plyGrade, sheetCheck } from '../../reckon/strength/deck-sheet.ts';
import { entryPlate } from '../../reckon/strength/entry-plate.ts';
import { EN_BOARDS, enBoard, NDS_BOARDS, ndsBoard } from '../../reckon/strength/timber.ts';
import { loadsOf } from '../riding.ts';
import type { Situation } from '../situation.ts';
import { gradeOf } from './strength-frame.ts';

/** A wheel in the middle of an inner span of a sheet over many supports, against an end span: 0.175 PL and 0.2 PL (three-moment equation of three equal spans; derived). */
const INNER_SPAN = 0.175 / 0.2;

/** How the deck stands a wheel: the span that is used most, between the middles of what bears it, and the largest that would do. mm. */
export type DeckUse = Readonly<{ utilisation: number; span_mm: number; largest_mm: number }>;

/** Distances between what bears a sheet, along the rail, mm. */
export const sheetSpans = (ramp: Ramp): readonly number[] => {
  const at = ramp.members
    .filter(m => m.kind === 'crossmember')
    .map(m => m.along_mm ?? 0)
    .sort((a, b) => a - b);
  const apart = [...new Set(at)];
  return apart.slice(1).map((x, k) => x - (apart[k] ?? 0));
};

const sheetUse = (s: Situation, wheel_N: number): DeckUse | null => {
  const { deck } = s.ramp.design;
  if (deck.kind !== 'sheet') return null;
  const spans = sheetSpans(s.ramp);
  const uses = spans.flatMap((spacing_mm, k): DeckUse[] => {
    const inner = k > 0 && k < spans.length - 1;
    const checked = sheetCheck({
      grade: plyGrade('birch', deck.layer_mm),
      layer_mm: deck.layer_mm,
      layers: deck.layers,
      grainAlong: true,
      spacing_mm,
      wheel_N: wheel_N * (inner ? INNER_SPAN : 1),
    });
    return checked.ok
      ? [
          {
            utilisation: checked.value.utilisation,
            span_mm: spacing_mm,
            largest_mm: checked.value.largest_mm,
          },
        ]
      : [];
  });
  return uses.length === 0 ? null : uses.reduce((a, b) => (b.utilisation > a.utilisation ? b : a));
};

const boardUse = (s: Situation, wheel_N: number): DeckUse | null => {
  const { deck, standard, width, tube } = s.ramp.design;
  if (deck.kind !== 'boards') return null;
  const span_mm = (width - tube.width_mm) / Math.max(1, s.ramp.rails.length - 1);
  const checked = boardCheck({
    standard,
    strength:
      standard === 'EN'
        ? enBoard(EN_BOARDS.C24, deck.thickness_mm)
        : ndsBoard(NDS_BOARDS['Southern Pine No.2'], deck.board_mm, false),
    thickness_mm: deck.thickness_mm,
    board_mm: deck.board_mm,
    span_mm,
    wheel_N: deckWheel(standard, wheel_N),
  });
  if (!checked.ok) return null;
  const { utilisation, sag_utilisation, largest_mm } = checked.value;
  return { utilisation: Math.max(utilisation, sag_utilisation), span_mm, largest_mm };
};

/** How the deck stands the wheel of this ride. Null where nothing is known of it. */
export const deckUse = (s: Situation): DeckUse | null => {
  const loads = loadsOf(s);
  if (loads === null) return null;
  return sheetUse(s, loads.wheel_N) ?? boardUse(s, loads.wheel_N);
};

/** How far apart the bearers of the entry plate may stand under this ride, mm, and whether those drawn do. */
export const plateUse = (
  s: Situation,
): Readonly<{ largest_mm: number; holds: boolean; thick_mm: number }> | null => {
  const loads = loadsOf(s);
  if (loads === null || s.ramp.entry.bearers.length === 0) return null;
  const { thick_mm, spacing_mm } = plateOf(s.ramp.design.system);
  const checked = entryPlate(thick_mm, spacing_mm, loads.wheel_N, gradeOf(s.ramp.design.system).yield_MPa);
  return checked.ok ? { largest_mm: checked.value.largest_mm, holds: checked.value.holds, thick_mm } : null;
};

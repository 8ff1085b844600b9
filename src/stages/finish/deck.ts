import { readingKey } from '../../build/fold.ts';
import { BOARD_GAP } from '../../ramp/deck.ts';
import { CLEAR_OF_SLIT } from '../../ramp/members.ts';
import { TURN } from '../order.ts';
import type { Ask, Figure, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { paintSoftGate } from './coat-clock.ts';
import { deckTopLength, layBoards, laySheets, screwSpots } from './deck-layout.ts';
import { MATTERS } from './limits.ts';
import { weldGates } from './weld-gates.ts';

/** Sheets a yard has, mm (trade sizes): what is expected when one is measured. */
const SHEET = { width: [1200, 1260], long: [2400, 2510] } as const;
/** Screws in a sheet: apart along its edges, apart inside, mm (common practice); this much is bought over. */
const EDGE_APART = 150;
const FIELD_APART = 300;
const SPARE = 1.05;
/** Hole for a self-drilling screw in a thin wall, mm (common practice); below this wall screws strip and bolts go through. */
const PILOT = 5;
const STRIPS_BELOW = 2.25;

const read = (s: Situation, ask: string): number | null =>
  s.build.readings.get(readingKey('finish/trial-deck', ask))?.value ?? null;

/** Width the deck is cut to, mm: over the rails as read, the wider end, else as drawn. */
const deckWidth = (s: Situation): number => {
  const ends = ['entry', 'lip'].map(ask => s.build.readings.get(readingKey('assemble/width', ask))?.value);
  const known = ends.filter(v => v !== undefined);
  return known.length === 0 ? s.ramp.design.width : Math.max(...known);
};

type Layout = Readonly<{
  items: readonly Item[];
  count: number;
  gap_mm: number;
  last_mm: number;
  screws: number;
}>;

const boardLayout = (s: Situation, step: string, board_mm: number): Layout => {
  const boards = layBoards(deckTopLength(s), board_mm, BOARD_GAP);
  const spots = boards.map(board => screwSpots(s, board));
  return {
    items: boards.map((board, k) => ({
      key: `${step}#${board.number}`,
      name: String(board.number),
      value: { v: board.from_mm, as: 'length' },
      second: { v: board.width_mm, as: 'length' },
      note: boardNote(spots[k] ?? []),
    })),
    count: boards.length,
    gap_mm: boards[1] === undefined ? BOARD_GAP : boards[1].from_mm - (boards[0]?.width_mm ?? 0),
    last_mm: boards.at(-1)?.width_mm ?? 0,
    screws: Math.ceil(spots.reduce((n, at) => n + at.length, 0) * s.ramp.rails.length * SPARE),
  };
};

const boardNote = (spots: readonly number[]): NonNullable<Item['note']> => {
  const [first, second] = spots;
  if (first === undefined) return { words: 'says.finish-no-screw' };
  const fills = { first: { v: first, as: 'length' }, second: { v: second ?? 0, as: 'length' } } as const;
  return { words: second === undefined ? 'says.finish-one-screw' : 'says.finish-two-screws', fills };
};

const sheetLayout = (s: Situation, step: string, sheet: { width_mm: number; long_mm: number }): Layout => {
  const pieces = laySheets(s, sheet, deckWidth(s), BOARD_GAP);
  const rows = s.ramp.members.filter(m => m.kind === 'crossmember').length;
  const wide = deckWidth(s);
  const row = (apart: number): number => Math.floor(wide / apart) + 1;
  const single = pieces.filter(p => p.layer === 1).length === 1;
  return {
    items: pieces.map(p => {
      const name = single ? String(p.layer) : `${p.layer}-${p.across}-${p.along}`;
      return {
        key: `${step}#${name}`,
        name,
        value: { v: p.length_mm, as: 'length' },
        second: { v: p.width_mm, as: 'length' },
      };
    }),
    count: pieces.length,
    gap_mm: BOARD_GAP,
    last_mm: pieces.at(-1)?.width_mm ?? 0,
    screws: Math.ceil((2 * row(EDGE_APART) + Math.max(0, rows - 2) * row(FIELD_APART)) * SPARE),
  };
};

/** The deck as it will lie, once what it is made of has been measured; null before. */
const layoutFor = (s: Situation, step: string): Layout | null => {
  if (s.ramp.design.deck.kind === 'boards') {
    const board = read(s, 'board');
    return board === null ? null : boardLayout(s, step, board);
  }
  const width_mm = read(s, 'sheet');
  const long_mm = read(s, 'long');
  return width_mm === null || long_mm === null ? null : sheetLayout(s, step, { width_mm, long_mm });
};

const asksFor = (s: Situation): readonly Ask[] => {
  const { deck } = s.ramp.design;
  return deck.kind === 'boards'
    ? [
        {
          ask: 'board',
          as: 'length',
          expected: [deck.board_mm - 4, deck.board_mm + 4],
          possible: [deck.board_mm / 2, deck.board_mm * 2],
        },
      ]
    : [
        { ask: 'sheet', as: 'length', expected: SHEET.width, possible: [300, 2600] },
        { ask: 'long', as: 'length', expected: SHEET.long, possible: [600, 5200] },
      ];
};

/** Measuring what the deck is made of, drilling every hole while the frame is bare, and laying it for good after the paint. */
export const deckSteps = (s: Situation): readonly StepDraft[] => {
  const boards = s.ramp.design.deck.kind === 'boards';
  const drill = 'finish/drill-deck';
  const layout = layoutFor(s, drill);
  const wall = s.ramp.design.tube.wall_mm;
  const fills = {
    gap: { v: BOARD_GAP, as: 'length' },
    clear: { v: CLEAR_OF_SLIT, as: 'length' },
    pilot: { v: PILOT, as: 'length' },
    edges: { v: EDGE_APART, as: 'length' },
    field: { v: FIELD_APART, as: 'length' },
    wide: { v: deckWidth(s), as: 'length' },
  } as const;
  const lie = { face: 'deck top' } as const;
  return [
    {
      key: 'finish/trial-deck',
      stage: 'finish',
      words: boards ? 'trial-boards' : 'trial-sheets',
      fills,
      turn: TURN.finish + 40,
      needs: ['finish/proof', 'finish/packers'],
      uses: ['deck-length'],
      tall: ['deck-length'],
      line: lie,
      asks: asksFor(s),
      gates: weldGates(s),
      minutes: [10, 20],
    },
    ...(layout === null
      ? []
      : [
          {
            key: drill,
            stage: 'finish',
            words: boards ? 'drill-boards' : 'drill-sheets',
            fills: { ...fills, count: layout.count },
            turn: TURN.finish + 50,
            needs: ['finish/trial-deck'],
            uses: ['deck-pieces', 'deck-gap', 'deck-last', 'deck-screws'],
            line: lie,
            items: layout.items,
            gates: weldGates(s),
            minutes: [5 * layout.count, 10 * layout.count],
          } satisfies StepDraft,
        ]),
    {
      key: 'finish/deck',
      stage: 'finish',
      words: wall < STRIPS_BELOW ? 'deck-bolts' : 'deck',
      fills,
      turn: TURN.finish + 130,
      needs: ['finish/paint', 'finish/drill-deck', 'finish/edges'],
      uses: ['deck-gap', 'deck-screws'],
      line: lie,
      gates: [...weldGates(s), paintSoftGate(s)],
      minutes: [90, 180],
    },
  ];
};

export const deckFigures = (s: Situation): readonly Figure[] => {
  const layout = layoutFor(s, 'finish/drill-deck');
  const needs = 'finish/trial-deck';
  const value = (v: number | undefined): Figure['value'] =>
    v === undefined ? { is: 'unknown', needs } : { is: 'exact', v };
  return [
    {
      id: 'deck-length',
      kind: 'dimension',
      as: 'length',
      line: { face: 'deck top' },
      value: { is: 'exact', v: deckTopLength(s) },
      matters: MATTERS.length,
    },
    {
      id: 'deck-width',
      kind: 'dimension',
      as: 'length',
      line: { face: 'deck top' },
      value: { is: 'exact', v: deckWidth(s) },
      matters: MATTERS.length,
    },
    { id: 'deck-pieces', kind: 'size', as: 'count', value: value(layout?.count), matters: MATTERS.count },
    { id: 'deck-gap', kind: 'size', as: 'length', value: value(layout?.gap_mm), matters: MATTERS.length },
    { id: 'deck-last', kind: 'size', as: 'length', value: value(layout?.last_mm), matters: MATTERS.length },
    { id: 'deck-screws', kind: 'size', as: 'count', value: value(layout?.screws), matters: 5 },
  ];
};

import { BOARD_GAP } from '../../ramp/deck.ts';
import { TURN } from '../order.ts';
import type { Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { FINGER, HEAD, sideToClose } from './openings.ts';
import { weldGates } from './weld-gates.ts';

/** Outside edges are rounded to this, mm (common practice; the usual rule for roller sports elements, EN 14974, from memory). */
const ROUND = 3;
/** The entry plate's lower edge stands no prouder, a step in the deck no higher, a gap no wider, mm (common practice; joints, EN 14974, from memory). */
const ENTRY_PROUD = 3;
const DECK_STEP = 2;
const WIDEST_GAP = 5;
/** Deck past the rails at the lip, and heads of screws below the surface, mm (common practice). */
const LIP_PAST = 20;
const HEAD_BELOW = 1;

const length = (v: number) => ({ v, as: 'length' }) as const;

/** Edges that a hand or a shin meets, and openings that hold a finger or a head, while the steel is bare. */
const edgeItems = (s: Situation): readonly Item[] => {
  const close = sideToClose(s);
  const item = (name: string, words: string, more: Partial<Item> = {}): Item => ({
    key: `finish/edges#${words}`,
    name,
    note: { words: `says.finish-edge-${words}` },
    ...more,
  });
  return [
    item('outside edges', 'round', { value: length(ROUND) }),
    item('entry edge', 'entry', { value: length(ENTRY_PROUD) }),
    item('rail ends at the lip', 'lip', { value: length(0) }),
    item('sides', 'sides', { value: length(close.from_mm), second: length(close.to_mm) }),
    item('back', 'back'),
  ];
};

/** What wheels and hands meet once the deck lies. */
const deckItems = (): readonly Item[] => {
  const item = (name: string, words: string, v?: number): Item => ({
    key: `finish/deck-check#${words}`,
    name,
    note: { words: `says.finish-deck-${words}` },
    ...(v === undefined ? {} : { value: length(v) }),
  });
  return [
    item('gaps', 'gaps', WIDEST_GAP),
    item('steps', 'steps', DECK_STEP),
    item('lip', 'lip', LIP_PAST),
    item('heads', 'heads', HEAD_BELOW),
    item('panels', 'panels'),
    item('grip', 'grip'),
  ];
};

export const edgeSteps = (s: Situation): readonly StepDraft[] => [
  {
    key: 'finish/edges',
    stage: 'finish',
    words: 'edges',
    fills: {
      'finger-from': length(FINGER.from_mm),
      'finger-to': length(FINGER.to_mm),
      'head-from': length(HEAD.from_mm),
      'head-to': length(HEAD.to_mm),
    },
    turn: TURN.finish + 60,
    needs: ['finish/trial-deck'],
    uses: [],
    items: edgeItems(s),
    minutes: [40, 90],
  },
  {
    key: 'finish/deck-check',
    stage: 'finish',
    words: 'deck-check',
    fills: { gap: length(BOARD_GAP) },
    turn: TURN.finish + 132,
    needs: ['finish/deck'],
    uses: [],
    items: deckItems(),
    gates: weldGates(s),
    minutes: [10, 20],
  },
];

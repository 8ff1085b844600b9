import { TURN } from '../order.ts';
import type { Ask, Fills, Gate, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { readAt } from './reading.ts';

/** Fire-watch radius, m: 35 ft (29 CFR 1910.252(a)(2) as a state text mirrors it [found]). */
export const CLEAR_m = 35 * 0.3048;
/** Steel lies this far up from the floor, with a plate so thick under each tack, mm (common practice). */
const STEEL_UP = 50;
const PLATE = 3;
/** No arc this near to bare wood, cement board of this thickness over it, mm (common practice). */
const BARE_WOOD = 300;
const BOARD = 12;
/** Others stay this far off an arc, behind a screen, m: 15 ft (common practice). */
const BYSTANDERS_m = 15 * 0.3048;

/** What is looked at before sparks fly, in the order it is walked past. */
const PLACE_ITEMS = [
  ['dust', 'dust swept'],
  ['rags', 'oily rags outside'],
  ['extractor', 'extractor off, covered'],
  ['chargers', 'chargers, batteries out'],
  ['fuel', 'car, mower, fuel out'],
  ['flames', 'pilot flames out'],
  ['gaps', 'gaps shut, far side seen'],
  ['floor', 'bare concrete or earth'],
  ['put-out', 'extinguisher, hose tried'],
  ['alarm', 'heat alarm hung'],
  ['air', 'fan draws smoke away'],
  ['others', 'no child, no animal'],
] as const;

/** Paced out, not taped: whole metres or feet. */
const PLACE_FILLS: Fills = {
  clear: { v: CLEAR_m, as: 'distance', step: 1 },
  up: { v: STEEL_UP, as: 'length' },
  plate: { v: PLATE, as: 'length' },
  'bare-wood': { v: BARE_WOOD, as: 'length' },
  board: { v: BOARD, as: 'length' },
  apart: { v: BYSTANDERS_m, as: 'distance', step: 1 },
};

export const PLACE = 'prep/place';
/** The thing that is looked at last: with it the place was walked. */
export const LAST_LOOK = 'others';

/** Things of the place that can be wrong past mending by a broom: Enter at one says which it is, 0 that it is put right. */
const FAILS: Readonly<Record<string, readonly (readonly [gate: string, never: boolean])[]>> = {
  extractor: [['extractor-on', true]],
  chargers: [['chargers-near', false]],
  fuel: [['fuel-near', true]],
  flames: [['flame-near', true]],
  floor: [
    ['floor-wood', false],
    ['floor-bitumen', true],
    ['floor-paint', false],
  ],
  'put-out': [['nothing-to-put-out', true]],
  others: [['child-near', true]],
};

/** What of the place bars sparks, as it was told. */
export const placeGates = (s: Situation): readonly Gate[] =>
  Object.entries(FAILS).flatMap(([ask, ways]): readonly Gate[] => {
    const read = readAt(s, PLACE, ask);
    const way = ways[Math.round(read?.value ?? 0) - 1];
    if (read === undefined || way === undefined) return [];
    const [words, never] = way;
    return [
      {
        id: `${words}@${read.entry}`,
        words,
        shut: true,
        fills: PLACE_FILLS,
        measure: PLACE,
        ...(never ? { never: true as const } : {}),
      },
    ];
  });

/** The place as it is walked past before sparks fly: one key a thing. */
export const placeStep = (s: Situation): StepDraft => ({
  key: PLACE,
  stage: 'prep',
  words: 'place',
  fills: PLACE_FILLS,
  turn: TURN.place,
  needs: [],
  uses: [],
  asks: Object.entries(FAILS).map(
    ([ask, ways]): Ask => ({ ask, as: 'count', possible: [0, ways.length], optional: true, unlit: true }),
  ),
  items: PLACE_ITEMS.map(
    ([id, name]): Item => ({
      key: `${PLACE}#${id}`,
      name,
      note: { words: `says.prep-place-${id}`, fills: PLACE_FILLS },
      ...(FAILS[id] === undefined ? {} : { ask: id }),
    }),
  ),
  gates: placeGates(s),
  cautions: ['prep-solvent'],
  minutes: [20, 60],
});

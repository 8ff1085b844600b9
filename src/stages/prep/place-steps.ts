import { WINDIEST_m_s } from '../../reckon/welding/weld-weather.ts';
import { TURN } from '../order.ts';
import type { Fills, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { LONGEST_LEAD_m, leadOf } from './lead.ts';
import { HAND_WARM_C, WEATHER, weatherGates, weatherOf } from './weather.ts';

/** Fire-watch radius, m: 35 ft (29 CFR 1910.252(a)(2) as a state text mirrors it [found]). */
const CLEAR_m = 35 * 0.3048;
/** Session limit of hot work for one person, and least time from the last arc to leaving, s (common practice; NFPA 51B-2019: an hour [found]). */
const SESSION_s = 2.5 * 3600;
const WATCH_s = 3600;
/** Steel lies this far up from the floor, with a plate so thick under each tack, mm (common practice). */
const STEEL_UP = 50;
const PLATE = 3;
/** Skin burns in an arc's light in this time, s (common practice). */
const SUNBURN_s = 20 * 60;

/** What is looked at before sparks fly, in the order it is walked past. */
const PLACE_ITEMS = [
  ['dust', 'dust swept'],
  ['rags', 'oily rags outside'],
  ['extractor', 'extractor off, covered'],
  ['chargers', 'chargers, batteries out'],
  ['fuel', 'car, mower, fuel out'],
  ['flames', 'pilot flames out'],
  ['gaps', 'gaps shut, far side seen'],
  ['floor', 'no bitumen, no epoxy'],
  ['put-out', 'extinguisher, hose tried'],
  ['alarm', 'heat alarm hung'],
  ['air', 'fan draws smoke away'],
  ['others', 'screen up'],
] as const;

const PLACE_FILLS: Fills = {
  clear: { v: CLEAR_m, as: 'distance' },
  up: { v: STEEL_UP, as: 'length' },
  plate: { v: PLATE, as: 'length' },
};

const place = (): StepDraft => ({
  key: 'prep/place',
  stage: 'prep',
  words: 'place',
  fills: PLACE_FILLS,
  turn: TURN.place,
  needs: [],
  uses: [],
  items: PLACE_ITEMS.map(
    ([id, name]): Item => ({
      key: `prep/place#${id}`,
      name,
      note: { words: `says.prep-place-${id}`, fills: PLACE_FILLS },
    }),
  ),
  cautions: ['prep-solvent'],
  minutes: [20, 60],
});

const powerSteps = (s: Situation): readonly StepDraft[] => {
  const lead = leadOf(s);
  const far = lead.m !== null && lead.m > LONGEST_LEAD_m.thick;
  const fills = {
    thin: { v: LONGEST_LEAD_m.thin, as: 'distance' },
    thick: { v: LONGEST_LEAD_m.thick, as: 'distance' },
  } as const;
  const ask: StepDraft[] = lead.askHere
    ? [
        {
          key: 'prep/lead',
          stage: 'prep',
          words: 'lead',
          fills,
          turn: TURN.place + 5,
          needs: [],
          uses: [],
          asks: [
            { ask: 'lead', as: 'distance', expected: [0, 2 * LONGEST_LEAD_m.thick], possible: [0, 200] },
          ],
          minutes: [2, 5],
        },
      ]
    : [];
  return [
    ...ask,
    {
      key: 'prep/power',
      stage: 'prep',
      words: far ? 'power-far' : lead.m !== null && lead.m > LONGEST_LEAD_m.thin ? 'power-thick' : 'power',
      fills,
      turn: TURN.place + 10,
      needs: ['prep/lead'],
      uses: ['lead'],
      ...(lead.m === null ? {} : { tall: ['lead'] }),
      gates: far
        ? [
            {
              id: 'lead-long',
              shut: true,
              fills: { ...fills, lead: { v: lead.m ?? 0, as: 'distance' } },
              measure: lead.step,
            },
          ]
        : [],
      minutes: [10, 20],
    },
  ];
};

const weatherSteps = (s: Situation): readonly StepDraft[] => {
  const weather = weatherOf(s);
  const gates = weather === null ? [] : weatherGates(weather);
  const read: StepDraft = {
    key: WEATHER,
    stage: 'prep',
    words: 'weather',
    fills: { wind: { v: WINDIEST_m_s.gmaw, as: 'speed' } },
    turn: TURN.place + 30,
    needs: [],
    uses: [],
    asks: [
      { ask: 'air', as: 'temperature', expected: [-5, 35], possible: [-40, 60] },
      { ask: 'steel', as: 'temperature', expected: [-5, 35], possible: [-40, 60] },
      { ask: 'damp', as: 'percent', expected: [30, 95], possible: [1, 100] },
    ],
    minutes: [5, 10],
  };
  if (gates.length === 0) return [read];
  return [
    read,
    {
      key: 'prep/dry-steel',
      stage: 'prep',
      words: 'dry-steel',
      fills: { hand: { v: HAND_WARM_C, as: 'temperature' } },
      turn: TURN.place + 35,
      needs: [WEATHER],
      uses: ['steel-least', 'dew-point'],
      tall: ['steel-least'],
      gates,
      minutes: [30, 90],
    },
  ];
};

const body = (): StepDraft => ({
  key: 'prep/body',
  stage: 'prep',
  words: 'body',
  fills: {
    session: { v: SESSION_s, as: 'time' },
    watch: { v: WATCH_s, as: 'time' },
    sun: { v: SUNBURN_s, as: 'time' },
  },
  turn: TURN.place + 20,
  needs: [],
  uses: [],
  minutes: [5, 10],
});

/** The place, the power, the person and the weather: what every arc waits for. */
export const placeSteps = (s: Situation): readonly StepDraft[] => [
  place(),
  ...powerSteps(s),
  body(),
  ...weatherSteps(s),
];

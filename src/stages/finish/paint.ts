import { readingKey } from '../../build/fold.ts';
import type { Tube } from '../../ramp/design.ts';
import { FLAT_KINDS } from '../../ramp/mass.ts';
import { DAMPEST_pct, DEW_LIMITS, dew, PAINT_MARGIN_C } from '../../reckon/coating/dew.ts';
import { paint } from '../../reckon/coating/paint.ts';
import { tubeSection } from '../../reckon/steel/section.ts';
import { keptByInput } from '../kept-by-input.ts';
import { TURN } from '../order.ts';
import type { Figure, Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import {
  BARE_h,
  bareFor,
  bareGate,
  CLEAN,
  COAT,
  clockFigures,
  recoatFills,
  recoatGate,
  TINS,
} from './coat-clock.ts';

const WEATHER = 'finish/paint-weather';
/** Air and steel drift: weather read longer ago than this is read again, h (common practice: before each coat). */
const READ_AGAIN_h = 4;
const HOUR_ms = 3_600_000;

/** Coats by brush: solids in volume per cent and dry film of one coat in µm, from and to (common practice); a brush loses 5 to 10 %. */
const COATS = {
  primer: { solids: [40, 55], film: [50, 75], coats: 1 },
  top: { solids: [35, 55], film: [40, 60], coats: 2 },
} as const;
const LOSS_pct = [5, 10] as const;

const reading = (s: Situation, ask: string) => s.build.readings.get(readingKey(WEATHER, ask)) ?? null;

const perimeter = keptByInput((tube: Tube & { rule: 'AISC' | 'EN10219' }): number => {
  const section = tubeSection({ shape: 'rect', ...tube });
  return section.ok ? section.value.perimeter_mm : 2 * (tube.depth_mm + tube.width_mm);
});

const areas = new WeakMap<Situation, number>();

/** Outside of all the steel that is painted, m²: tube by its perimeter and mean length, flats and plates on both sides. */
export const paintArea = (s: Situation): number => {
  const before = areas.get(s);
  if (before !== undefined) return before;
  const rule = s.ramp.design.standard === 'AISC' ? 'AISC' : 'EN10219';
  const rounds = new Map<Tube, number>();
  const roundOf = (tube: Tube): number => {
    const known = rounds.get(tube) ?? perimeter({ ...tube, rule });
    rounds.set(tube, known);
    return known;
  };
  const outside = [...s.ramp.members, ...s.ramp.entry.pieces].reduce(
    (sum, m) =>
      sum +
      (FLAT_KINDS.has(m.kind)
        ? 2 * m.long_mm * m.tube.width_mm
        : (roundOf(m.tube) * (m.long_mm + m.short_mm)) / 2),
    0,
  );
  const area = outside / 1e6;
  areas.set(s, area);
  return area;
};

const litres = (s: Situation, coat: keyof typeof COATS): Figure['value'] => {
  const { solids, film, coats } = COATS[coat];
  const of = (solids_pct: number, film_um: number, loss_pct: number): number => {
    const got = paint({ area_m2: paintArea(s), solids_pct, film_um, coats, loss_pct });
    return got.ok ? got.value.litres : 0;
  };
  const middle = (pair: readonly [number, number]): number => (pair[0] + pair[1]) / 2;
  return {
    is: 'band',
    low: of(solids[1], film[0], LOSS_pct[0]),
    likely: of(middle(solids), middle(film), middle(LOSS_pct)),
    high: of(solids[0], film[1], LOSS_pct[1]),
  };
};

type Weather = Readonly<{ dew_C: number; steel_C: number; damp_pct: number; paints: boolean; old: boolean }>;

/** What the last readings say of painting; null while one is missing. */
export const paintWeather = (s: Situation): Weather | null => {
  const air = reading(s, 'air');
  const steel = reading(s, 'steel');
  const damp = reading(s, 'damp');
  if (air === null || steel === null || damp === null) return null;
  const got = dew({ air_C: air.value, humidity_pct: damp.value, steel_C: steel.value });
  if (!got.ok) return null;
  const oldest = Math.min(...[air, steel, damp].map(r => Date.parse(r.at)));
  return {
    dew_C: got.value.dew_C,
    steel_C: steel.value,
    damp_pct: damp.value,
    paints: got.value.paint === true,
    old: s.now - oldest > READ_AGAIN_h * HOUR_ms,
  };
};

const paintGate = (s: Situation): Gate => {
  const weather = paintWeather(s);
  const fills = {
    // The steel itself, not its margin: a difference of degrees is not a temperature to be converted.
    steel: { v: weather?.steel_C ?? 0, as: 'temperature' },
    dew: { v: weather?.dew_C ?? 0, as: 'temperature' },
    warm: { v: (weather?.dew_C ?? 0) + PAINT_MARGIN_C, as: 'temperature' },
    damp: { v: weather?.damp_pct ?? 0, as: 'percent' },
    most: { v: DAMPEST_pct, as: 'percent' },
    hours: { v: READ_AGAIN_h * 3600, as: 'time' },
  } as const;
  const id =
    weather === null || weather.old
      ? 'paint-weather-old'
      : weather.damp_pct > DAMPEST_pct
        ? 'paint-too-damp'
        : 'paint-steel-cold';
  return { id, shut: weather === null || weather.old || !weather.paints, fills, measure: WEATHER };
};

/** Times between coats that a tin may give, s: inner unit of the ask. */
const HOUR = 3600;
const DAY = 24 * HOUR;

/** Cleaning, both tins and the weather read, then primer and two top coats, each behind its own gates. */
export const paintSteps = (s: Situation): readonly StepDraft[] => {
  const coat = (key: string, words: string, turn: number, needs: readonly string[]) =>
    ({ key, stage: 'finish', words, turn: TURN.finish + turn, needs }) as const;
  const bare = { v: BARE_h * HOUR, as: 'time' } as const;
  return [
    {
      key: TINS,
      stage: 'finish',
      words: 'tins',
      fills: {},
      turn: TURN.finish + 75,
      needs: ['finish/drill-deck'],
      uses: ['primer', 'top-coat'],
      asks: [
        { ask: 'from', as: 'time', expected: [HOUR, DAY], possible: [0.25 * HOUR, 7 * DAY] },
        { ask: 'to', as: 'time', expected: [DAY, 30 * DAY], possible: [HOUR, 365 * DAY] },
      ],
      minutes: [3, 5],
    },
    {
      key: CLEAN,
      stage: 'finish',
      words: 'clean',
      fills: { bare },
      turn: TURN.finish + 78,
      needs: ['finish/edges', 'finish/drains', 'finish/drill-deck'],
      uses: ['paint-area'],
      asks: [{ ask: 'rust', as: 'count', expected: [0, 0], possible: [0, 500] }],
      minutes: [60, 150],
    },
    {
      key: WEATHER,
      stage: 'finish',
      words: 'paint-weather',
      fills: { most: { v: DAMPEST_pct, as: 'percent' } },
      turn: TURN.finish + 80,
      needs: [CLEAN],
      uses: [],
      asks: [
        {
          ask: 'air',
          as: 'temperature',
          expected: [10, 35],
          possible: [DEW_LIMITS.air_C.atLeast, DEW_LIMITS.air_C.atMost],
        },
        {
          ask: 'steel',
          as: 'temperature',
          expected: [10, 40],
          possible: [DEW_LIMITS.steel_C.atLeast, DEW_LIMITS.steel_C.atMost],
        },
        { ask: 'damp', as: 'percent', expected: [30, 85], possible: [1, DEW_LIMITS.humidity_pct.atMost] },
      ],
      minutes: [3, 5],
    },
    {
      ...coat(COAT.prime, 'prime', 90, [WEATHER, TINS]),
      uses: ['paint-area', 'primer'],
      ...(bareFor(s) === null || (bareFor(s) ?? 0) >= BARE_h * HOUR_ms ? {} : { tall: ['bare-left'] }),
      gates: [paintGate(s), bareGate(s)],
      minutes: [60, 120],
    },
    {
      ...coat(COAT.first, 'top', 95, [COAT.prime]),
      fills: recoatFills(s, COAT.prime),
      uses: ['top-coat'],
      gates: [recoatGate(s, COAT.prime), paintGate(s)],
      minutes: [40, 80],
    },
    {
      ...coat(COAT.last, 'paint', 100, [COAT.first]),
      fills: recoatFills(s, COAT.first),
      uses: ['top-coat'],
      gates: [recoatGate(s, COAT.first), paintGate(s)],
      minutes: [40, 80],
    },
  ];
};

export const paintFigures = (s: Situation): readonly Figure[] => [
  {
    id: 'paint-area',
    kind: 'size',
    as: 'area',
    value: { is: 'exact', v: paintArea(s) },
    matters: 0.1,
  },
  { id: 'primer', kind: 'size', as: 'volume', value: litres(s, 'primer'), matters: 0.1 },
  { id: 'top-coat', kind: 'size', as: 'volume', value: litres(s, 'top'), matters: 0.1 },
  ...clockFigures(s),
];

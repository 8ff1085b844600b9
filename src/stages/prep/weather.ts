import type { Reading } from '../../build/fold.ts';
import { dew } from '../../reckon/coating/dew.ts';
import {
  COLDEST_AIR_C,
  WARM_STEEL_TO_C,
  WINDIEST_m_s,
  weldWeather,
} from '../../reckon/welding/weld-weather.ts';
import { WEATHER } from '../arc-steps.ts';
import type { Ask, Gate } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { once } from './once.ts';
import { welderOf } from './process.ts';
import { readAt } from './reading.ts';
import { MOVING_m_s, roomOf } from './room.ts';
import { weatherIsOld } from './weather-age.ts';

/** Steel nearer to the dew point than this has a film of water, seen or not, K (ISO 8502-4 practice [found], taken over from painting). */
const ABOVE_DEW = 3;
/** Steel colder than this is warmed first, °C. The code table says 0 °C (AWS D1.1:2015 Table 3.3 [found]); 5 leaves room for a thermometer (common practice). */
const COLD_STEEL_C = 5;
/** Warm to the hand: no film stays on it, and it can be held, °C (common practice). */
export const HAND_WARM_C = 45;
/** What a rag tells of the steel, by number. */
const WET = { dry: 0, damp: 1, rain: 2 } as const;

/** Air at the weld. */
export type Wind = Readonly<{
  /** In the open, and behind the shelter where one was needed and read since; m/s. */
  open_m_s: number;
  behind_m_s: number | null;
  /** At the weld, m/s, and the reading it was told by. */
  at_m_s: number;
  on: string;
  limit_m_s: number;
}>;

export type Weather = Readonly<{
  air_C: number;
  steel_C: number;
  damp_pct: number;
  dew_C: number;
  /** The steel must be at least this warm before an arc is struck, °C. */
  least_C: number;
  /** The reading of the steel. */
  on: string;
  /** null where it was never asked: a build begun before wind and wet were. */
  wet: Reading | null;
  wind: Wind | null;
}>;

/** Strongest wind at the weld, m/s: as with gas until the welder is told. */
export const windLimit = (s: Situation): number => WINDIEST_m_s[welderOf(s)?.process ?? 'gmaw'];

const windOf = (s: Situation): Wind | null => {
  const open = readAt(s, WEATHER, 'wind');
  if (open === undefined) return null;
  const limit_m_s = windLimit(s);
  const shelter = readAt(s, WEATHER, 'shelter');
  // What stood behind a shelter in another wind says nothing of this one.
  const behind = open.value > limit_m_s && shelter !== undefined && shelter.at >= open.at ? shelter : null;
  return {
    open_m_s: open.value,
    behind_m_s: behind?.value ?? null,
    at_m_s: behind?.value ?? open.value,
    on: behind?.entry ?? open.entry,
    limit_m_s,
  };
};

/** The weather at the bench as it was last read, or null until air, steel and damp are. */
export const weatherOf = once((s): Weather | null => {
  const [air, steel, damp] = ['air', 'steel', 'damp'].map(ask => readAt(s, WEATHER, ask));
  if (air === undefined || steel === undefined || damp === undefined) return null;
  const point = dew({ air_C: air.value, humidity_pct: damp.value });
  if (!point.ok) return null;
  const { dew_C } = point.value;
  return {
    air_C: air.value,
    steel_C: steel.value,
    damp_pct: damp.value,
    dew_C,
    least_C: Math.max(dew_C + ABOVE_DEW, COLD_STEEL_C),
    on: steel.entry,
    wet: readAt(s, WEATHER, 'wet') ?? null,
    wind: windOf(s),
  };
});

/** What the weather bars, each by the reading that says so. Measuring again opens it. */
export const weatherGates = once((s): readonly Gate[] => {
  const w = weatherOf(s);
  if (w === null) return [];
  const judged = weldWeather({
    process: welderOf(s)?.process ?? 'gmaw',
    air_C: w.air_C,
    steel_C: w.steel_C,
    wind_m_s: w.wind?.at_m_s ?? 0,
    wet: (w.wet?.value ?? 0) > 0,
  });
  const stops = judged.ok ? judged.value.stops : [];
  const fills = {
    air: { v: w.air_C, as: 'temperature' },
    steel: { v: w.steel_C, as: 'temperature' },
    damp: { v: w.damp_pct, as: 'percent' },
    dew: { v: w.dew_C, as: 'temperature' },
    least: { v: w.least_C, as: 'temperature' },
    warm: { v: Math.max(WARM_STEEL_TO_C, w.least_C), as: 'temperature' },
    coldest: { v: COLDEST_AIR_C, as: 'temperature' },
    open: { v: w.wind?.open_m_s ?? 0, as: 'speed' },
    at: { v: w.wind?.at_m_s ?? 0, as: 'speed' },
    limit: { v: windLimit(s), as: 'speed' },
    move: { v: MOVING_m_s, as: 'speed' },
    'no-gas': { v: WINDIEST_m_s.smaw, as: 'speed' },
  } as const;
  const gate = (words: string, on: string, never = false): Gate => ({
    id: `${words}@${on}`,
    words,
    shut: true,
    fills,
    measure: WEATHER,
    ...(never ? { never: true as const } : {}),
  });
  const gates: Gate[] = [];
  if (stops.includes('air too cold')) gates.push(gate('air-cold', w.on, true));
  if (stops.includes('steel wet') && w.wet !== null)
    gates.push(w.wet.value >= WET.rain ? gate('rain', w.wet.entry, true) : gate('steel-wet', w.wet.entry));
  if (w.steel_C < w.dew_C + ABOVE_DEW) gates.push(gate('steel-damp', w.on));
  if (w.steel_C < COLD_STEEL_C) gates.push(gate('steel-cold', w.on));
  const wind = w.wind;
  if (wind !== null) {
    const still = wind.at_m_s < MOVING_m_s;
    if (stops.includes('too windy'))
      gates.push(gate(wind.behind_m_s === null ? 'wind-strong' : 'shelter-fails', wind.on));
    else if (still && wind.behind_m_s !== null) gates.push(gate('shelter-dead', wind.on));
    else if (still && roomOf(s)?.small === true) gates.push(gate('air-still', wind.on));
  }
  return gates;
});

/** Numbers of the weather, what bars the arc first, so that it is the one that is read again. */
export const weatherAsks = (s: Situation): readonly Ask[] => {
  const w = weatherOf(s);
  const wind = windOf(s);
  const limit = windLimit(s);
  const old = weatherIsOld(s);
  // A build of before has its weather without wind and wet: they may be read, and nothing is opened anew for them on that evening.
  const older = w !== null && !old && wind === null && w.wet === null ? { optional: true as const } : {};
  const asks: Ask[] = [
    { ask: 'wet', as: 'count', expected: [0, 0], possible: [0, 2], unlit: true, ...older },
    { ask: 'wind', as: 'speed', expected: [MOVING_m_s, limit / 2], possible: [0, 40], ...older },
    { ask: 'air', as: 'temperature', expected: [-5, 35], possible: [-40, 60] },
    { ask: 'steel', as: 'temperature', expected: [-5, 35], possible: [-40, 60] },
    { ask: 'damp', as: 'percent', expected: [30, 95], possible: [1, 100] },
  ];
  if (wind !== null && wind.open_m_s > limit)
    asks.splice(2, 0, { ask: 'shelter', as: 'speed', expected: [MOVING_m_s, limit], possible: [0, 40] });
  // All of it is to be read: in the order it is walked, which stays while one after the other is told.
  if (w === null || old) return asks;
  const bars = new Set(weatherGates(s).map(gate => ASK_OF[gate.words ?? ''] ?? ''));
  const windy = bars.has('wind') && wind !== null && wind.open_m_s > limit ? 'shelter' : 'wind';
  const first = (ask: string): boolean =>
    ask === 'wind' || ask === 'shelter' ? bars.has('wind') && ask === windy : bars.has(ask);
  return [...asks.filter(a => first(a.ask)), ...asks.filter(a => !first(a.ask))];
};

/** The number that opens a gate of the weather. */
const ASK_OF: Readonly<Record<string, string>> = {
  'air-cold': 'air',
  rain: 'wet',
  'steel-wet': 'wet',
  'steel-damp': 'steel',
  'steel-cold': 'steel',
  'wind-strong': 'wind',
  'shelter-fails': 'wind',
  'shelter-dead': 'wind',
  'air-still': 'wind',
};

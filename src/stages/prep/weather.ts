import { readingKey } from '../../build/fold.ts';
import { dew } from '../../reckon/coating/dew.ts';
import { COLDEST_AIR_C, WARM_STEEL_TO_C } from '../../reckon/welding/weld-weather.ts';
import type { Gate } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** Steel nearer to the dew point than this has a film of water, seen or not, K (ISO 8502-4 practice [found], taken over from painting). */
const ABOVE_DEW = 3;
/** Steel colder than this is warmed first, °C. The code table says 0 °C (AWS D1.1:2015 Table 3.3 [found]); 5 leaves room for a thermometer (common practice). */
const COLD_STEEL_C = 5;
/** Warm to the hand: no film stays on it, and it can be held, °C (common practice). */
export const HAND_WARM_C = 45;

export const WEATHER = 'prep/weather';

export type Weather = Readonly<{
  air_C: number;
  steel_C: number;
  damp_pct: number;
  dew_C: number;
  /** The steel must be at least this warm before an arc is struck, °C. */
  least_C: number;
}>;

/** The weather at the bench as it was last read, or null until all three are read. */
export const weatherOf = (s: Situation): Weather | null => {
  const read = (ask: string): number | undefined => s.build.readings.get(readingKey(WEATHER, ask))?.value;
  const [air_C, steel_C, damp_pct] = [read('air'), read('steel'), read('damp')];
  if (air_C === undefined || steel_C === undefined || damp_pct === undefined) return null;
  const point = dew({ air_C, humidity_pct: damp_pct });
  if (!point.ok) return null;
  const { dew_C } = point.value;
  return { air_C, steel_C, damp_pct, dew_C, least_C: Math.max(dew_C + ABOVE_DEW, COLD_STEEL_C) };
};

/** What the weather bars: an arc on wet or cold steel. Measuring again opens it. */
export const weatherGates = (w: Weather): readonly Gate[] => {
  const fills = {
    air: { v: w.air_C, as: 'temperature' },
    steel: { v: w.steel_C, as: 'temperature' },
    damp: { v: w.damp_pct, as: 'percent' },
    dew: { v: w.dew_C, as: 'temperature' },
    least: { v: w.least_C, as: 'temperature' },
    warm: { v: Math.max(WARM_STEEL_TO_C, w.least_C), as: 'temperature' },
    coldest: { v: COLDEST_AIR_C, as: 'temperature' },
  } as const;
  const gates: Gate[] = [];
  if (w.air_C < COLDEST_AIR_C)
    gates.push({ id: 'air-cold', shut: true, never: true, fills, measure: WEATHER });
  if (w.steel_C < w.dew_C + ABOVE_DEW) gates.push({ id: 'steel-damp', shut: true, fills, measure: WEATHER });
  if (w.steel_C < COLD_STEEL_C) gates.push({ id: 'steel-cold', shut: true, fills, measure: WEATHER });
  return gates;
};

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import type { Process } from './process.ts';

/** 0 °F, the coldest air at the weld: AWS D1.1:2015 clause 5.11 text [found]. It prints −20 °C beside; the warmer holds. */
export const COLDEST_AIR_C = ((0 - 32) * 5) / 9;
/** Steel below this is warmed first: AWS D1.1:2015 Table 3.3 (32 °F, walls to 20 mm) [found]. */
export const COLDEST_STEEL_C = 0;
/** … to at least 70 °F, and held there: D1.1 preheat table footnote [found, secondary]; 20 °C beside, the warmer holds. */
export const WARM_STEEL_TO_C = ((70 - 32) * 5) / 9;

/**
 * Strongest wind at the weld, m/s. Under gas: 5 mph, AWS D1.1 as an article quotes it [found]. Without, D1.1 bars a
 * "high wind" and gives no number; one owner's specification stops at 15 mph [found].
 */
export const WINDIEST_m_s: Readonly<Record<Process, number>> = {
  gmaw: 2.2352,
  'fcaw-s': 6.7056,
  smaw: 6.7056,
};

export type WeatherInput = Readonly<{
  process: Process;
  air_C: number;
  steel_C: number;
  /** At the weld, behind whatever shelter there is. */
  wind_m_s: number;
  /** Rain, snow, dew or frost on the steel. */
  wet: boolean;
}>;

export type WeatherStop = 'air too cold' | 'too windy' | 'steel wet';

export type WeldWeather = Readonly<{
  /** May an arc be struck, once the steel is as warm as `warm_to_C` asks. */
  weld: boolean;
  stops: readonly WeatherStop[];
  /** Warm the steel to this first; null when it is warm enough. */
  warm_to_C: number | null;
}>;

/**
 * Whether the weather lets a weld be made.
 * Refuses out-of-range for a temperature or wind that no garage has.
 */
export const weldWeather = ({
  process,
  air_C,
  steel_C,
  wind_m_s,
  wet,
}: WeatherInput): Outcome<WeldWeather> => {
  for (const [field, value] of [
    ['air_C', air_C],
    ['steel_C', steel_C],
  ] as const)
    if (!(value >= -60 && value <= 100))
      return refuse('out-of-range', field, `${value} °C is no weather.`, 'at least -60, at most 100 °C');
  if (!(wind_m_s >= 0 && wind_m_s <= 100))
    return refuse('out-of-range', 'wind_m_s', `${wind_m_s} m/s is no wind.`, 'at least 0, at most 100 m/s');
  const stops: WeatherStop[] = [];
  if (air_C < COLDEST_AIR_C) stops.push('air too cold');
  if (wind_m_s > WINDIEST_m_s[process]) stops.push('too windy');
  if (wet) stops.push('steel wet');
  return good({
    weld: stops.length === 0,
    stops,
    warm_to_C: steel_C < COLDEST_STEEL_C ? WARM_STEEL_TO_C : null,
  });
};

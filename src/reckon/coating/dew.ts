import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/**
 * Magnus form of the vapour pressure over water, Alduchov and Eskridge, J. Appl. Meteor. 35(4), 1996: a, and b in °C;
 * dew points to ±0.35 °C [found].
 */
const A = 17.625;
const B_C = 243.04;

/** Steel at least this much warmer than the dew point, K, while painting and until dry: ISO 8502-4 practice [found]. */
export const PAINT_MARGIN_C = 3;
/** No paint in damper air, %: the same [found]. */
export const DAMPEST_pct = 85;

/** Air that painters work in; past it the form is not good to the half degree. Judgement. */
export const DEW_LIMITS = {
  air_C: { atLeast: -40, atMost: 60 },
  humidity_pct: { above: 0, atMost: 100 },
  steel_C: { atLeast: -60, atMost: 200 },
} as const;

export type DewInput = Readonly<{
  air_C: number;
  /** Relative, over water. */
  humidity_pct: number;
  steel_C?: number | undefined;
}>;

export type Dew = Readonly<{
  dew_C: number;
  /** Steel above the dew point; null without the steel's temperature. */
  margin_C: number | null;
  /** May it be painted; null without the steel's temperature. */
  paint: boolean | null;
  /** Why, or why not, in words. */
  why: string;
}>;

/**
 * The dew point, and whether steel of a temperature may be painted in that air.
 * Refuses out-of-range for each value past its limit.
 */
export const dew = ({ air_C, humidity_pct, steel_C }: DewInput): Outcome<Dew> => {
  const { air_C: air, humidity_pct: damp, steel_C: steel } = DEW_LIMITS;
  if (!(air_C >= air.atLeast && air_C <= air.atMost))
    return refuse(
      'out-of-range',
      'air_C',
      `Nobody paints at ${air_C} °C.`,
      `at least ${air.atLeast}, at most ${air.atMost} °C`,
    );
  if (!(humidity_pct > damp.above && humidity_pct <= damp.atMost))
    return refuse(
      'out-of-range',
      'humidity_pct',
      `Air cannot be ${humidity_pct} % damp.`,
      'above 0, at most 100 %',
    );
  if (steel_C !== undefined && !(steel_C >= steel.atLeast && steel_C <= steel.atMost))
    return refuse(
      'out-of-range',
      'steel_C',
      `Steel of ${steel_C} °C is not painted.`,
      `at least ${steel.atLeast}, at most ${steel.atMost} °C`,
    );

  const dew_C = dewPoint(air_C, humidity_pct);
  if (steel_C === undefined)
    return good({
      dew_C,
      margin_C: null,
      paint: null,
      why: 'The steel’s own temperature decides, and is not given.',
    });
  const margin_C = steel_C - dew_C;
  const stops = [
    margin_C < PAINT_MARGIN_C ? tooNear(margin_C) : '',
    humidity_pct > DAMPEST_pct ? `The air is damper than ${DAMPEST_pct} %.` : '',
  ].filter(stop => stop !== '');
  const freezing = dew_C < 0 ? ` ${FROST}` : '';
  return good({
    dew_C,
    margin_C,
    paint: stops.length === 0,
    why:
      (stops.length === 0
        ? `The steel is ${PAINT_MARGIN_C} °C or more above the dew point, and the air no damper than ${DAMPEST_pct} %.`
        : stops.join(' ')) + freezing,
  });
};

/** Below 0 °C printed tables follow the frost point, up to half a degree off [found]. */
const FROST =
  'The dew point is below 0 °C, where tables differ by half a degree: read the paint’s own sheet.';

const tooNear = (margin_C: number): string =>
  margin_C < 0
    ? 'The steel is colder than the dew point: it is wet, seen or not.'
    : `The steel is less than ${PAINT_MARGIN_C} °C above the dew point: a film of water you cannot see may form.`;

const dewPoint = (air_C: number, humidity_pct: number): number => {
  // Two logarithms: a hundredth of the smallest number would be 0.
  const gamma = Math.log(humidity_pct) - Math.log(100) + (A * air_C) / (B_C + air_C);
  // In full damp the two are one; rounding must not put the dew point above the air.
  return Math.min(air_C, (B_C * gamma) / (A - gamma));
};

/**
 * How damp air of a temperature may be for a wanted dew point, %: the dew point read backwards. At most 100.
 * @param air_C −40 to 60
 * @param dew_C wanted
 */
export const humidityFor = (air_C: number, dew_C: number): number =>
  Math.min(100, 100 * Math.exp((A * dew_C) / (B_C + dew_C) - (A * air_C) / (B_C + air_C)));

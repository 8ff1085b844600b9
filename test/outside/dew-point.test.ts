// @ts-expect-error The package has no types.
import untyped from 'psychrolib';
import { describe, expect, test } from 'vitest';
import { dew } from '../../src/reckon/coating/dew.ts';
import { kept } from '../quantity/expect-outcome.ts';

const dewAt = (air_C: number, humidity_pct: number): number => kept(dew({ air_C, humidity_pct })).dew_C;

// A paint maker's sheet 1650, dew point table to 0.1 °C [found]. The table is read to half a digit more than it prints.
const PRINTED = 0.11;
describe('a paint maker’s dew point table', () => {
  test.each([
    [10, 60, 2.6],
    [10, 70, 4.7],
    [10, 80, 6.7],
    [10, 90, 8.4],
    [15, 50, 4.7],
    [15, 60, 7.3],
    [15, 75, 10.6],
    [15, 85, 12.5],
    [20, 50, 9.3],
    [20, 55, 10.7],
    [20, 60, 12],
    [25, 50, 13.8],
    [25, 55, 15.3],
    [25, 60, 16.7],
    [30, 50, 18.4],
    [30, 55, 20],
    [30, 60, 21.4],
    [5, 70, 0],
    [5, 80, 1.8],
    [5, 90, 3.6],
  ])('%d °C and %d %%: %d °C', (air, damp, printed) => {
    expect(Math.abs(dewAt(air, damp) - printed)).toBeLessThan(PRINTED);
  });
});

// A paint maker's Fahrenheit chart [found]. It prints whole degrees, rounded down: 1 °F is the tolerance.
test.each([
  [70, 65, 57],
  [60, 70, 50],
  [80, 60, 64],
])('a Fahrenheit chart: %d °F and %d %% has its dew point at %d °F', (air, damp, printed) => {
  const dew_F = dewAt(((air - 32) * 5) / 9, damp) * 1.8 + 32;
  expect(dew_F - printed).toBeGreaterThanOrEqual(0);
  expect(dew_F - printed).toBeLessThan(1);
});

// Other formulas of the same thing: a ten-base one from an instrument maker's page [found], and 17.62/243.12 of the WMO
// guide (Sonntag) [memory]. They agree within 0.03 °C from 0 to 35 °C [derived].
describe('other formulas', () => {
  const tenBase = (air: number, damp: number): number => {
    const [a, m, t] = [6.116441, 7.591386, 240.7263];
    const pressure = (a * 10 ** ((m * air) / (air + t)) * damp) / 100;
    return t / (m / Math.log10(pressure / a) - 1);
  };
  const sonntag = (air: number, damp: number): number => {
    const gamma = Math.log(damp / 100) + (17.62 * air) / (243.12 + air);
    return (243.12 * gamma) / (17.62 - gamma);
  };

  test.each([0, 5, 10, 15, 20, 25, 30, 35])('at %d °C, 40 to 95 %', air => {
    for (const damp of [40, 55, 70, 85, 95]) {
      expect(Math.abs(dewAt(air, damp) - tenBase(air, damp))).toBeLessThan(0.035);
      expect(Math.abs(dewAt(air, damp) - sonntag(air, damp))).toBeLessThan(0.035);
    }
  });
});

// A paint maker's ambient conditions note, two worked cases [found].
describe('worked cases of a paint maker', () => {
  test('16 °C and 71 %: dew point 11 °C; steel of 13 °C is only 2 above and stays bare', () => {
    const it = kept(dew({ air_C: 16, humidity_pct: 71, steel_C: 13 }));
    expect(it.dew_C).toBeCloseTo(11, 0);
    expect(it.margin_C).toBeCloseTo(2, 0);
    expect(it.paint).toBe(false);
  });

  test('21 °C with the dew point at 15 °C: steel of 19 °C is 4 above and may be painted', () => {
    // The case tells no dampness; 68.7 % is the one that has its dew point at 15 °C.
    const it = kept(dew({ air_C: 21, humidity_pct: 68.7, steel_C: 19 }));
    expect(it.dew_C).toBeCloseTo(15, 1);
    expect(it.paint).toBe(true);
  });
});

// ASHRAE Handbook of Fundamentals, psychrometrics, saturation pressure over water from 0 to 200 °C (Hyland and Wexler, 1983), ln Pa
// by K [memory]. The dew point is where it has fallen to the air's own vapour.
describe('ASHRAE’s saturation pressure', () => {
  const saturated = (t_C: number): number => {
    const T = t_C + 273.15;
    return Math.exp(
      -5800.2206 / T +
        1.3914993 -
        0.048640239 * T +
        4.1764768e-5 * T ** 2 -
        1.4452093e-8 * T ** 3 +
        6.5459673 * Math.log(T),
    );
  };
  const byAshrae = (air: number, damp: number): number => {
    const vapour = (damp / 100) * saturated(air);
    let [low, high] = [0, air];
    for (let k = 0; k < 60; k++) {
      const middle = (low + high) / 2;
      if (saturated(middle) < vapour) low = middle;
      else high = middle;
    }
    return low;
  };

  test('boils at 100 °C under one atmosphere, so it is remembered rightly', () => {
    expect(saturated(100) / 101_325).toBeCloseTo(1, 2);
    expect(saturated(20) / 2339).toBeCloseTo(1, 3);
  });

  test.each([5, 10, 15, 20, 25, 30, 35])('at %d °C, from 75 to 95 %% within 0.05 °C', air => {
    for (const damp of [75, 85, 95])
      expect(Math.abs(dewAt(air, damp) - byAshrae(air, damp))).toBeLessThan(0.05);
  });
});

// PsychroLib 2.5.0 (npm package psychrolib 1.1.1), a general-purpose psychrometric library: ASHRAE Handbook of Fundamentals 2017, chapter 1,
// equations 5 and 6 [found: computed by the library in this test]. Magnus and ASHRAE differ by a tenth of a degree at most here.
const psychrolib = untyped as {
  SI: number;
  SetUnitSystem: (system: number) => void;
  GetTDewPointFromRelHum: (dry_C: number, share: number) => number;
};
psychrolib.SetUnitSystem(psychrolib.SI);

test.each([5, 10, 15, 20, 25, 30, 35])('dew points at %d °C agree with a psychrometric library', air => {
  for (const damp of [30, 40, 50, 60, 70, 80, 85, 90, 95, 100]) {
    const theirs = psychrolib.GetTDewPointFromRelHum(air, damp / 100);
    // Below nought the library takes the dew over ice.
    if (theirs < 0) continue;
    expect(Math.abs(dewAt(air, damp) - theirs)).toBeLessThan(0.1);
  }
});

import { describe, expect, test } from 'vitest';
import { settings } from '../../src/reckon/welding/settings.ts';
import { quickHandAmps, shortArcVolts, slowHandAmps } from '../../src/reckon/welding/solid-wire-settings.ts';
import { suitedTravel } from '../../src/reckon/welding/travel.ts';
import { kept } from '../quantity/expect-outcome.ts';

// Reference tables in power-source makers' operating instructions, short arc, square butt without backing and fillet
// [found]. Each row: wall mm, A from, A to, V from, V to, mm/min from, to.
type Row = readonly [wall: number, A1: number, A2: number, V1: number, V2: number, v1: number, v2: number];

const CO2_BUTT: readonly Row[] = [
  [1.2, 80, 90, 17, 18, 500, 600],
  [1.6, 95, 105, 18, 19, 450, 500],
  [2, 110, 120, 19, 19.5, 450, 500],
  [2.3, 120, 130, 19.5, 20, 450, 500],
  [3.2, 140, 150, 20, 21, 450, 500],
  [4.5, 170, 185, 22, 23, 400, 500],
  [6, 230, 260, 24, 26, 400, 500],
];
const CO2_FILLET: readonly Row[] = [
  [1.6, 90, 120, 18, 20, 500, 600],
  [2, 100, 130, 19, 20, 500, 600],
  [2.3, 120, 140, 19, 21, 500, 600],
  [3.2, 130, 170, 19, 21, 450, 550],
  [4.5, 190, 230, 22, 24, 450, 550],
  [6, 250, 280, 26, 29, 400, 500],
];
// 80/20 mix. Two makers' butt tables differ in volts from 3.2 mm on; the second, which agrees with its own currents
// there, is taken. (The first runs 16 to 18 V at 120 to 160 A.)
const MIX_BUTT: readonly Row[] = [
  [1.6, 100, 110, 16, 17, 400, 600],
  [2.3, 110, 120, 17, 18, 300, 400],
  [3.2, 120, 140, 17, 19, 250, 300],
  [4, 150, 170, 18, 21, 200, 300],
];
const MIX_FILLET: readonly Row[] = [
  [1.6, 100, 110, 18, 19.5, 500, 600],
  [2.3, 115, 125, 19.5, 20, 500, 600],
  [3.2, 130, 140, 19.5, 21, 500, 600],
];

const middle = (a: number, b: number): number => (a + b) / 2;
const percentOff = (value: number, printed: number): number => (value / printed - 1) * 100;

describe('currents against makers’ tables', () => {
  // One ampere for each thousandth of an inch suits a slow hand; the tables run 450 to 600 mm/min. How far below them
  // it lies was reckoned once, apart from this code [derived], and must stay so: both bounds are shown to the person.
  test.each([
    [1.6, -40.5, -36.5],
    [2.3, -30.5, -20.5],
    [3.2, -16.5, -2.5],
    [4.5, -16.5, 2.5],
    [6, -11.5, -3.5],
  ])('the slow hand’s rule at %d mm lies %d to %d %% off', (wall, low, high) => {
    const rows = [...CO2_BUTT, ...CO2_FILLET, ...MIX_BUTT, ...MIX_FILLET].filter(row => row[0] === wall);
    expect(rows.length).toBeGreaterThan(1);
    for (const [, a, b] of rows) {
      const off = percentOff(slowHandAmps(wall), middle(a, b));
      expect(off).toBeGreaterThan(low);
      expect(off).toBeLessThan(high);
    }
  });

  test('the quick hand’s line lies within 11 % of them, 1.6 to 4.5 mm butt and 1.6 to 3.2 mm fillet', () => {
    const rows = [
      ...CO2_BUTT.filter(([wall]) => wall >= 1.6 && wall <= 4.5),
      ...MIX_BUTT.filter(([wall]) => wall <= 4.5),
      ...CO2_FILLET.filter(([wall]) => wall <= 3.2),
      ...MIX_FILLET,
    ];
    for (const [wall, a, b] of rows)
      expect(Math.abs(percentOff(quickHandAmps(wall), middle(a, b)))).toBeLessThan(11.5);
    // Below 1.5 mm it over-reads the mix by a third, which is why no settings are given there.
    expect(percentOff(quickHandAmps(1.2), middle(60, 70))).toBeGreaterThan(30);
  });
});

describe('volts against makers’ tables', () => {
  /** Tables print to half a volt. */
  const HALF_STEP = 0.25;

  test('100 % CO2, every butt row', () => {
    for (const [, a1, a2, v1, v2] of CO2_BUTT) {
      const band = shortArcVolts('CO2', middle(a1, a2));
      expect(middle(v1, v2)).toBeGreaterThan(band.low - HALF_STEP);
      expect(middle(v1, v2)).toBeLessThan(band.high + HALF_STEP);
    }
  });

  test('mix, butt low and fillet high', () => {
    for (const [, a1, a2, v1, v2] of [...MIX_BUTT, ...MIX_FILLET]) {
      const band = shortArcVolts('75/25', middle(a1, a2));
      expect(middle(v1, v2)).toBeGreaterThan(band.low - HALF_STEP);
      expect(middle(v1, v2)).toBeLessThan(band.high + HALF_STEP);
    }
  });
});

test('travel that suits the heat is the CO2 butt table’s within 25 %', () => {
  for (const [wall, a1, a2, v1, v2, from, to] of CO2_BUTT) {
    const travel = suitedTravel('gmaw', middle(v1, v2), middle(a1, a2), wall);
    expect(Math.abs(percentOff(travel.start * 60, middle(from, to)))).toBeLessThan(25);
  }
});

// Start points worked apart from this code with 75/25 mix, to a round ampere [derived].
describe('worked start points', () => {
  test.each([
    [1.5, 60, 3, 15.5, 298],
    [2.1, 83, 4.2, 16.7, 317],
    [3, 120, 4.9, 18.5, 355],
    [4.8, 180, 7.3, 21.5, 389],
  ])('%d mm: %d A, %d m/min, %d V, %d mm/min', (wall_mm, amps, feed, volts, mm_min) => {
    const it = kept(settings({ process: 'gmaw', gas: '75/25', wall_mm }));
    expect(Math.abs(percentOff(it.amps.start, amps))).toBeLessThan(2);
    expect(Math.abs(percentOff(it.feed_m_min?.start ?? 0, feed))).toBeLessThan(2.5);
    expect(it.volts.start).toBeCloseTo(volts, 0);
    expect(Math.abs(percentOff(it.travel_mm_s.start * 60, mm_min))).toBeLessThan(3);
  });

  test('6.35 mm is bevelled and filled in two passes of 150 to 180 A, 20 to 21.5 V, 10 to 12 in a minute', () => {
    const it = kept(settings({ process: 'gmaw', gas: '75/25', wall_mm: 6.35 }));
    expect(it.passes).toBe(2);
    expect(it.amps).toMatchObject({ low: 150, high: 180 });
    expect(it.volts.start).toBeGreaterThan(20);
    expect(it.volts.start).toBeLessThan(21.5);
    expect((it.travel_mm_s.low * 60) / 25.4).toBeCloseTo(10, 1);
    expect((it.travel_mm_s.high * 60) / 25.4).toBeCloseTo(12, 1);
  });
});

// Makers' owner manuals, "typical control settings": wire feed by current, in a minute for each ampere [found].
test.each([
  [0.6, 3.5],
  [0.8, 2],
  [0.9, 1.6],
  [1.1, 1],
])('%d mm wire is fed %d in a minute for each ampere', (filler_mm, ipm_A) => {
  const it = kept(settings({ process: 'gmaw', gas: '75/25', wall_mm: 2, filler_mm }));
  expect((it.feed_m_min?.start ?? 0) / 0.0254 / it.amps.start).toBeCloseTo(ipm_A, 9);
});

// Wire melted is current's affair: 0.00195/d² in a minute for each ampere, d in inches, is within −8 to +4 % of the
// makers' figures [derived].
test('feeds of all wires follow one melting rule', () => {
  for (const [mm, inch] of [
    [0.6, 0.0235],
    [0.8, 0.03],
    [0.9, 0.035],
    [1.1, 0.045],
  ] as const) {
    const it = kept(settings({ process: 'gmaw', gas: '75/25', wall_mm: 2, filler_mm: mm }));
    const rule = 0.00195 / inch ** 2;
    expect(Math.abs(percentOff(rule, (it.feed_m_min?.start ?? 0) / 0.0254 / it.amps.start))).toBeLessThan(9);
  }
});

// Machinery's Handbook, 31st ed., p. 1593–1594, Tables 13 and 14 [found]: current ranges of rods.
test.each([
  ['E6013', 2.5, 50, 100],
  ['E6013', 3.2, 75, 135],
  ['E6011', 3.2, 75, 130],
  ['E7018', 2.5, 70, 105],
  ['E7018', 3.2, 110, 160],
  ['E7018', 4, 150, 215],
] as const)('%s of %d mm runs at %d to %d A, from its low end on sheet', (rod, filler_mm, least, most) => {
  const thick = kept(settings({ process: 'smaw', wall_mm: 5, rod, filler_mm }));
  expect(thick.amps).toMatchObject({ low: least, high: most });
  if (filler_mm > 3.2) return;
  const sheet = kept(settings({ process: 'smaw', wall_mm: 3, rod, filler_mm }));
  expect(sheet.amps.low).toBe(least);
  expect(sheet.amps.start).toBeLessThan((least + most) / 2);
});

// One machine's chart [found]: to 1/8 in, 3/32 E7018 at 90 A and E6011 at 70 A; to 3/16 in, 1/8 E6013 at 125 A.
test.each([
  ['E7018', 2.5, 3.2, 90],
  ['E6011', 2.5, 3.2, 70],
  ['E6013', 3.2, 4.7, 125],
] as const)('a door chart’s figure for %s %d mm lies in the band', (rod, filler_mm, wall_mm, amps) => {
  const it = kept(settings({ process: 'smaw', wall_mm, rod, filler_mm }));
  // On sheet the band ends at the range's middle, where charts of quick hands go on: they may lie a fifth over it.
  expect(amps).toBeGreaterThanOrEqual(it.amps.low);
  expect(amps).toBeLessThanOrEqual(it.amps.high * 1.25);
});

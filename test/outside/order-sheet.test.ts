import { describe, expect, test } from 'vitest';
import { boardStock, sheetStock, tubeStock } from '../../src/ramp/cutting/stock-section.ts';
import { usualBars } from '../../src/ramp/cutting/usual-stock.ts';
import { consumption } from '../../src/reckon/welding/consumption.ts';

const tube = (depth: number, width: number, wall: number) => ({
  depth_mm: depth,
  width_mm: width,
  wall_mm: wall,
});
const INCH = 25.4;
const LB_FT = 0.45359237 / 0.3048;

describe('kilograms on the order sheet against published rows', () => {
  // EN 10219 cold-formed square and rectangular tube, kg/m: a maker's brochure and a merchant's page [found].
  test.each([
    [40, 40, 2, 2.306],
    [40, 40, 3, 3.303],
    [50, 50, 3, 4.245],
    [60, 60, 3, 5.187],
    [40, 20, 2, 1.68],
    [60, 40, 3, 4.25],
  ])('%dx%dx%d: %d kg/m', (depth, width, wall, kg) => {
    expect(tubeStock(tube(depth, width, wall), 'EN10219').kgPerM / kg).toBeCloseTo(1, 2);
  });

  // AISC shapes table 1-12, lb/ft [found]: mass from the wall as sold.
  test.each([
    [2, 2, 0.125, 3.05],
    [2, 2, 0.1875, 4.32],
    [3, 2, 0.125, 3.9],
  ])('HSS %dx%dx%d in: %d lb/ft', (depth, width, wall, lb) => {
    const kg = tubeStock(tube(depth * INCH, width * INCH, wall * INCH), 'AISC').kgPerM;
    // "Within 0.7 % of the table's mass" for all sizes up to 4 in [calc].
    expect(Math.abs(kg / LB_FT / lb - 1)).toBeLessThan(0.008);
  });

  test('18 mm birch ply weighs 12.2 kg a square metre; a dry 28 × 145 softwood board 1.7 kg a metre [practice]', () => {
    expect(sheetStock(1000, 18).kgPerM).toBeCloseTo(12.24, 6);
    expect(boardStock(145, 28).kgPerM).toBeCloseTo(1.7, 1);
  });

  test('bars as a yard sells them: 6 m, and 20 ft [practice]', () => {
    expect(usualBars('metric', tubeStock(tube(40, 40, 3), 'EN10219'))).toEqual([6000]);
    expect(
      usualBars('us', tubeStock(tube(2 * INCH, 2 * INCH, INCH / 8), 'AISC')).map(v => Math.round(v / 304.8)),
    ).toEqual([20]);
  });
});

describe('wire on the order sheet against figures of filler makers', () => {
  test('a 3 mm leg fillet lays down 41 g a metre: z²/2 · 1.15 · 7.85 g/cm³ [practice; arithmetic derived]', () => {
    const perMetre = ((3 ** 2 / 2) * 1.15 * 7.85) / 1000;
    expect(perMetre).toBeCloseTo(0.041, 3);
    const joints = consumption({
      process: 'gmaw',
      slits: 0,
      rails: 0,
      joints: 5,
      pieces: 5,
      depth_mm: 40,
      width_mm: 40,
      wall_mm: 3,
    });
    // Five joints are a metre of weld (0.2 m a joint, bench rule [practice]).
    expect(joints.ok && joints.value.laid_kg).toBeCloseTo(perMetre, 3);
  });

  test('deposited ÷ 0.9 × 1.3 and a kilogram for practice: the shopping rule [practice]', () => {
    const used = consumption({
      process: 'gmaw',
      slits: 25,
      rails: 2,
      joints: 64,
      pieces: 40,
      depth_mm: 40,
      width_mm: 40,
      wall_mm: 3,
    });
    const rule = ((50 * 0.108 * 0.05 + 64 * 0.2 * 0.041) / 0.9) * 1.3 + 1;
    expect(used.ok && used.value.buy.wire_kg).toBeCloseTo(rule, 2);
  });
});

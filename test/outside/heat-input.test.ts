import { describe, expect, test } from 'vitest';
import { heatInput } from '../../src/reckon/welding/heat.ts';
import { kept } from '../quantity/expect-outcome.ts';

// Efficiency 0.8 of rods and of wire under gas: a steel maker's heat input page [found]; of self-shielded cored wire:
// EN 1011-1 table [memory].
describe('EN 1011-1: Q = k·U·I·60/(1000·v), v in mm/min [memory]', () => {
  const table = (k: number, U: number, I: number, mm_min: number): number =>
    (k * U * I * 60) / (1000 * mm_min);

  test.each(['gmaw', 'fcaw-s', 'smaw'] as const)('%s', process => {
    const it = kept(heatInput({ volts: 22, amps: 150, travel_mm_s: 5, process }));
    expect(it.efficiency).toBe(0.8);
    expect(it.kJ_mm).toBeCloseTo(table(0.8, 22, 150, 300), 12);
  });

  // AWS D1.1 has no efficiency: 60·V·A/(1000·S) kJ/in [memory]; 31.75 turns the one into the other [derived].
  test('the American form without efficiency, times 31.75', () => {
    const it = kept(heatInput({ volts: 19, amps: 130, travel_mm_s: (12 * 25.4) / 60, process: 'gmaw' }));
    expect(it.kJ_mm * 31.75).toBeCloseTo((60 * 19 * 130) / (1000 * 12), 10);
  });
});

// Worked from makers' tables [derived]: the same 1.6 mm wall by a slow hand and by a quick one.
test('63 A at 250 mm/min and 105 A at 500 mm/min put about the same heat into 1.6 mm', () => {
  const heat = (amps: number, mm_min: number): number =>
    kept(heatInput({ volts: 16.5, amps, travel_mm_s: mm_min / 60, process: 'gmaw' })).kJ_mm;
  expect(heat(63, 250)).toBeCloseTo(0.2, 2);
  expect(heat(105, 500)).toBeCloseTo(0.17, 2);
});

// What a maker's CO2 butt table puts in (reference table in a power source's operating instructions [found]; the heat
// is reckoned from it [derived]).
test.each([
  [1.6, 18.5, 100, 475, 0.19],
  [3.2, 20.5, 145, 475, 0.3],
  [4.5, 22.5, 177.5, 450, 0.43],
  [6, 25, 245, 450, 0.65],
])(
  'the CO2 butt table at %d mm: %d V, %d A, %d mm/min put in %d kJ/mm',
  (_wall, volts, amps, mm_min, kJ_mm) => {
    const it = kept(heatInput({ volts, amps, travel_mm_s: mm_min / 60, process: 'gmaw' }));
    expect(Math.abs(it.kJ_mm / kJ_mm - 1)).toBeLessThan(0.06);
  },
);

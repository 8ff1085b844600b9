import { describe, expect, test } from 'vitest';
import { convert } from '../../src/quantity/convert.ts';
import type { UnitCode } from '../../src/quantity/units.ts';

/** Equal but for the last bits of a float. */
const EXACT = 1e-14;
/** Half a unit of the seventh figure, to which the printed tables round. */
const SEVEN_FIGURES = 5e-7;

const off = (from: UnitCode, to: UnitCode, factor: number): number =>
  Math.abs(convert(1, from, to) / factor - 1);

/**
 * Definitions, exact. Each is stated from memory; the figures of the pound, inch, mile, foot, yard, gallon, degrees and
 * standard gravity were also read in the constants module of SciPy (below).
 */
describe('definitions', () => {
  // International yard and pound agreement of 1959 (United States Federal Register 24 FR 5348):
  // 1 yd = 0.9144 m and 1 lb = 0.45359237 kg, exact [memory].
  test.each([
    ['yd', 'm', 0.9144],
    ['ft', 'mm', 304.8],
    ['in', 'mm', 25.4],
    ['thou', 'um', 25.4],
    ['mi', 'm', 1609.344],
    ['lb', 'kg', 0.45359237],
    ['oz', 'g', 453.59237 / 16],
    ['in2', 'mm2', 25.4 ** 2],
    ['ft2', 'm2', 0.3048 ** 2],
    ['in3', 'mm3', 25.4 ** 3],
    ['ft3', 'l', 3.048 ** 3],
    ['in4', 'mm4', 25.4 ** 4],
    ['mph', 'm_s', 1609.344 / 3600],
    ['ft_s', 'm_s', 0.3048],
    ['ft_min', 'm_min', 0.3048],
    ['in_min', 'mm_min', 25.4],
    ['in_s', 'mm_s', 25.4],
    ['ft3_h', 'l_min', 3.048 ** 3 / 60],
    ['lb_ft', 'kg_m', 0.45359237 / 0.3048],
    ['lb_ft3', 'kg_m3', 0.45359237 / 0.3048 ** 3],
    ['lb_in3', 'kg_m3', 0.45359237 / 0.0254 ** 3],
    ['kJ_in', 'kJ_mm', 1 / 25.4],
  ] as const)('yard and pound of 1959: %s in %s', (from, to, factor) => {
    expect(off(from, to, factor)).toBeLessThan(EXACT);
  });

  // Standard gravity, 9.80665 m/s²: 3rd General Conference on Weights and Measures, 1901, exact [memory].
  // A pound-force is what it lays on a pound: 0.45359237 × 9.80665 = 4.4482216152605 N [derived].
  test.each([
    ['kgf', 'N', 9.80665],
    ['lbf', 'N', 4.4482216152605],
    ['lbf', 'N', 0.45359237 * 9.80665],
    ['kip', 'kN', 4.4482216152605],
    ['lbfft', 'Nm', 4.4482216152605 * 0.3048],
    ['lbfin', 'Nm', 4.4482216152605 * 0.0254],
    ['lbf_ft', 'N_m', 4.4482216152605 / 0.3048],
    ['lbf_in', 'N_mm', 4.4482216152605 / 25.4],
    ['psi', 'MPa', 4.4482216152605 / 25.4 ** 2],
    ['ksi', 'MPa', 4448.2216152605 / 25.4 ** 2],
  ] as const)('standard gravity of 1901: %s in %s', (from, to, factor) => {
    expect(off(from, to, factor)).toBeLessThan(EXACT);
  });

  // NIST Handbook 44, Appendix C, liquid measure: 1 US gallon = 231 in³ = 4 quarts, exact [memory].
  test.each([
    ['gal', 'in3', 231],
    ['gal', 'l', (231 * 25.4 ** 3) / 1e6],
    ['gal', 'qt', 4],
  ] as const)('US liquid measure: %s in %s', (from, to, factor) => {
    expect(off(from, to, factor)).toBeLessThan(EXACT);
  });

  // NIST SP 811 (2008), B.8 "Degree Fahrenheit": t/°C = (t/°F − 32)/1.8; "Kelvin": t/°C = T/K − 273.15 [memory].
  test.each([
    [32, 'F', 0],
    [212, 'F', 100],
    [-40, 'F', -40],
    [68, 'F', 20],
    [-459.67, 'F', -273.15],
    [273.16, 'K', 0.01],
  ] as const)('thermometers: %d %s is %d °C', (value, from, celsius) => {
    expect(convert(value, from, 'C')).toBeCloseTo(celsius, 9);
    expect(convert(celsius, 'C', from)).toBeCloseTo(value, 9);
  });

  // SI Brochure (BIPM, 9th ed.), prefixes and non-SI units accepted with the SI: h, min, °, litre [memory].
  test.each([
    ['km_h', 'm_s', 1 / 3.6],
    ['m_min', 'mm_s', 1000 / 60],
    ['deg', 'rad', Math.PI / 180],
    ['mrad', 'rad', 0.001],
    ['h', 's', 3600],
    ['l', 'mm3', 1e6],
    ['m3', 'l', 1000],
    ['ml', 'mm3', 1000],
    ['GPa', 'MPa', 1000],
    ['kPa', 'Pa', 1000],
    ['MPa', 'Pa', 1e6],
    ['kNm', 'Nmm', 1e6],
    ['Nm', 'Nmm', 1000],
    ['cm4', 'mm4', 1e4],
    ['cm2', 'mm2', 100],
    ['g_cm3', 'kg_m3', 1000],
    ['N_mm', 'N_m', 1000],
    ['um', 'mm', 0.001],
    ['km', 'm', 1000],
    ['cm', 'mm', 10],
    ['per_h', 'per_min', 1 / 60],
    ['J_mm', 'kJ_mm', 0.001],
    ['pct', 'one', 0.01],
  ] as const)('the SI: %s in %s', (from, to, factor) => {
    expect(off(from, to, factor)).toBeLessThan(EXACT);
  });
});

// SciPy 1.17.1, module scipy.constants ("unit conversion: see e.g., NIST special publication 811"), values as the
// module prints them, in SI base units [found].
describe('the constants of SciPy', () => {
  test.each([
    ['in', 'm', 0.0254],
    ['ft', 'm', 0.30479999999999996],
    ['yd', 'm', 0.9143999999999999],
    ['mi', 'm', 1609.3439999999998],
    ['thou', 'm', 2.5399999999999997e-5],
    ['deg', 'rad', 0.017453292519943295],
    ['min', 's', 60],
    ['h', 's', 3600],
    ['km_h', 'm_s', 0.2777777777777778],
    ['mph', 'm_s', 0.44703999999999994],
    ['lb', 'kg', 0.45359236999999997],
    ['oz', 'kg', 0.028349523124999998],
    ['lbf', 'N', 4.4482216152605],
    ['kgf', 'N', 9.80665],
    ['psi', 'Pa', 6894.757293168361],
    ['gal', 'm3', 0.0037854117839999997],
  ] as const)('%s in %s', (from, to, factor) => {
    expect(off(from, to, factor)).toBeLessThan(EXACT);
  });

  test('convert_temperature([20, 72.5], "F", "C")', () => {
    expect(convert(20, 'F', 'C')).toBeCloseTo(-6.66666667, 8);
    expect(convert(72.5, 'F', 'C')).toBe(22.5);
  });
});

// NIST SP 811 (2008), Appendix B.8, factors as printed to seven figures [memory: not read again].
describe('the printed table of NIST SP 811', () => {
  test.each([
    ['lbfft', 'Nm', 1.355818],
    ['lbfin', 'Nm', 0.1129848],
    ['psi', 'kPa', 6.894757],
    ['ksi', 'MPa', 6.894757],
    ['kip', 'N', 4448.222],
    ['lbf_ft', 'N_m', 14.5939],
    ['lbf_in', 'N_m', 175.1268],
    ['lb_ft', 'kg_m', 1.488164],
    ['lb_ft3', 'kg_m3', 16.01846],
    ['lb_in3', 'kg_m3', 27679.9],
    ['gal', 'l', 3.785412],
    ['qt', 'l', 0.9463529],
    ['oz', 'g', 28.34952],
    ['ft3', 'm3', 0.02831685],
    ['in4', 'mm4', 416231.4],
    ['ft2', 'm2', 0.09290304],
  ] as const)('%s in %s', (from, to, factor) => {
    expect(off(from, to, factor)).toBeLessThan(SEVEN_FIGURES);
  });
});

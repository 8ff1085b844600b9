import { describe, expect, test } from 'vitest';
import { readAs, unitOfField } from '../../src/quantity/read-unit.ts';
import { kept, refused } from './expect-outcome.ts';

describe('a field of the number command takes a text with a unit', () => {
  test.each([
    ['4 ft 6 1/2 in', 'mm', 1384.3],
    ['1.2 m', 'mm', 1200],
    ['1.2 m', 'm', 1.2],
    ['18 mph', 'm_s', 8.04672],
    ['12', 'mm', 12],
    ['12', 'N', 12],
    ['12', 'Nm', 12],
    ['45 deg', 'deg', 45],
    ['45', 'rad', 45],
    ['1.2 kN', 'N', 1200],
    ['3.3 kg/m', 'kg_m', 3.3],
    ['3.3 kg per m', 'kg_m', 3.3],
    ['7.85 g/cm3', 'kg_m3', 7850],
    ['1.2 kN/m', 'N_mm', 1.2],
    ['1.2 N/m', 'N_mm', 0.0012],
    ['9.46 cm⁴', 'mm4', 94_600],
    ['1 in4', 'mm4', 416_231.4256],
    ['5.77 cm³', 'mm3', 5770],
    ['4.21 cm2', 'mm2', 421],
    ['1 sq in', 'mm2', 645.16],
    ['100 sq ft', 'm2', 9.290304],
    ['5 thou', 'um', 127],
    ['125 µm', 'um', 125],
    ['6', 'mm_s', 6],
    ['360 mm/min', 'mm_s', 6],
    ['5.08 kJ/in', 'kJ_mm', 0.2],
    ['65 %', 'pct', 65],
    ['2 per min', 'per_min', 2],
    ['90 amps', 'A', 90],
    ['30 min', 'h', 0.5],
    ['1:12', 'one', 1 / 12],
    ['2.1e5', 'MPa', 210_000],
    ['210 GPa', 'MPa', 210_000],
  ] as const)('%s for _%s', (typed, unit, expected) => {
    expect(kept(readAs(typed, unit))).toBe(expected);
  });

  test('20 °F is 6 2/3 °C below freezing', () => {
    expect(kept(readAs('20 °F', 'C'))).toBeCloseTo(-20 / 3, 12);
  });

  test('a unit of another quantity is refused', () => {
    expect(refused(readAs('20 °F', 'mm'))).toMatchObject({ code: 'wrong-unit', field: null });
    expect(refused(readAs('12 N/mm', 'N'))).toMatchObject({ code: 'wrong-unit' });
    expect(refused(readAs('12 Nm', 'N_mm'))).toMatchObject({ code: 'wrong-unit' });
    expect(refused(readAs('150 lb', 'N'))).toMatchObject({ code: 'wrong-unit' });
  });

  test('an ending that is no unit is refused, not guessed', () => {
    expect(refused(readAs('12', 'furlong')).code).toBe('wrong-unit');
    expect(refused(readAs('12', 'toString')).code).toBe('wrong-unit');
  });
});

describe('the ending of a field names its unit', () => {
  test.each([
    ['length_mm', 'mm'],
    ['E_MPa', 'MPa'],
    ['across_N_mm', 'N_mm'],
    ['moment_Nm', 'Nm'],
    ['landing_speed_m_s', 'm_s'],
    ['travel_mm_s', 'mm_s'],
    ['air_kg_m3', 'kg_m3'],
    ['mass_kg_m', 'kg_m'],
    ['mass_kg', 'kg'],
    ['lifts_per_min', 'per_min'],
    ['humidity_pct', 'pct'],
    ['film_um', 'um'],
    ['volts', 'V'],
    ['amps', 'A'],
    ['hours', 'h'],
    ['count', null],
    ['kerf', null],
    ['rail_spread', null],
    ['k', null],
  ])('%s', (name, unit) => {
    expect(unitOfField(name)).toBe(unit);
  });
});

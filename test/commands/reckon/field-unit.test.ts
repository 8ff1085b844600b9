import { expect, test } from 'vitest';
import { fieldName } from '../../../src/commands/reckon/field-unit.ts';

test.each([
  ['radius_mm', 'radius', 'mm'],
  ['travel_mm_s', 'travel', 'mm_s'],
  ['across_N_mm', 'across', 'N_mm'],
  ['air_kg_m3', 'air', 'kg_m3'],
  ['E_MPa', 'E', 'MPa'],
  ['hands_from_body_mm', 'hands from body', 'mm'],
  ['kJ_mm', '', 'kJ_mm'],
  ['deg', '', 'deg'],
  ['volts', 'volts', 'V'],
  ['count', 'count', undefined],
  ['next_deg_low', 'next deg low', undefined],
])('%s is %s in %s', (name, words, unit) => {
  expect(fieldName(name)).toEqual({ words, unit });
});

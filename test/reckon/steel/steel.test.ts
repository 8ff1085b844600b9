import { describe, expect, test } from 'vitest';
import { STEEL_GRADES } from '../../../src/reckon/steel/steel.ts';

describe('grades of steel', () => {
  test('each yields before it breaks, and says where its figures come from', () => {
    for (const g of STEEL_GRADES) {
      expect(g.yield_MPa, g.name).toBeGreaterThan(100);
      expect(g.tensile_MPa, g.name).toBeGreaterThan(g.yield_MPa);
      expect(g.source.length, g.name).toBeGreaterThan(3);
    }
    expect(new Set(STEEL_GRADES.map(g => g.name)).size).toBe(STEEL_GRADES.length);
  });
  test('A500 grade B as its standard has it for shaped tube: 46 ksi, 58 ksi [found]', () => {
    const b = STEEL_GRADES.find(g => g.name === 'A500 Gr B');
    expect(b?.yield_MPa).toBeCloseTo(46 * 6.894757, -1);
    expect(b?.tensile_MPa).toBeCloseTo(58 * 6.894757, -1);
  });
});

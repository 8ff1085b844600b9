import { expect, test } from 'vitest';
import { heatInput, heatVerdict } from '../../../src/reckon/welding/heat.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const arc = { volts: 18, amps: 100, travel_mm_s: 5, process: 'gmaw' } as const;

test('twice as fast puts in half the heat', () => {
  const slow = kept(heatInput(arc)).kJ_mm;
  expect(slow).toBeCloseTo(0.288, 12);
  expect(kept(heatInput({ ...arc, travel_mm_s: 10 })).kJ_mm).toBeCloseTo(slow / 2, 12);
});

test('what a heat does to a 2 mm wall', () => {
  const on2 = (kJ_mm: number, process: 'gmaw' | 'smaw' = 'gmaw') => heatVerdict(kJ_mm, 2, process);
  expect(on2(0.13)).toBe('does not fuse');
  expect(on2(0.15)).toBe('on the cold side');
  expect(on2(0.2)).toBe('suits');
  expect(on2(0.26)).toBe('on the hot side');
  expect(on2(0.3)).toBe('blows holes');
  expect(on2(0.3, 'smaw')).toBe('on the hot side');
});

test.each([
  [{ volts: 0 }, 'volts'],
  [{ volts: 500 }, 'volts'],
  [{ amps: -1 }, 'amps'],
  [{ travel_mm_s: 0 }, 'travel_mm_s'],
  [{ travel_mm_s: Number.NaN }, 'travel_mm_s'],
] as const)('%o is out of range', (bad, field) => {
  const fault = refused(heatInput({ ...arc, ...bad }));
  expect(fault).toMatchObject({ code: 'out-of-range', field });
  expect(fault.accepted).toMatch(/\d/);
});

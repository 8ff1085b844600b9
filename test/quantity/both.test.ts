import { describe, expect, test } from 'vitest';
import { inBoth } from '../../src/quantity/both.ts';

describe('what was typed, in the other system', () => {
  test.each([
    [15.5, 'length', 'metric', '= 0.61 in = 5/8 in'],
    [-15.5, 'length', 'metric', '= −0.61 in = −5/8 in'],
    [3000, 'length', 'metric', `= 118.11 in = 9'-10 1/8"`],
    [25.4, 'length', 'metric', '= 1 in'],
    [0.5, 'length', 'metric', '= 0.02 in'],
    [0, 'length', 'metric', '= 0 in'],
    [816.2, 'slit', 'metric', '= 32.13 in = 32 1/8 in'],
    [1.2, 'thickness', 'metric', '= 0.047 in'],
    [2438.4, 'length', 'us', '= 2438.4 mm'],
    [1612.9, 'length', 'us', '= 1612.9 mm'],
    [3.048, 'thickness', 'us', '= 3.05 mm'],
    [3.048, 'reach', 'us', '= 3.05 m'],
    [3.05, 'reach', 'metric', `= 10'-0"`],
    [5, 'speed', 'metric', '= 11.2 mph'],
    [75, 'mass', 'us', '= 75.0 kg'],
    [16, 'temperature', 'metric', '= 61 °F'],
  ] as const)('%d as a %s typed in %s', (value, quantity, system, echo) => {
    expect(inBoth(value, quantity, system)).toBe(echo);
  });

  test('nothing is echoed where both systems write alike', () => {
    expect(inBoth(1, 'angle', 'us')).toBe('');
    expect(inBoth(25, 'count', 'metric')).toBe('');
    expect(inBoth(90, 'current', 'metric')).toBe('');
    expect(inBoth(Number.NaN, 'length', 'metric')).toBe('');
  });
});

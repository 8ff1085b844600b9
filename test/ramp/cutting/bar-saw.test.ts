import { describe, expect, test } from 'vitest';
import { passFor, usualReach } from '../../../src/ramp/cutting/bar-saw.ts';

const DEG = Math.PI / 180;
const chop = { saw: 'abrasive saw', turns_rad: 45 * DEG, through_mm: 100 } as const;

describe('whether a cut goes through in one pass', () => {
  test('square, and at an angle the saw turns to', () => {
    expect(passFor(chop, 40, 0)).toBe('one pass');
    expect(passFor(chop, 40, 45 * DEG)).toBe('one pass');
    expect(passFor(chop, 40, -45 * DEG)).toBe('one pass');
  });

  test('not steeper than it turns', () => {
    expect(passFor(chop, 40, 57 * DEG)).toBe('too steep');
    expect(passFor(usualReach('band saw'), 40, 57 * DEG)).toBe('one pass');
    expect(passFor(usualReach('hacksaw'), 40, 75 * DEG)).toBe('one pass');
  });

  test('not wider than it goes through: at 45° a side is 1.41 times as long across (derived)', () => {
    expect(passFor({ ...chop, through_mm: 50 }, 40, 0)).toBe('one pass');
    expect(passFor({ ...chop, through_mm: 50 }, 40, 30 * DEG)).toBe('one pass');
    expect(passFor({ ...chop, through_mm: 50 }, 40, 45 * DEG)).toBe('too wide');
    expect(passFor({ ...chop, through_mm: 35 }, 40, 0)).toBe('too wide');
  });

  test('a grinder goes wall by wall, whatever the angle', () => {
    expect(passFor(usualReach('grinder'), 40, 0)).toBe('wall by wall');
  });
});

import { describe, expect, test } from 'vitest';
import { tall } from '../../src/quantity/figure-text.ts';

describe('tall figures', () => {
  test('a metric length keeps its decimal, so figures in a row keep their width', () => {
    expect(tall(393.2, 'length', 'metric')).toEqual({ digits: '393.0', unit: 'mm' });
    expect(tall(816.2, 'slit', 'metric')).toEqual({ digits: '816.2', unit: 'mm' });
    expect(tall(1500, 'length', 'metric', { step: 1 })).toEqual({ digits: '1500', unit: 'mm' });
  });

  test('a US length is in inches below 24, in feet and inches above', () => {
    expect(tall(400.05, 'length', 'us')).toEqual({ digits: '15 3/4', unit: 'in' });
    expect(tall(1612.9, 'length', 'us')).toEqual({ digits: `5'-3 1/2`, unit: '"' });
    expect(tall(2438.4, 'length', 'us')).toEqual({ digits: `8'-0`, unit: '"' });
    expect(tall((23 + 31 / 32) * 25.4, 'length', 'us')).toEqual({ digits: `2'-0`, unit: '"' });
  });

  test('a US slit mark stays in inches, as one hook of the tape reads it', () => {
    expect(tall(2438.4, 'slit', 'us')).toEqual({ digits: '96', unit: 'in' });
  });

  test('signs are those of the keyboard, and zero has none', () => {
    expect(tall(-15.5, 'length', 'metric', { sign: true }).digits).toBe('-15.5');
    expect(tall(15.5, 'length', 'metric', { sign: true }).digits).toBe('+15.5');
    expect(tall(-0.2, 'length', 'metric', { sign: true }).digits).toBe('0.0');
    expect(tall(-1612.9, 'length', 'us').digits).toBe(`-5'-3 1/2`);
  });

  test('other quantities', () => {
    expect(tall(Math.PI / 180, 'angle', 'us')).toEqual({ digits: '1.0', unit: '°' });
    expect(tall(16, 'temperature', 'us')).toEqual({ digits: '61', unit: '°F' });
    expect(tall(23, 'count', 'metric')).toEqual({ digits: '23', unit: '' });
    expect(tall(7500, 'time', 'metric')).toEqual({ digits: '125', unit: 'min' });
  });

  test('every digit is one that tall figures have', () => {
    for (const quantity of ['length', 'slit', 'thickness', 'angle', 'time', 'temperature'] as const) {
      for (const system of ['metric', 'us'] as const) {
        for (const value of [-1e5, -333.3, -0.1, 0, 0.7, 45, 1e5]) {
          expect(tall(value, quantity, system, { sign: true }).digits).toMatch(/^[-+]?[\d.'/ -]+$/);
        }
      }
    }
  });
});

import { describe, expect, test } from 'vitest';
import { paint } from '../../src/reckon/coating/paint.ts';
import { kept } from '../quantity/expect-outcome.ts';

const cover = (solids_pct: number, film_um: number, loss_pct: number): number =>
  kept(paint({ area_m2: 1, solids_pct, film_um, coats: 1, loss_pct })).m2_per_litre;

/** Square feet to a US gallon, from m²/l: 1 gal = 3.785411784 l, 1 ft = 0.3048 m, both exact. */
const ft2_gal = (m2_l: number): number => (m2_l * 3.785411784) / 0.3048 ** 2;
const MIL_um = 25.4;

describe('worked examples of coating guides [found]', () => {
  test('65 % solids at 125 µm cover 5.2 m²/l', () => {
    expect(cover(65, 125, 0)).toBeCloseTo(5.2, 10);
  });

  test('65 % at 5 mil cover 208.5 ft²/gal', () => {
    expect(ft2_gal(cover(65, 5 * MIL_um, 0))).toBeCloseTo(208.5, 1);
  });

  test('52 % at 1.5 mil, with 35 % of it on the work, cover 194.5 ft²/gal', () => {
    expect(Math.abs(ft2_gal(cover(52, 1.5 * MIL_um, 65)) - 194.5)).toBeLessThan(0.2);
  });

  test('a gallon of nothing but solids covers 1604 ft² a mil thick', () => {
    expect(ft2_gal(cover(100, MIL_um, 0))).toBeCloseTo(1604.2, 1);
  });
});

test('a litre is a film: area × dry film = volume of solids [derived]', () => {
  const it = kept(paint({ area_m2: 3.4, solids_pct: 48, film_um: 60, coats: 2, loss_pct: 0 }));
  expect(it.litres * 0.48).toBeCloseTo(3.4 * 2 * 60e-6 * 1000, 12);
});

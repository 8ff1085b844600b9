import { expect, test } from 'vitest';
import { paint } from '../../../src/reckon/coating/paint.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const job = { area_m2: 3.4, solids_pct: 48, film_um: 50, coats: 2, loss_pct: 10 };

test('coats, loss and film each cost what they should', () => {
  const it = kept(paint(job));
  expect(it.m2_per_litre).toBeCloseTo(8.64, 12);
  expect(it.litres).toBeCloseTo((3.4 * 2) / 8.64, 12);
  expect(kept(paint({ ...job, coats: 4 })).litres).toBeCloseTo(2 * it.litres, 12);
  expect(kept(paint({ ...job, film_um: 100 })).litres).toBeCloseTo(2 * it.litres, 12);
  expect(kept(paint({ ...job, loss_pct: 55 })).litres).toBeCloseTo(2 * it.litres, 12);
});

test.each([
  [{ area_m2: 0 }, 'area_m2'],
  [{ solids_pct: 0 }, 'solids_pct'],
  [{ solids_pct: 101 }, 'solids_pct'],
  [{ film_um: 0 }, 'film_um'],
  [{ coats: 0 }, 'coats'],
  [{ coats: 1.5 }, 'coats'],
  [{ loss_pct: 100 }, 'loss_pct'],
  [{ loss_pct: -1 }, 'loss_pct'],
  [{ solids_pct: 1e-310 }, 'solids_pct'],
] as const)('%o is out of range', (bad, field) => {
  expect(refused(paint({ ...job, ...bad }))).toMatchObject({ code: 'out-of-range', field });
});

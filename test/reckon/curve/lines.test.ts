import fc from 'fast-check';
import { expect, test } from 'vitest';
import { linesOf } from '../../../src/reckon/curve/lines.ts';
import { pointAt } from '../../../src/reckon/curve/point-on-curve.ts';

const curve = { radius_mm: 3000, exit_rad: Math.PI / 4, deck_mm: 18, depth_mm: 40, wall_mm: 3 };

test('the lines are named and ordered from the deck to the underside', () => {
  const lines = linesOf(curve);
  expect(lines.ok && lines.value.map(line => [line.name, line.offset_mm])).toEqual([
    ['deck top', 0],
    ['rail top face', 18],
    ['hinge line', 56.5],
    ['rail bottom face', 58],
  ]);
});

test('every line is the same turn about the same centre', () => {
  const size = fc.double({ min: 1, max: 60, noNaN: true });
  fc.assert(
    fc.property(size, size, fc.double({ min: 0.01, max: 2, noNaN: true }), (deck_mm, depth_mm, exit_rad) => {
      const lines = linesOf({ radius_mm: 2500, exit_rad, deck_mm, depth_mm, wall_mm: depth_mm / 10 });
      for (const { radius_mm, arc_mm, lip_x_mm, lip_y_mm } of lines.ok ? lines.value : []) {
        expect(Math.hypot(lip_x_mm, 2500 - lip_y_mm)).toBeCloseTo(radius_mm, 8);
        const own = pointAt({ radius_mm, exit_rad }, arc_mm);
        expect(own.x_mm).toBeCloseTo(lip_x_mm, 8);
        expect(own.y_mm - (radius_mm - 2500)).toBeCloseTo(lip_y_mm, 8);
      }
      expect(lines.ok && lines.value).toHaveLength(4);
    }),
  );
});

test('a rail without a deck has its top face on the deck line', () => {
  const lines = linesOf({ ...curve, deck_mm: 0 });
  expect(lines.ok && lines.value[1]?.radius_mm).toBe(3000);
});

test('a wall that fills the tube is refused with the wall that would fit', () => {
  expect(linesOf({ ...curve, wall_mm: 20 })).toMatchObject({
    ok: false,
    fault: {
      code: 'contradiction',
      field: 'wall_mm',
      accepted: 'a wall below 20 mm, or a depth above 40 mm',
    },
  });
  expect(linesOf({ ...curve, radius_mm: 0 })).toMatchObject({ ok: false, fault: { field: 'radius_mm' } });
});

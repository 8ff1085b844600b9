import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  alongAtX,
  type Curve,
  curveLength,
  pointAt,
  yAtX,
} from '../../../src/reckon/curve/point-on-curve.ts';

const curve: Curve = { radius_mm: 3000, exit_rad: Math.PI / 4, straight_mm: 200 };

describe('a point along a line', () => {
  test('starts level at the origin', () => {
    expect(pointAt(curve, 0)).toEqual({ x_mm: 0, y_mm: 0, slope_rad: 0 });
  });

  test('ends the arc at the lip of the arc, and goes on straight from there', () => {
    const end = pointAt(curve, 3000 * (Math.PI / 4));
    expect(end.x_mm).toBeCloseTo(2121.3203, 4);
    expect(end.y_mm).toBeCloseTo(878.6797, 4);
    const lip = pointAt(curve, curveLength(curve));
    expect(Math.hypot(lip.x_mm - end.x_mm, lip.y_mm - end.y_mm)).toBeCloseTo(200, 9);
    expect(lip.slope_rad).toBe(Math.PI / 4);
  });

  test('goes on level before the start', () => {
    expect(pointAt(curve, -50)).toEqual({ x_mm: -50, y_mm: 0, slope_rad: 0 });
    expect(yAtX(curve, -50)).toBe(0);
  });

  test('steps are as long as they say, and never leave the line', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2600, noNaN: true }), along => {
        const here = pointAt(curve, along);
        const next = pointAt(curve, along + 0.01);
        expect(Math.hypot(next.x_mm - here.x_mm, next.y_mm - here.y_mm)).toBeCloseTo(0.01, 6);
        expect(Math.atan2(next.y_mm - here.y_mm, next.x_mm - here.x_mm)).toBeCloseTo(here.slope_rad, 4);
      }),
    );
  });
});

describe('the point over a place on the ground', () => {
  test('is the point along the line that stands there', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 3000, noNaN: true }),
        fc.double({ min: 0.05, max: 1.5, noNaN: true }),
        (x, exit_rad) => {
          const line = { radius_mm: 3000, exit_rad };
          const point = pointAt(line, alongAtX(line, x) as number);
          expect(point.x_mm).toBeCloseTo(x, 7);
          expect(point.y_mm).toBeCloseTo(yAtX(line, x) as number, 5);
        },
      ),
    );
  });

  test('is not there where the line never comes', () => {
    const steep = { radius_mm: 1000, exit_rad: 2 };
    expect(alongAtX(steep, 1000)).toBeCloseTo(1000 * (Math.PI / 2), 9);
    expect(alongAtX(steep, 1000.1)).toBeUndefined();
    expect(yAtX(steep, 1000.1)).toBeUndefined();
  });

  test('past 90° is the first, lower one', () => {
    const steep = { radius_mm: 1000, exit_rad: 2 };
    expect(yAtX(steep, 950)).toBeLessThan(1000);
  });
});

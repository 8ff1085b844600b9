/**
 * The offset lines of the reference rail: R 3000 to the deck top, 45°, 18 mm deck, tube 40×40×3.
 * All values are derived (parallel circles, textbook); an independent check by distances between circles stands below.
 */
import { describe, expect, test } from 'vitest';
import { linesOf } from '../../src/reckon/curve/lines.ts';
import { alongAtX, pointAt, yAtX } from '../../src/reckon/curve/point-on-curve.ts';

const outcome = linesOf({ radius_mm: 3000, exit_rad: Math.PI / 4, deck_mm: 18, depth_mm: 40, wall_mm: 3 });
const lines = outcome.ok ? outcome.value : [];

describe('the lines of the reference rail [derived]', () => {
  test.each([
    ['deck top', 3000, 2356.19, 2121.32, 878.68],
    ['rail top face', 3018, 2370.33, 2134.05, 865.95],
    ['hinge line', 3056.5, 2400.57, 2161.27, 838.73],
    ['rail bottom face', 3058, 2401.75, 2162.33, 837.67],
  ])('%s', (name, radius, arc, lipX, lipY) => {
    const line = lines.find(one => one.name === name);
    expect(line?.radius_mm).toBeCloseTo(radius, 9);
    expect(line?.arc_mm).toBeCloseTo(arc, 2);
    expect(line?.lip_x_mm).toBeCloseTo(lipX, 2);
    expect(line?.lip_y_mm).toBeCloseTo(lipY, 2);
  });

  test('the hinge line is 44 mm longer than the deck', () => {
    expect((lines[2]?.arc_mm ?? 0) - (lines[0]?.arc_mm ?? 0)).toBeCloseTo(44.4, 1);
  });
});

test('at 1500 along the ground the wrong edge is 66.76 mm out, not 58 [derived]', () => {
  const deck = yAtX({ radius_mm: 3000, exit_rad: Math.PI / 4 }, 1500) as number;
  const bottom = (yAtX({ radius_mm: 3058, exit_rad: Math.PI / 4 }, 1500) as number) - 58;
  expect(deck).toBeCloseTo(401.92, 2);
  expect(bottom).toBeCloseTo(335.16, 2);
  expect(deck - bottom).toBeCloseTo(66.76, 2);
});

test('the rail begins where its bottom face reaches the ground: 11.18°, 592.8 along [derived]', () => {
  const bottom = { radius_mm: 3058, exit_rad: Math.PI / 4 };
  // The bottom face lies 58 below the deck line at the start, so it comes up through the ground where it has risen 58.
  const along = alongAtX(bottom, 592.8) as number;
  const { y_mm, slope_rad } = pointAt(bottom, along);
  expect(y_mm).toBeCloseTo(58, 1);
  expect((slope_rad * 180) / Math.PI).toBeCloseTo(11.18, 2);
});

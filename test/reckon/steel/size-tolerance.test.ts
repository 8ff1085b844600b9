import { expect, test } from 'vitest';
import { soldAs } from '../../../src/reckon/steel/size-tolerance.ts';

const square = (side: number, wall_mm: number) => ({ depth_mm: side, width_mm: side, wall_mm });
const LISTED = [square(40, 2.5), square(40, 3), square(40, 4), square(50, 3)];

// Wall within a tenth, sides within 1 % and at least 0.5 mm (EN 10219-2 [found: two makers' tables]).
test('a wall of 2.9 mm is a tube of 3 mm as it came, and so is one of 3.3 mm', () => {
  expect(soldAs(square(40, 2.9), LISTED)).toEqual(square(40, 3));
  expect(soldAs(square(40.4, 3.3), LISTED)).toEqual(square(40, 3));
});

test('between two sizes the nearer one it is within reach of', () => {
  expect(soldAs(square(40, 2.74), LISTED)).toEqual(square(40, 2.5));
  expect(soldAs(square(40, 2.76), LISTED)).toEqual(square(40, 3));
  expect(soldAs(square(40, 2.5), LISTED)).toEqual(square(40, 2.5));
});

test('past the tolerance it is none of them', () => {
  expect(soldAs(square(40, 3.5), LISTED)).toBeNull();
  expect(soldAs(square(41, 3), LISTED)).toBeNull();
  expect(soldAs(square(45, 3), LISTED)).toBeNull();
});

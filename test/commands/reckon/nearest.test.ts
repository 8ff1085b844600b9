import { expect, test } from 'vitest';
import { nearest } from '../../../src/commands/reckon/nearest.ts';

const FIELDS = ['height_mm', 'run_mm', 'radius_mm', 'exit_deg', 'arc_mm', 'chord_mm', 'sagitta_mm'];

test.each([
  ['radius', 'radius_mm'],
  ['radius-mm', 'radius_mm'],
  ['hieght_mm', 'height_mm'],
  ['Exit_Deg', 'exit_deg'],
  ['exit', 'exit_deg'],
  ['banana', undefined],
  ['', undefined],
])('%s is taken for %s', (typed, meant) => {
  expect(nearest(typed, FIELDS)).toBe(meant);
});

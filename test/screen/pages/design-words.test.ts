import { describe, expect, test } from 'vitest';
import { designInBoth, designWords } from '../../../src/screen/pages/design-words.ts';

describe('what a design field was set to', () => {
  test('is written in the units of the build', () => {
    expect(designWords('shape', { height: 600, exit: Math.PI / 6 }, 'metric')).toBe(
      'height 600 mm, exit 30.0°',
    );
    expect(designWords('width', 1219.2, 'us')).toBe(`4'-0"`);
    expect(designWords('rider', 90, 'metric')).toMatch(/^90(\.0)? kg$/);
  });

  test('shows a section as a caliper reads it, all round', () => {
    expect(designWords('tube', { depth_mm: 40, width_mm: 40, wall_mm: 2.9 }, 'us')).toBe(
      'depth 1.575 in, width 1.575 in, wall 0.114 in',
    );
    expect(designWords('door', { width_mm: 1524, height_mm: 2032 }, 'us')).toBe(`width 5'-0", height 6'-8"`);
  });

  test('says a choice as it was chosen', () => {
    expect(designWords('deck', { kind: 'sheet', layer_mm: 9, layers: 2 }, 'metric')).toBe(
      'sheet, layer 9.00 mm, layers 2',
    );
    expect(designWords('first', true, 'metric')).toBe('yes');
    expect(designWords('use', 'bike', 'metric')).toBe('bike');
  });

  test('is said in both systems where it is kept', () => {
    expect(designInBoth('shape', { height: 609.6, exit: Math.PI / 6 }, 'us')).toBe(
      `height 2'-0" = 609.6 mm, exit 30.0°`,
    );
    expect(designInBoth('tube', { depth_mm: 40, width_mm: 40, wall_mm: 2.9 }, 'metric')).toBe(
      '40.00 x 40.00 x 2.90 mm = 1.575 x 1.575 x 0.114 in',
    );
    expect(designInBoth('first', true, 'us')).toBe('yes');
  });
});

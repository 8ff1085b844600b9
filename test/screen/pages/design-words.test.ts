import { describe, expect, test } from 'vitest';
import { designWords } from '../../../src/screen/pages/design-words.ts';

describe('what a design field was set to', () => {
  test('is written in the units of the build', () => {
    expect(designWords('shape', { height: 600, exit: Math.PI / 6 }, 'metric')).toBe(
      'height 600 mm, exit 30.0°',
    );
    expect(designWords('width', 1219.2, 'us')).toBe('48 in');
    expect(designWords('rider', 90, 'metric')).toMatch(/^90(\.0)? kg$/);
  });

  test('says a choice as it was chosen', () => {
    expect(designWords('deck', { kind: 'sheet', layer_mm: 9, layers: 2 }, 'metric')).toBe(
      'sheet, layer 9.00 mm, layers 2',
    );
    expect(designWords('first', true, 'metric')).toBe('yes');
    expect(designWords('use', 'bike', 'metric')).toBe('bike');
  });
});

import { describe, expect, test } from 'vitest';
import { say } from '../../src/words/say.ts';
import type { Content } from '../../src/words/schema.ts';

const content = {
  says: {
    speed: 'A novice comes at {12 to 18 km/h|7 to 11 mph}, the practised at up to {26|16}.',
    cut: 'Cut {long}, {0.5 mm|0.02 in} over.',
  },
} as unknown as Content;

describe('a text with a measure for each system', () => {
  test('says the one of the build, and fills its marks', () => {
    expect(say({ content, system: 'metric' }, { words: 'says.speed' })).toBe(
      'A novice comes at 12 to 18 km/h, the practised at up to 26.',
    );
    expect(say({ content, system: 'us' }, { words: 'says.speed' })).toBe(
      'A novice comes at 7 to 11 mph, the practised at up to 16.',
    );
    const fills = { long: { v: 1270, as: 'length' } } as const;
    expect(say({ content, system: 'us' }, { words: 'says.cut', fills })).toBe(`Cut 4'-2", 0.02 in over.`);
  });
});

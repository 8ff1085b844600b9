import { describe, expect, test } from 'vitest';
import { settle } from '../../src/ramp/settle.ts';
import { type RailPart, railTurn, TURN } from '../../src/stages/order.ts';

const design = (sequence: 'in step' | 'one after the other') => {
  const made = settle('test', 'metric', { sequence });
  if (!made.ok) throw new Error(made.fault.message);
  return made.value;
};

/** What one rail goes through, in its order. */
const LIFE: readonly RailPart[] = [
  ...[1, 2, 3].flatMap(third =>
    (['mark', 'saw', 'deburr', 'close', 'read'] as const).map(part => ({ third, part })),
  ),
  ...(['survey', 'weld', 'cold'] as const).flatMap(after =>
    [0, 1, 9, 17].map(at => ({ after, at }) as const),
  ),
];
const TWELVE = Array.from({ length: 12 }, (_, i) => i);

describe('twelve rails take their turns', () => {
  test('in step: every rail is through a third before any begins the next, and through a round before the next', () => {
    const d = design('in step');
    const thirds = [1, 2, 3].map(third =>
      TWELVE.flatMap(i => LIFE.filter(p => 'third' in p && p.third === third).map(p => railTurn(d, i, p))),
    );
    expect(Math.max(...thirds[0]!)).toBeLessThan(Math.min(...thirds[1]!));
    expect(Math.max(...thirds[1]!)).toBeLessThan(Math.min(...thirds[2]!));
    expect(Math.max(...thirds[2]!)).toBeLessThan(railTurn(d, 0, { after: 'survey' }));
    for (const after of ['survey', 'weld', 'cold'] as const)
      expect(railTurn(d, 11, { after, at: 3 })).toBeLessThan(railTurn(d, 0, { after, at: 4 }));
  });

  test('one after the other: a rail is cold before the next is marked', () => {
    const d = design('one after the other');
    for (const i of TWELVE.slice(1))
      expect(railTurn(d, i - 1, { after: 'cold', at: 9 })).toBeLessThan(
        railTurn(d, i, { third: 1, part: 'mark' }) - 8,
      );
  });

  test.each(['in step', 'one after the other'] as const)(
    '%s: a rail never steps back, and all are done before the fit',
    sequence => {
      const d = design(sequence);
      for (const i of TWELVE) {
        const turns = LIFE.map(p => railTurn(d, i, p));
        expect(turns).toEqual([...turns].sort((a, b) => a - b));
        expect(Math.max(...turns)).toBeLessThan(TURN.fit);
        expect(Math.min(...turns)).toBeGreaterThan(TURN.testWeld);
      }
    },
  );
});

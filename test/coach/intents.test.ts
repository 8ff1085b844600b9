import { describe, expect, test } from 'vitest';
import { asIntent } from '../../src/coach/intents.ts';

/** What a line of `log` is refused with: where, and what would do. */
const refused = (line: unknown): { code: string; at: string; says: string } => {
  const read = asIntent(line);
  if (read.ok) throw new Error('taken');
  return { code: read.code, at: read.at, says: read.says };
};

describe('a line that is no act', () => {
  test('names the field that is missing, strange or of the wrong kind, and what would do there', () => {
    expect(refused({ do: 'remark' })).toEqual({ code: 'missing-field', at: 'text', says: 'some text' });
    expect(refused({ do: 'remark', text: 5 })).toEqual({
      code: 'unknown-field',
      at: 'text',
      says: 'some text',
    });
    expect(refused({ do: 'remark', text: 'a', bogus: 1 })).toEqual({
      code: 'unknown-field',
      at: 'bogus',
      says: 'do, text, step',
    });
    expect(refused({ do: 'remark', text: '' }).says).toBe('a few words: it is empty');
    expect(refused({ do: 'remark', text: 'y'.repeat(3000) }).says).toBe('at most 2000 signs');
    expect(refused({ do: 'piece-fate', piece: 'p', fate: 'lost' }).says).toBe(
      'one of fitted, welded, spoiled',
    );
    expect(refused({ do: 'note-slit', rail: 'A', slit: 1.5, note: 'moved' })).toMatchObject({
      at: 'slit',
      says: 'a whole number',
    });
    expect(refused({ do: 'offsets', values: [1, null] })).toEqual({
      code: 'unknown-field',
      at: 'values.1',
      says: 'a number, or text with a number and its unit',
    });
    expect(refused({ do: 'offsets', values: 3 }).says).toBe('a list');
    expect(refused({ do: 'offsets', values: [1], correct: 'yes' }).says).toBe('true or false');
    expect(refused({ do: 'read', step: 'plan/curve', ask: 'x' }).code).toBe('missing-field');
  });

  test.each([null, 5, [], 'tick', { do: 'jump' }, { do: '__proto__' }, {}])('%j has no act in it', line => {
    expect(refused(line)).toMatchObject({ code: 'unknown-field', at: 'do' });
    expect(refused(line).says).toContain('remark');
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isRecord, type Raw } from '../../../src/commands/reckon/raw.ts';
import { readJson } from '../../../src/commands/reckon/read-json.ts';

/** What was read as plain values, to hold against JSON.parse. */
const plain = (raw: Raw): unknown => {
  if (isRecord(raw)) return Object.fromEntries(raw.entries.map(([name, value]) => [name, plain(value)]));
  return Array.isArray(raw) ? raw.map(plain) : raw;
};

const read = (text: string): unknown => {
  const outcome = readJson(text);
  if (!outcome.ok) throw new Error(outcome.fault.message);
  return plain(outcome.value);
};

const faultOf = (text: string) => {
  const outcome = readJson(text);
  if (outcome.ok) throw new Error('was not refused');
  return outcome.fault;
};

describe('JSON', () => {
  test('is read as any other reader reads it', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), fc.constantFrom(undefined, 2, '\t'), (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        expect(read(text)).toEqual(JSON.parse(text));
      }),
    );
  });

  test('is refused where any other reader refuses it', () => {
    const scraps = fc.array(
      fc.constantFrom('{', '}', '[', ']', ',', ':', '"a"', '1', '-', '.5', ' ', 'true', '"\\x"', '01'),
      {
        maxLength: 8,
      },
    );
    fc.assert(
      fc.property(scraps, parts => {
        const text = parts.join('');
        let good = true;
        try {
          JSON.parse(text);
        } catch {
          good = false;
        }
        expect(readJson(text).ok).toBe(good);
      }),
      { numRuns: 2000 },
    );
  });

  test("keeps the order and the number of a record's entries", () => {
    const outcome = readJson('{"b": 1, "5": 2, "b": 3}');
    expect(outcome.ok && isRecord(outcome.value) && outcome.value.entries).toEqual([
      ['b', 1],
      ['5', 2],
      ['b', 3],
    ]);
  });

  test('takes NaN and Infinity as other languages write them, to be refused at their own field', () => {
    expect(read('[NaN, -Infinity]')).toEqual([Number.NaN, Number.NEGATIVE_INFINITY]);
  });

  test('may begin with the mark some editors write', () => {
    expect(read('\uFEFF{"a": 1}')).toEqual({ a: 1 });
  });

  test('reads a long text without running out of stack', () => {
    const long = 'steel '.repeat(400_000);
    expect(read(JSON.stringify(long))).toBe(long);
  });
});

describe('what is not JSON', () => {
  test('is refused with the place it goes wrong', () => {
    expect(faultOf('{\n  "radius_mm": 3000,\n}')).toEqual({
      code: 'missing-field',
      field: null,
      message: 'The input is not JSON: at line 3, column 1 stands "}".',
      accepted: 'a name or text in double quotes there',
    });
    expect(faultOf('{"a": 1').message).toContain('stands the end');
    expect(faultOf('').message).toContain('empty');
    expect(faultOf("{'a': 1}").message).toContain('column 2');
  });

  test('is refused when nested without end', () => {
    expect(faultOf('['.repeat(100_000)).code).toBe('too-large');
  });
});

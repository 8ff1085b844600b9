import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { crc32, sumOf } from '../../src/build/crc32.ts';
import {
  entryText,
  LONGEST_LINE,
  readLine,
  type StoredEntry,
  writeHeader,
  writeLine,
} from '../../src/build/journal-line.ts';

const AT = '2026-05-01T18:00:00.000Z';
const tick: StoredEntry = {
  id: '0b6f0f3e-51ce-4a0a-9d5c-0d6c1a5f1f00',
  n: 12,
  v: 1,
  at: AT,
  kind: 'step-ticked',
  step: 'cut/cut-rail@A',
  basis: { 'rail-length': 2413.5 },
};

/** Anything JSON can hold, with the sorts of text people type. */
const value = fc
  .jsonValue({ maxDepth: 3, stringUnit: 'binary' })
  .map(v => JSON.parse(JSON.stringify(v)) as unknown);
const keys = fc
  .string({ unit: 'grapheme', minLength: 1, maxLength: 12 })
  .filter(k => !['id', 'n', 'v', 'at', 'kind', 'replaces', 'sum', '__proto__', 'format'].includes(k));
const entry: fc.Arbitrary<StoredEntry> = fc
  .record({
    id: fc.uuid(),
    n: fc.integer({ min: 1, max: 100_000 }),
    v: fc.integer({ min: 1, max: 9 }),
    kind: fc.constantFrom('step-ticked', 'remarked', 'design-set'),
    more: fc.dictionary(keys, value, { maxKeys: 4 }),
  })
  .map(({ more, ...stamp }) => ({ ...more, ...stamp, at: AT }))
  // JSON.parse would make a prototype of it; a journal never holds one.
  .filter(e => !JSON.stringify(e).includes('"__proto__"'));

describe('CRC-32', () => {
  // Published check value of CRC-32 (ISO 3309 / ITU-T V.42, the polynomial of Ethernet and zlib): "123456789" -> CBF43926 [memory].
  test('gives the published check value', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
    expect(sumOf('123456789')).toBe('cbf43926');
  });

  // The IEND chunk of every PNG file ends in AE 42 60 82, the CRC of its four type bytes (PNG specification, IEND) [memory].
  test('gives the sum that closes every PNG file', () => {
    expect(sumOf('IEND')).toBe('ae426082');
  });

  test('of nothing is eight noughts', () => expect(sumOf('')).toBe('00000000'));
});

describe('a line', () => {
  test('is the object, its stamp first, the rest sorted, its sum last', () => {
    expect(
      writeLine({ kind: 'stopped', at: AT, v: 1, step: 'cut/x', n: 3, id: 'a1', basis: { b: 1, a: 2 } }),
    ).toMatch(
      /^\{"id":"a1","n":3,"v":1,"at":"2026-05-01T18:00:00\.000Z","kind":"stopped","basis":\{"a":2,"b":1\},"step":"cut\/x","sum":"[0-9a-f]{8}"\}$/,
    );
  });

  test('is written as the example in its rule shows', () => {
    expect(writeLine({ id: 'a1', n: 1, v: 1, at: '2026-05-01T18:00:00Z', kind: 'stopped' })).toBe(
      '{"id":"a1","n":1,"v":1,"at":"2026-05-01T18:00:00Z","kind":"stopped","sum":"e7214591"}',
    );
  });

  test('is read as it was written, whatever it holds', () => {
    fc.assert(
      fc.property(entry, e => {
        const reading = readLine(writeLine(e));
        expect(reading.is).toBe('entry');
        if (reading.is === 'entry') expect(entryText(reading.entry)).toBe(entryText(e));
      }),
    );
  });

  test('never holds a line break', () => {
    fc.assert(
      fc.property(entry, e => {
        expect(writeLine(e)).not.toMatch(/[\r\n]/);
      }),
    );
  });

  test('is the same for the same entry in whatever order its fields were set', () => {
    fc.assert(
      fc.property(entry, e => {
        const turned = Object.fromEntries(Object.entries(e).reverse()) as StoredEntry;
        expect(writeLine(turned)).toBe(writeLine(e));
      }),
    );
  });

  test('survives the line ending of another system', () => {
    expect(readLine(`${writeLine(tick)}\r`)).toMatchObject({ is: 'entry', entry: tick });
  });

  test('with a number that is not finite cannot be written', () => {
    expect(() => writeLine({ ...tick, basis: { length: Number.NaN } })).toThrow(/not finite/);
    expect(() => writeLine({ ...tick, basis: { length: Number.POSITIVE_INFINITY } })).toThrow(/not finite/);
  });

  test('leaves out what is undefined and refuses what is no JSON', () => {
    expect(writeLine({ ...tick, replaces: undefined })).toBe(writeLine(tick));
    expect(() => writeLine({ ...tick, how: () => 1 })).toThrow(/cannot keep/);
    expect(() => writeLine({ ...tick, sum: 'x' })).toThrow(/belongs to the line/);
  });
});

describe('a damaged line', () => {
  const flips = (line: string): string[] => {
    const bytes = Buffer.from(line);
    return Array.from({ length: bytes.length * 8 }, (_, bit) => {
      const flipped = Buffer.from(bytes);
      flipped[bit >> 3]! ^= 1 << (bit & 7);
      return flipped.toString('utf8');
    });
  };

  test('is noticed for every single bit flipped anywhere in it', () => {
    const line = writeLine({ ...tick, note: 'Größe 63 ½ in — “ok”' });
    const read = flips(line).map(readLine);
    expect(read.length).toBeGreaterThan(1500);
    expect(read.filter(r => r.is !== 'damaged')).toEqual([]);
  });

  test('is noticed for any flipped bit of any entry', () => {
    fc.assert(
      fc.property(entry, fc.nat(), (e, at) => {
        const bytes = Buffer.from(writeLine(e));
        bytes[(at >> 3) % bytes.length]! ^= 1 << (at & 7);
        expect(readLine(bytes.toString('utf8')).is).toBe('damaged');
      }),
    );
  });

  test('is noticed wherever it was torn off', () => {
    const line = writeLine(tick);
    for (let length = 0; length < line.length; length++) {
      expect(readLine(line.slice(0, length)).is, `torn after ${length}`).toBe('damaged');
    }
  });

  test('says what is wrong with it', () => {
    const line = writeLine(tick);
    expect(readLine('what is this')).toEqual({ is: 'damaged', reason: 'no-sum' });
    expect(readLine(line.replace('2413.5', '2431.5'))).toEqual({ is: 'damaged', reason: 'wrong-sum' });
    const bare = (body: string): string => `${body.slice(0, -1)},"sum":"${sumOf(body)}"}`;
    expect(readLine(bare('{"id":}'))).toEqual({ is: 'damaged', reason: 'not-json' });
    expect(readLine(bare('{"a":1e999}'))).toEqual({ is: 'damaged', reason: 'not-a-number' });
    expect(readLine(bare(`{"a":${'['.repeat(5000)}${']'.repeat(5000)}}`))).toEqual({
      is: 'damaged',
      reason: 'not-a-number',
    });
    expect(readLine(bare('{"__proto__":{"x":1}}'))).toEqual({ is: 'damaged', reason: 'not-a-number' });
    expect(readLine(' '.repeat(LONGEST_LINE + 1))).toEqual({ is: 'damaged', reason: 'too-long' });
  });

  test('is told from a whole line of a newer program', () => {
    const bare = (body: string): string => `${body.slice(0, -1)},"sum":"${sumOf(body)}"}`;
    expect(readLine(bare('{"id":"a","n":"twelve","v":1,"at":"x","kind":"k"}')).is).toBe('newer');
    expect(readLine(bare('{"id":"a","n":0,"v":1,"at":"x","kind":"k"}')).is).toBe('newer');
    expect(readLine(bare('{"format":"curvewright-build","version":"2.0"}')).is).toBe('newer');
  });
});

test('the first line is read back as the header', () => {
  const header = { format: 'curvewright-build', version: 1, build: 'b-1', created: AT } as const;
  expect(writeHeader(header)).toMatch(
    /^\{"format":"curvewright-build","version":1,"build":"b-1","created":"[^"]+","sum":"/,
  );
  expect(readLine(writeHeader(header))).toEqual({ is: 'header', header });
});

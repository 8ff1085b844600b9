import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { safeName } from '../../src/machine/safe-name.ts';

describe('the file of a build', () => {
  test.each([
    ['Quarry Lane kicker', 'quarry-lane-kicker'],
    ['  Rampe für Jörg  ', 'rampe-fur-jorg'],
    ['Große Straße', 'grosse-strasse'],
    ['Øye & Łódź', 'oye-lodz'],
    ['Dad’s 5 1/2 ft ramp', 'dads-5-1-2-ft-ramp'],
    ['../../etc/passwd', 'etc-passwd'],
    ['C:\\ramp', 'c-ramp'],
    ['.hidden', 'hidden'],
    ['..', 'build'],
    ['', 'build'],
    ['💥💥', 'build'],
    ['---', 'build'],
    ['CON', 'con-build'],
    ['com¹', 'com1-build'],
    ['Aux', 'aux-build'],
    ['nul.jsonl', 'nul-jsonl'],
    ['Shop', 'shop-build'],
    ['Рампа 1', 'рампа-1'],
    ['が坂', 'が坂'],
    ['\x1b[31mred\x1b[0m', 'red'],
    ['a\0b\nc', 'ab-c'],
  ])('of %j is %j', (name, file) => expect(safeName(name)).toBe(file));

  test('cuts a long name at a whole letter', () => {
    expect(safeName('x'.repeat(500))).toBe('x'.repeat(80));
    expect(Buffer.byteLength(safeName('坂'.repeat(500)))).toBeLessThanOrEqual(80);
    expect(safeName('坂'.repeat(500))).toMatch(/^坂+$/);
  });

  test('is never empty, never a path, never hidden, never a device, never too long, and its own safe name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 120 }), name => {
        const file = safeName(name);
        expect(file).toMatch(/^[\p{L}\p{N}][\p{L}\p{M}\p{N}-]*$/u);
        expect(file).not.toMatch(/^(con|prn|aux|nul|com\d|lpt\d|shop)$|-$/);
        expect(Buffer.byteLength(file)).toBeLessThanOrEqual(90);
        expect(safeName(file)).toBe(file);
      }),
      { numRuns: 500 },
    );
  });
});

import { describe, expect, test } from 'vitest';
import { convert } from '../../src/quantity/convert.ts';
import { readAs } from '../../src/quantity/read-unit.ts';
import { foreignUnit } from '../../src/quantity/unit-spelling.ts';
import { UNITS, type Unit, type UnitCode } from '../../src/quantity/units.ts';
import { innerUnit, usualLabel } from '../../src/quantity/usual.ts';
import { kept } from './expect-outcome.ts';

const units = Object.entries<Unit>(UNITS) as [UnitCode, Unit][];
const spelled = units.flatMap(([code, unit]) =>
  unit.label === '' ? [] : [code, unit.label, ...(unit.also ?? [])].map(text => [text, code] as const),
);

describe('the table of units', () => {
  test.each(spelled)('"7 %s" is 7 %s', (text, code) => {
    expect(kept(readAs(`7 ${text}`, code))).toBe(7);
    expect(kept(readAs(`7${text}`, code))).toBe(7);
  });

  test('no spelling is that of two units', () => {
    const owners = new Map<string, UnitCode>();
    for (const [text, code] of spelled) {
      expect(owners.get(text) ?? code, text).toBe(code);
      owners.set(text, code);
      expect(foreignUnit(text.replace('µ', 'u')), text).toBe(code);
    }
  });

  test('every unit says where its factor is from', () => {
    for (const [code, { source }] of units) expect(source.length, code).toBeGreaterThan(5);
  });

  test.each(units)('%s there and back', code => {
    for (const other of units.filter(([, unit]) => unit.kind === UNITS[code].kind).map(([name]) => name)) {
      expect(convert(convert(12.5, code, other), other, code)).toBeCloseTo(12.5, 9);
    }
  });

  test('asking across kinds is a bug', () => {
    expect(() => convert(1, 'mm', 'kg')).toThrow();
  });

  test('a field can say what a bare number counts in', () => {
    expect(usualLabel('length', 'metric')).toBe('mm');
    expect(usualLabel('length', 'us')).toBe('in');
    expect(usualLabel('count', 'us')).toBe('');
    expect(innerUnit('moment')).toBe('Nmm');
  });
});

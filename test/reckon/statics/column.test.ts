import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { aiscColumn, BUCKLING_CURVES, enColumn, type Strut } from '../../../src/reckon/statics/column.ts';

const STRUT: Strut = {
  yield_MPa: 235,
  E_MPa: 210_000,
  area_mm2: 421,
  gyration_mm: 14.9,
  length_mm: 1200,
  k: 1,
};

describe('AISC', () => {
  test('the two branches meet where Fy/Fe is 2.25', () => {
    const length = STRUT.gyration_mm * Math.PI * Math.sqrt((2.25 * STRUT.E_MPa) / STRUT.yield_MPa);
    const [squat, slender] = [length * 0.99999, length * 1.00001].map(length_mm => {
      const column = aiscColumn({ ...STRUT, length_mm });
      return column.ok ? column.value.critical_MPa : Number.NaN;
    });
    // 0.658^2.25 against 0.877/2.25: the book's own step is a thousandth.
    expect(squat! / slender!).toBeCloseTo(1, 2);
  });

  test('a stub bears its yield', () => {
    const column = aiscColumn({ ...STRUT, length_mm: 1 });
    if (!column.ok) throw new Error(column.fault.message);
    expect(column.value.critical_MPa).toBeCloseTo(235, 2);
  });
});

describe('EN 1993', () => {
  test('up to a slenderness of 0.2 nothing is lost', () => {
    const column = enColumn({
      ...STRUT,
      length_mm: 0.19 * STRUT.gyration_mm * Math.PI * Math.sqrt(STRUT.E_MPa / STRUT.yield_MPa),
    });
    if (!column.ok) throw new Error(column.fault.message);
    expect(column.value.reduction).toBe(1);
    expect(column.value.slenderness).toBeCloseTo(0.19, 9);
  });

  test('a better curve bears more', () => {
    const strengths = Object.keys(BUCKLING_CURVES).map(curve => {
      const column = enColumn(STRUT, curve as keyof typeof BUCKLING_CURVES);
      return column.ok ? column.value.design_N : Number.NaN;
    });
    expect(strengths).toEqual([...strengths].sort((a, b) => b - a));
    expect(new Set(strengths).size).toBe(5);
  });
});

test('by either book a strut bears less the longer it is, and never more than Euler or its yield', () => {
  const number = fc.double({ min: 10, max: 9000, noNaN: true });
  fc.assert(
    fc.property(number, number, (one, two) => {
      const [short, long] = [Math.min(one, two), Math.max(one, two)];
      for (const nominal of [
        (length_mm: number) => {
          const column = aiscColumn({ ...STRUT, length_mm });
          if (!column.ok) throw new Error(column.fault.message);
          expect(column.value.critical_MPa).toBeLessThanOrEqual(column.value.elastic_MPa);
          return column.value.nominal_N;
        },
        (length_mm: number) => {
          const column = enColumn({ ...STRUT, length_mm });
          if (!column.ok) throw new Error(column.fault.message);
          expect(column.value.design_N).toBeLessThanOrEqual(column.value.elastic_N);
          return column.value.design_N;
        },
      ]) {
        expect(nominal(long)).toBeLessThanOrEqual(nominal(short) * (1 + 1e-12));
        expect(nominal(short)).toBeLessThanOrEqual(235 * 421);
      }
    }),
  );
});

test.each([
  [{ length_mm: 0 }, 'length_mm', 'out-of-range'],
  [{ gyration_mm: -1 }, 'gyration_mm', 'out-of-range'],
  [{ E_MPa: Number.NaN }, 'E_MPa', 'not-a-number'],
  [{ k: 0 }, 'k', 'out-of-range'],
  [{ length_mm: 1e-200, gyration_mm: 1e150 }, null, 'out-of-range'],
])('%j is refused', (change, field, code) => {
  expect(aiscColumn({ ...STRUT, ...change })).toMatchObject({ ok: false, fault: { field, code } });
});

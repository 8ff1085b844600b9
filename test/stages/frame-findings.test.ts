// Diagonals of a frame pushed out of square: sinγ = (d₁² − d₂²)/(4·W·L), derived from the two cosine rules; equal diagonals also
// fit a frame that is wider at one end (US Army lesson OD1653 makes the same caveat), so widths are read first.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { baseLength, frameFindings, frameShape } from '../../src/stages/frame-findings.ts';
import type { Fill } from '../../src/stages/sheet.ts';
import { read, set, tick } from './doings.ts';
import { situation } from './frame-doings.ts';

const width = (entry: number, lip: number) => [
  read('assemble/width', 'entry', entry),
  read('assemble/width', 'lip', lip),
];
const diagonals = (d1: number, d2: number) => [
  read('assemble/diagonals', 'd1', d1),
  read('assemble/diagonals', 'd2', d2),
];
const four = (step: string, name: string, values: readonly number[]) =>
  values.map((v, k) => read(step, `${name}${k + 1}`, v));
const pads = (...z: number[]) => four('assemble/pads', 'z', z);
const corners = (...c: number[]) => four('assemble/twist', 'c', c);
const amount = (fill: Fill | undefined): number => (typeof fill === 'object' ? fill.v : Number.NaN);
const found = (...doings: Parameters<typeof situation>) => frameFindings(situation(...doings));

describe('diagonals', () => {
  test('a frame sheared by any small angle gives that angle back, and half the difference to push', () => {
    const L = baseLength(situation());
    fc.assert(
      fc.property(fc.double({ min: -0.02, max: 0.02, noNaN: true }), lean => {
        // Front corners at (0, 0) and (1200, 0); the rear ones slid sideways with the base rails' lengths kept.
        const [x, y] = [L * Math.sin(lean), L * Math.cos(lean)];
        const d1 = Math.hypot(1200 + x, y);
        const d2 = Math.hypot(1200 - x, y);
        const shape = frameShape(situation(...width(1200, 1200), ...diagonals(d1, d2))).diagonals;
        expect(shape?.skew_rad).toBeCloseTo(Math.abs(lean), 9);
        expect(shape?.slid_mm).toBeCloseTo(Math.abs(x), 6);
        expect(shape?.shorten_mm).toBeCloseTo(Math.abs(d1 - d2) / 2, 9);
        if (Math.abs(lean) > 1e-6) expect(shape?.long).toBe(lean > 0 ? '1–3' : '2–4');
      }),
      { numRuns: 60 },
    );
  });

  test('within 4 mm nothing is said to a novice; a careful shop hears of 4', () => {
    expect(found(...width(1200, 1200), ...diagonals(1794, 1790))).toEqual([]);
    expect(
      found(set('tolerance', 'careful shop'), ...width(1200, 1200), ...diagonals(1794, 1790)).map(f => f.key),
    ).toEqual(['diagonals-differ']);
  });

  test('11 mm apart: the strap takes out half of it and a tenth more, all ways with the difference left after', () => {
    const finding = found(...width(1200, 1200), ...diagonals(1796, 1785))[0];
    expect(finding).toMatchObject({
      severity: 'fix',
      tall: { v: 11, as: 'length' },
      limit: { v: 4, as: 'length' },
      blocks: ['assemble/weld-joints', 'assemble/weld'],
    });
    expect(finding?.fills?.shorten).toEqual({ v: 5.5, as: 'length' });
    const strap = finding?.offers.find(o => o.remedy === 'square-strap');
    expect(amount(strap?.fills?.past)).toBeCloseTo(6.05, 9);
    expect(strap?.after).toMatchObject({ within: true });
    expect(strap?.after?.v).toBeCloseTo(1.1, 9);
    expect(strap?.plan).toMatchObject({ long: '1–3', differ_mm: 11, shorten_mm: 5.5 });
    const leave = finding?.offers.find(o => o.remedy === 'leave-skew');
    expect(leave).toMatchObject({ minutes: 0, after: { v: 11, within: false } });
    expect(finding?.offers.length).toBeGreaterThanOrEqual(3);
  });

  test('once it is welded a strap squares nothing: it takes a saw', () => {
    const remedies = found(
      ...width(1200, 1200),
      ...diagonals(1796, 1785),
      tick('assemble/weld'),
    )[0]?.offers.map(o => o.remedy);
    expect(remedies).toContain('square-saw-open');
    expect(remedies).not.toContain('square-strap');
  });
});

describe('width', () => {
  test('the lip 9 wider than the entry is said before the diagonals mean anything', () => {
    const finding = found(...width(1196, 1205))[0];
    expect(finding).toMatchObject({
      key: 'width-differs',
      fills: { wide: 'lip', narrow: 'entry' },
      worst_mm: 9,
    });
    expect(finding?.offers.map(o => o.remedy)).toEqual(
      expect.arrayContaining(['width-re-tack', 'width-strap', 'deck-taper', 'leave-width']),
    );
  });

  test('both ends alike and narrow is no fault of the frame: the deck follows', () => {
    expect(found(...width(1194, 1194))).toEqual([]);
  });
});

describe('twist', () => {
  test('a floor that falls to the door twists nothing: the pads are taken off', () => {
    const floor = [0, 3, 12, 8];
    expect(
      frameShape(situation(...pads(...floor), ...corners(...floor.map(z => z + 5)))).twist_mm,
    ).toBeCloseTo(0, 9);
    expect(found(...pads(...floor), ...corners(...floor.map(z => z + 5)))).toEqual([]);
  });

  test('corner 4 lifted by 8 over any slope reads 8, whichever way the frame leans', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20, max: 20 }), fc.integer({ min: -20, max: 20 }), (across, along) => {
        const plane = [100, 100 + across, 100 + across + along, 100 + along];
        const lifted = plane.map((c, k) => (k === 3 ? c + 8 : c));
        expect(frameShape(situation(...pads(0, 0, 0, 0), ...corners(...lifted))).twist_mm).toBeCloseTo(8, 9);
      }),
      { numRuns: 30 },
    );
  });

  test('a twist over 5 names the high corners, the roll across the width, and what is left after each way', () => {
    const finding = found(...pads(0, 1, 0, 0), ...corners(10, 11, 10, 18))[0];
    expect(finding).toMatchObject({
      key: 'frame-twisted',
      worst_mm: 8,
      fills: { high: '2 and 4', low: '1 and 3' },
    });
    expect(amount(finding?.fills?.roll)).toBeCloseTo(Math.atan(8 / 1200), 9);
    expect(finding?.offers.find(o => o.remedy === 'untwist-strap')?.after).toMatchObject({ within: true });
    expect(finding?.offers.find(o => o.remedy === 'pack-feet')?.after).toMatchObject({ v: 8, within: false });
    expect(finding?.offers.map(o => o.remedy)).toContain('leave-twist');
  });
});

test('what is within the limit comes first, by least time; then what leaves least over', () => {
  const offers = found(...width(1200, 1200), ...diagonals(1796, 1785)).flatMap(f => f.offers);
  const rank = offers.map(o =>
    o.after?.within === false ? ([1, o.after.v] as const) : ([0, o.minutes] as const),
  );
  expect([...rank].sort((a, b) => a[0] - b[0] || a[1] - b[1])).toEqual(rank);
});

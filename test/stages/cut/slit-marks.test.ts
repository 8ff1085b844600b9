import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Doing } from '../../../src/build/entries.ts';
import { asShown } from '../../../src/quantity/as-shown.ts';
import { handOf, slitMarks } from '../../../src/stages/cut/slit-marks.ts';
import { begun, read, set } from '../doings.ts';
import { situationFor } from '../situation-for.ts';

const blankOf = (length_mm: number): Doing => ({
  kind: 'piece-cut',
  need: 'curved rail@A',
  section: '40x40x3',
  asked_mm: 1800,
  length_mm,
  typed: String(length_mm),
  ends_rad: [0, 0],
});

describe('the strip of slit marks', () => {
  test('adds up to the blank as it is printed, on a metric tape and in fractions, whatever the kerf', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('metric' as const, 'us' as const),
        fc.double({ min: 0.9, max: 1.4, noNaN: true }),
        (system, kerf_mm) => {
          const s = situationFor([begun(system), set('cutter', { kind: 'thin disc', kerf_mm })]);
          const m = slitMarks(s, 'A');
          if (m === null) throw new Error('no slits');
          const first = asShown(m.slits[0]?.at_mm ?? 0, 'slit', system);
          const sum = first + m.firstToLast_mm + m.lastToLip_mm + m.lipToEnd_mm;
          expect(sum).toBeCloseTo(m.blank_mm, 6);
          expect(m.blank_mm).toBe(asShown(m.blank_mm, 'length', system));
          // Each part is itself a figure that a page can write without rounding it again.
          for (const part of [m.firstToLast_mm, m.lastToLip_mm, m.lipToEnd_mm])
            expect(asShown(part, 'slit', system)).toBeCloseTo(part, 6);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('goes by the blank as it was cut', () => {
    expect(slitMarks(situationFor([begun(), blankOf(1790)]), 'A')?.blank_mm).toBe(1790);
  });

  test('what stays uncut and what the saw takes make the depth of the tube', () => {
    const m = slitMarks(situationFor([begun()]), 'A');
    // 40 × 40 × 3: stop line 2t up from the back.
    expect(m).toMatchObject({ stop_mm: 6, down_mm: 34 });
  });

  test('a caliper that finds another wall moves the stop line', () => {
    const thin = read('cut/measure-tube@A', 'wall', 2.5);
    expect(slitMarks(situationFor([begun(), thin]), 'A')).toMatchObject({ stop_mm: 5, down_mm: 35 });
    expect(slitMarks(situationFor([begun(), thin]), 'B')).toMatchObject({ stop_mm: 6, down_mm: 34 });
  });
});

describe('the hand of a rail', () => {
  test('first left, last right, the others in the middle', () => {
    expect(['A', 'B', 'C'].map(rail => handOf(['A', 'B', 'C'], rail))).toEqual(['LEFT', 'MIDDLE', 'RIGHT']);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chordOrdinate, layoutOf, tangentOrdinate } from '../../../src/reckon/curve/layout.ts';

const arc = { radius_mm: 3000, exit_rad: Math.PI / 4 };

describe('marks on the floor', () => {
  test('every mark lies on the circle, from the tangent and from the chord', () => {
    const share = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, fc.double({ min: 0.02, max: 2, noNaN: true }), (part, exit_rad) => {
        const half = 3000 * Math.sin(exit_rad / 2);
        const x = part * half;
        const onChord = chordOrdinate(3000, exit_rad, x);
        expect(Math.hypot(x, onChord + 3000 * Math.cos(exit_rad / 2))).toBeCloseTo(3000, 8);
        expect(Math.hypot(x, 3000 - tangentOrdinate(3000, x))).toBeCloseTo(3000, 8);
      }),
    );
  });

  test('the ends of the chord are on the arc to the last bit', () => {
    const half = 3000 * Math.sin(Math.PI / 8);
    const points = layoutOf({ ...arc, from: 'chord', at_mm: [-half, half] });
    expect(points.ok && points.value.map(point => point.y_mm)).toEqual([0, 0]);
  });

  test('both ways of laying out give one arc', () => {
    // A point of the chord layout, turned by half the exit angle and moved to the start, is one of the tangent layout.
    const turn = Math.PI / 8;
    const half = 3000 * Math.sin(turn);
    for (const x of [-900, -300, 0, 450, 1100]) {
      const y = -chordOrdinate(3000, Math.PI / 4, x);
      const along = (x + half) * Math.cos(turn) - y * Math.sin(turn);
      const up = (x + half) * Math.sin(turn) + y * Math.cos(turn);
      expect(tangentOrdinate(3000, along)).toBeCloseTo(up, 8);
    }
  });
});

describe('a mark the arc does not reach is refused by its place in the list', () => {
  test('past the lip, before the start, past the chord', () => {
    const past = layoutOf({ ...arc, from: 'tangent', at_mm: [300, 2122] });
    expect(past).toMatchObject({ ok: false, fault: { code: 'out-of-range', field: 'at_mm.1' } });
    expect(layoutOf({ ...arc, from: 'tangent', at_mm: [-1] })).toMatchObject({
      ok: false,
      fault: { field: 'at_mm.0' },
    });
    const chord = layoutOf({ ...arc, from: 'chord', at_mm: [0, 0, -1149] });
    expect(chord).toMatchObject({ ok: false, fault: { field: 'at_mm.2' } });
    expect(!chord.ok && chord.fault.accepted).toBe(
      'marks from -1148.0502 to 1148.0502 mm, measured from mid-chord',
    );
  });

  test('past 90° the first crossing is given and the rest is out of reach', () => {
    const steep = { radius_mm: 1000, exit_rad: 2, from: 'tangent' } as const;
    const points = layoutOf({ ...steep, at_mm: [1000] });
    expect(points.ok && points.value[0]?.y_mm).toBeCloseTo(1000, 9);
    expect(layoutOf({ ...steep, at_mm: [1001] }).ok).toBe(false);
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Outcome } from '../../../src/quantity/outcome.ts';
import {
  type Arc,
  type ArcKnown,
  type ArcPart,
  arcFrom,
  radiusPerRun,
} from '../../../src/reckon/curve/arc.ts';
import { degrees, radians } from '../../../src/reckon/numeric/angle.ts';

const arcOf = (known: ArcKnown) => {
  const outcome = arcFrom(known);
  if (!outcome.ok) throw new Error(outcome.fault.message);
  return outcome.value;
};

const faultOf = <T>(outcome: Outcome<T>) => {
  if (outcome.ok) throw new Error('was not refused');
  return outcome.fault;
};

const FIVE: readonly ArcPart[] = ['height_mm', 'run_mm', 'radius_mm', 'exit_rad', 'arc_mm'];
const PAIRS: readonly (readonly [ArcPart, ArcPart])[] = [
  ...FIVE.flatMap((first, n) => FIVE.slice(n + 1).map(second => [first, second] as const)),
  ['chord_mm', 'sagitta_mm'],
];
const PARTS: readonly ArcPart[] = [...FIVE, 'chord_mm', 'sagitta_mm'];

/**
 * How many times rounding in what is given may grow in the arc that comes back (derived). Only two pairs are touchy:
 * run with arc length on a flat arc, run with radius near 90°.
 */
const growth = (pair: string, exit: number): number => {
  if (pair === 'run_mm arc_mm') return 40 + 40 / exit ** 2;
  if (pair === 'run_mm radius_mm') return 40 + 40 / Math.abs(Math.cos(exit));
  return 40;
};

describe('any two numbers of an arc give the whole arc back', () => {
  const radius = fc.double({ min: 200, max: 60_000, noNaN: true });
  const exit_deg = fc.double({ min: 0.5, max: 120, noNaN: true });

  test.each(PAIRS)('from %s and %s', (first, second) => {
    fc.assert(
      fc.property(radius, exit_deg, (radius_mm, angle_deg) => {
        const exit_rad = radians(angle_deg);
        const arc = arcOf({ radius_mm, exit_rad });
        const back = arcOf({ [first]: arc[first], [second]: arc[second] });
        const steep = first === 'run_mm' && second === 'radius_mm' && exit_rad > Math.PI / 2;
        // At 90° run and radius are one number and say nothing of the angle.
        fc.pre(!(first === 'run_mm' && second === 'radius_mm') || Math.abs(exit_rad - Math.PI / 2) > 1e-3);
        const met: Arc = steep ? (back.other as Arc) : back;
        for (const part of PARTS) {
          const off = Math.abs(met[part] - arc[part]) / arc[part];
          expect(off, `${part} at ${angle_deg}°`).toBeLessThan(
            Number.EPSILON * growth(`${first} ${second}`, exit_rad),
          );
        }
        expect(back[first]).toBe(arc[first]);
        expect(back[second]).toBe(arc[second]);
      }),
      { numRuns: 300 },
    );
  });

  test('in either order of giving them', () => {
    expect(arcOf({ run_mm: 2400, height_mm: 1000 })).toEqual(arcOf({ height_mm: 1000, run_mm: 2400 }));
  });

  test('a very flat arc keeps its digits', () => {
    // R(1 − cos θ) would have four digits left here.
    const flat = arcOf({ radius_mm: 5e8, exit_rad: 1e-6 });
    expect(arcOf({ height_mm: flat.height_mm, radius_mm: 5e8 }).exit_rad / 1e-6).toBeCloseTo(1, 14);
    expect(arcOf({ height_mm: flat.height_mm, run_mm: flat.run_mm }).radius_mm / 5e8).toBeCloseTo(1, 14);
    expect(arcOf({ chord_mm: flat.chord_mm, sagitta_mm: flat.sagitta_mm }).radius_mm / 5e8).toBeCloseTo(
      1,
      14,
    );
  });
});

test('run and arc that differ by a hundred-millionth are not taken as alike', () => {
  // 1 − sin θ/θ = d gives θ² = 6d(1 + 0.3d + …); d is exact only when it is made from arc − run.
  const { exit_rad } = arcOf({ run_mm: 99_999_999, arc_mm: 1e8 });
  expect(exit_rad / Math.sqrt(6e-8 * (1 + 0.3e-8))).toBeCloseTo(1, 14);
});

describe('where two arcs fit', () => {
  test('the flatter one is given and the steeper stands beside it', () => {
    const arc = arcOf({ run_mm: 2800, radius_mm: 3000 });
    expect(degrees(arc.exit_rad)).toBeCloseTo(68.9605, 4);
    expect(degrees(arc.other?.exit_rad ?? 0)).toBeCloseTo(111.0395, 4);
    expect(arc.other?.run_mm).toBe(2800);
    expect(arc.other?.height_mm).toBeGreaterThan(arc.height_mm);
  });

  test('a second arc steeper than 120° is none', () => {
    expect(arcOf({ run_mm: 2000, radius_mm: 3000 }).other).toBeUndefined();
  });

  test('at 60° the second arc turns just 120° and still counts', () => {
    const arc = arcOf({ run_mm: 3000 * Math.sin(radians(60.000001)), radius_mm: 3000 });
    expect(degrees(arc.other?.exit_rad ?? 0)).toBeCloseTo(120, 5);
  });

  test('at 90° there is one arc', () => {
    const arc = arcOf({ run_mm: 3000, radius_mm: 3000 });
    expect(arc.exit_rad).toBe(Math.PI / 2);
    expect(arc.other).toBeUndefined();
  });

  test('run with arc length never has a second arc up to 120°', () => {
    for (let angle = 1; angle <= 120; angle += 1) {
      const { run_mm, arc_mm, exit_rad } = arcOf({ radius_mm: 3000, exit_rad: radians(angle) });
      const back = arcOf({ run_mm, arc_mm });
      expect(back.other).toBeUndefined();
      expect(back.exit_rad).toBeCloseTo(exit_rad, 9);
    }
  });
});

describe('an exit angle of 120° is taken, more is not', () => {
  test.each(PAIRS)('from %s and %s', (first, second) => {
    const most = arcOf({ radius_mm: 3000, exit_rad: radians(120) });
    const back = arcOf({ [first]: most[first], [second]: most[second] });
    const met = first === 'run_mm' && second === 'radius_mm' ? (back.other as Arc) : back;
    expect(degrees(met.exit_rad)).toBeCloseTo(120, 9);
  });

  test('an angle typed past it is refused at its own field', () => {
    expect(faultOf(arcFrom({ radius_mm: 3000, exit_rad: radians(120.01) }))).toMatchObject({
      code: 'out-of-range',
      field: 'exit_rad',
    });
    expect(faultOf(arcFrom({ exit_rad: 0, radius_mm: 3000 })).code).toBe('out-of-range');
  });
});

describe('what has no answer is refused, with what would have one', () => {
  const IMPOSSIBLE: readonly (readonly [ArcKnown, string])[] = [
    [{ height_mm: 3600, run_mm: 2000 }, 'height with run'],
    [{ height_mm: 6500, radius_mm: 3000 }, 'height with radius'],
    [{ height_mm: 2100, arc_mm: 2200 }, 'height with arc'],
    [{ height_mm: 2400, arc_mm: 2200 }, 'height above the arc itself'],
    [{ run_mm: 3200, radius_mm: 3000 }, 'run with radius'],
    [{ run_mm: 2500, arc_mm: 2400 }, 'run longer than the arc'],
    [{ run_mm: 500, arc_mm: 2400 }, 'run far shorter than the arc'],
    [{ radius_mm: 1000, arc_mm: 2500 }, 'radius with arc'],
    [{ chord_mm: 1000, sagitta_mm: 400 }, 'sagitta with chord'],
  ];

  test.each(IMPOSSIBLE)('%j: %s', known => {
    const fault = faultOf(arcFrom(known));
    expect(fault.code).toBe('no-solution');
    expect(fault.field).toBeNull();
    // Do what the words advise, for either number, and it is taken.
    const advised = [
      ...fault.accepted.matchAll(
        /an? (\w+) (?:of at (most|least)|(?:from|above) ([\d.]+).*?(?:below|at most)) ([\d.]+)/g,
      ),
    ];
    expect(advised).toHaveLength(2);
    for (const [, word, way, from, number] of advised) {
      const part = `${word}_mm` as ArcPart;
      // A range is met at its closed end: a run from its least, an arc up to its most.
      const value = way === undefined && part === 'run_mm' ? Number(from) : Number(number);
      expect(arcFrom({ ...known, [part]: value }).ok, `${part} ${value}`).toBe(true);
      const past = way === 'most' || (way === undefined && part === 'arc_mm') ? 1.0001 : 0.9999;
      expect(arcFrom({ ...known, [part]: value * past }).ok, `${part} ${value * past}`).toBe(false);
    }
  });

  test('a straight line is no arc', () => {
    expect(faultOf(arcFrom({ run_mm: 2400, arc_mm: 2400 })).code).toBe('no-solution');
  });

  test('numbers too far apart give a refusal, not infinity', () => {
    expect(faultOf(arcFrom({ height_mm: 1e-300, run_mm: 1e9 })).code).toBe('no-solution');
    expect(faultOf(arcFrom({ exit_rad: 1e-170, radius_mm: 1 })).code).toBe('no-solution');
  });
});

describe('exactly two numbers are taken', () => {
  test('the third given is the one too many', () => {
    expect(faultOf(arcFrom({ arc_mm: 2356, radius_mm: 3000, height_mm: 878 }))).toMatchObject({
      code: 'too-many-values',
      field: 'height_mm',
    });
  });

  test('one or none is too few', () => {
    expect(faultOf(arcFrom({ radius_mm: 3000 })).code).toBe('missing-field');
    expect(faultOf(arcFrom({})).code).toBe('missing-field');
  });

  test('a chord asks for its sagitta, whatever else is there', () => {
    expect(faultOf(arcFrom({ chord_mm: 2296 }))).toMatchObject({
      code: 'missing-field',
      field: 'sagitta_mm',
    });
    expect(faultOf(arcFrom({ sagitta_mm: 228, radius_mm: 3000 }))).toMatchObject({
      code: 'missing-field',
      field: 'chord_mm',
    });
    expect(faultOf(arcFrom({ chord_mm: 2296, sagitta_mm: 228, radius_mm: 3000 })).code).toBe(
      'too-many-values',
    );
  });

  test.each([0, -5, Number.NaN, Number.POSITIVE_INFINITY])('a height of %s is none', height_mm => {
    expect(faultOf(arcFrom({ height_mm, run_mm: 2000 }))).toMatchObject({
      code: 'out-of-range',
      field: 'height_mm',
    });
  });
});

test('how far the radius moves per mm of run is what the arc itself shows', () => {
  const { run_mm, arc_mm, exit_rad, radius_mm } = arcOf({ radius_mm: 3000, exit_rad: radians(30) });
  const step = 1e-3;
  const moved = arcOf({ run_mm: run_mm + step, arc_mm }).radius_mm;
  expect((moved - radius_mm) / step).toBeCloseTo(radiusPerRun(exit_rad), 1);
});

/**
 * Arcs held against rules that others published and against right-angled triangles anybody can check.
 * Sources
 *   [quiz]   railway quiz text: versine v[mm] = 125 C²/R with C, R in m; h = L²/8R            (found)
 *   [TM]     US Army TM 5-628 and its lesson TR0671: with a 62 ft string 1 in of mid-ordinate is
 *            about 1° of curve, the degree of curve being the angle a 100 ft arc subtends       (found)
 *   [prac]   B.E. Surveying practical no. 1: R 50 m, long chord 30 m, stations every 5 m        (found; ordinates derived)
 *   [course] Short and/or small-radius curves, course text after Schofield, Engineering Surveying §10:
 *            halving and quartering, 20 m → 5 m → 1.25 m                                        (found)
 */
import { describe, expect, test } from 'vitest';
import { type ArcKnown, arcFrom } from '../../src/reckon/curve/arc.ts';
import { degrees, radians } from '../../src/reckon/numeric/angle.ts';

const INCH = 25.4;
const FOOT = 304.8;

const arcOf = (known: ArcKnown) => {
  const outcome = arcFrom(known);
  if (!outcome.ok) throw new Error(outcome.fault.message);
  return outcome.value;
};

describe('the reference arc, R 3000 and 45° [derived]', () => {
  const REF = { height_mm: 878.68, run_mm: 2121.32, arc_mm: 2356.19, chord_mm: 2296.1, sagitta_mm: 228.36 };

  test('has the numbers of its row', () => {
    const arc = arcOf({ radius_mm: 3000, exit_rad: radians(45) });
    for (const [part, value] of Object.entries(REF))
      expect(arc[part as keyof typeof REF], part).toBeCloseTo(value, 2);
  });

  test.each([
    ['height and run', { height_mm: REF.height_mm, run_mm: REF.run_mm }],
    ['height and arc', { height_mm: REF.height_mm, arc_mm: REF.arc_mm }],
    ['run and arc', { run_mm: REF.run_mm, arc_mm: REF.arc_mm }],
    ['chord and sagitta', { chord_mm: REF.chord_mm, sagitta_mm: REF.sagitta_mm }],
  ])('comes back from its %s as rounded to a hundredth', (_, known) => {
    const arc = arcOf(known);
    // A hundredth in chord and sagitta is an eighth of a millimetre in the radius: 12–13 mm for each mm.
    expect(Math.abs(arc.radius_mm - 3000)).toBeLessThan(0.13);
    expect(Math.abs(degrees(arc.exit_rad) - 45)).toBeLessThan(0.002);
  });

  test.each([
    // How far radius and angle move for 1 mm in one number, the other held.
    ['height with run', { height_mm: 1, run_mm: 0 }, -2.41, 0.046],
    ['run with height', { height_mm: 0, run_mm: 1 }, 2.41, -0.019],
    ['height with arc', { height_mm: 1, arc_mm: 0 }, -3.81, 0.057],
    ['run with arc', { run_mm: 1, arc_mm: 0 }, 6.59, -0.099],
  ])('moves as far as derived for 1 mm of %s', (_, step, radius, angle) => {
    const arc = arcOf({ radius_mm: 3000, exit_rad: radians(45) });
    const moved = (by: number) =>
      arcOf(
        Object.fromEntries(
          Object.entries(step).map(([part, one]) => [part, arc[part as 'run_mm'] + one * by]),
        ) as ArcKnown,
      );
    expect((moved(0.01).radius_mm - moved(-0.01).radius_mm) / 0.02).toBeCloseTo(radius, 1);
    expect(degrees(moved(0.01).exit_rad - moved(-0.01).exit_rad) / 0.02).toBeCloseTo(angle, 3);
  });
});

describe('a 3-4-5 triangle [derived; Euclid]', () => {
  // Rise 48 in on a run of 96 in: half the exit angle is atan 1/2, so the exit angle is that of a 3-4-5 triangle.
  test('48 in high on 96 in is an arc of 10 ft radius', () => {
    const arc = arcOf({ height_mm: 48 * INCH, run_mm: 96 * INCH });
    expect(arc.radius_mm / INCH).toBeCloseTo(120, 10);
    expect(Math.tan(arc.exit_rad)).toBeCloseTo(4 / 3, 12);
    expect(degrees(arc.exit_rad)).toBeCloseTo(53.1301, 4);
    expect(arc.arc_mm / INCH).toBeCloseTo(111.275, 3);
  });

  test.each([
    [3, 4, 5],
    [5, 12, 13],
    [8, 15, 17],
    [20, 21, 29],
  ])('a radius of %3$s whose end is %2$s out rises %3$s less the other leg', (a, b, c) => {
    // Centre, tangent foot and end make the triangle: run is one leg, radius the long side, height what is left.
    for (const [run, drop] of [
      [a, b],
      [b, a],
    ] as const)
      expect(arcOf({ run_mm: run * 100, radius_mm: c * 100 }).height_mm).toBeCloseTo((c - drop) * 100, 8);
  });
});

describe('versines of the railway', () => {
  // The rule leaves out m²: it is short by m²/2R, which the tolerance is (derived).
  test.each([
    [200, 20],
    [400, 20],
    [875, 20],
    [1750, 20],
    [300, 30],
    [600, 10],
  ])('v = 125 C²/R at R %s m on a chord of %s m [quiz]', (R_m, C_m) => {
    const published = (125 * C_m ** 2) / R_m;
    const read = arcOf({ chord_mm: C_m * 1000, sagitta_mm: published });
    expect(read.radius_mm / 1000).toBeCloseTo(R_m, 0);
    const half = Math.asin(C_m / 2 / R_m);
    const exact = arcOf({ radius_mm: R_m * 1000, exit_rad: 2 * half });
    expect(exact.chord_mm).toBeCloseTo(C_m * 1000, 6);
    expect(exact.sagitta_mm - published).toBeGreaterThan(0);
    expect(exact.sagitta_mm - published).toBeLessThan((1.01 * published ** 2) / (2 * R_m * 1000));
  });

  test('on a 62 ft string 1 in of mid-ordinate is one degree of curve, 8 in are eight [TM]', () => {
    for (const degree of [1, 2, 4, 8]) {
      // One degree of curve: a 100 ft arc turns by it.
      const { radius_mm } = arcOf({ exit_rad: radians(degree), arc_mm: 100 * FOOT });
      const { sagitta_mm } = arcOf({ radius_mm, exit_rad: 2 * Math.asin((31 * FOOT) / radius_mm) });
      // The rule is read in eighths of an inch.
      expect(Math.abs(sagitta_mm / INCH - degree)).toBeLessThan(1 / 16);
    }
    expect(arcOf({ exit_rad: radians(1), arc_mm: 100 * FOOT }).radius_mm / FOOT).toBeCloseTo(5729.58, 2);
  });
});

describe('halving and quartering', () => {
  test('20 m on the chord becomes 5 m and 1.25 m on its halves [course]', () => {
    // The rule of four holds for flat arcs; each time it is short by about Θ²/64 of the exact one (derived).
    const whole = arcOf({ chord_mm: 800_000, sagitta_mm: 20_000 });
    const half = arcOf({ radius_mm: whole.radius_mm, exit_rad: whole.exit_rad / 2 });
    const quarter = arcOf({ radius_mm: whole.radius_mm, exit_rad: whole.exit_rad / 4 });
    expect(half.sagitta_mm / 1000).toBeCloseTo(5, 1);
    expect(quarter.sagitta_mm / 1000).toBeCloseTo(1.25, 2);
    expect(half.sagitta_mm / 5000 - 1).toBeCloseTo(whole.exit_rad ** 2 / 64, 4);
  });

  test('on the reference arc the rule is half a millimetre short [derived]', () => {
    const { sagitta_mm, exit_rad } = arcOf({ radius_mm: 3000, exit_rad: radians(45) });
    const half = arcOf({ radius_mm: 3000, exit_rad: exit_rad / 2 });
    const quarter = arcOf({ radius_mm: 3000, exit_rad: exit_rad / 4 });
    expect(sagitta_mm / 4).toBeCloseTo(57.09, 2);
    expect(half.sagitta_mm).toBeCloseTo(57.64, 2);
    expect(half.sagitta_mm / 4).toBeCloseTo(14.41, 2);
    expect(quarter.sagitta_mm).toBeCloseTo(14.45, 2);
  });
});

/**
 * The slit table of the shop [derived]: closing angle k/h with h = D − t/2, slits for 45° on a hinge radius of about
 * 3056 mm, pitch of full closure, sag of a flat, and what a tenth of a millimetre of kerf does to a slit. Kerfs are
 * [practice]. No published table of slit bending was found; that the arithmetic is right is checked by bending an exact
 * polygon below.
 */
import { describe, expect, test } from 'vitest';
import { facetSag, slitClose, slitPlan } from '../../src/reckon/curve/slits.ts';
import { degrees, radians } from '../../src/reckon/numeric/angle.ts';

const HINGE_mm = 3056.5;

describe('the slit table [derived]', () => {
  test.each([
    // depth, wall, kerf → closing angle in mrad and °, slits for 45° before rounding, pitch, sag, per 0.1 mm of kerf
    [40, 3, 1.0, 25.97, 1.488, 30.2, 79.4, 0.26, 0.149],
    [40, 3, 1.2, 31.17, 1.786, 25.2, 95.3, 0.37, 0.149],
    [40, 2, 1.2, 30.77, 1.763, 25.5, 94.1, 0.36, 0.147],
    [40, 3, 2.8, 72.73, 4.167, 10.8, 222, 2.02, 0.149],
    [38.1, 3.05, 1.5, 41.0, 2.35, 19.2, 125, 0.64, 0.157],
    [50.8, 3.05, 2.8, 56.8, 3.256, 13.8, 174, 1.24, 0.116],
  ])('%s × %s with a kerf of %s', (depth, wall, kerf, mrad, deg, slits, pitch, sag, perTenth) => {
    const close = slitClose(kerf, 0, depth, wall);
    expect(close * 1000).toBeCloseTo(mrad, mrad > 40 && mrad < 60 ? 1 : 2);
    expect(Math.abs(degrees(close) - deg)).toBeLessThan(0.002);
    expect(radians(45) / close).toBeCloseTo(slits, 0);
    expect(Math.abs(radians(45) / close - slits)).toBeLessThan(0.06);
    expect(Math.abs(HINGE_mm * close - pitch)).toBeLessThan(0.5);
    expect(facetSag(HINGE_mm * close, HINGE_mm)).toBeCloseTo(sag, 1);
    expect(degrees(slitClose(kerf + 0.1, 0, depth, wall) - close)).toBeCloseTo(perTenth, 3);

    const plan = slitPlan({
      hingeRadius_mm: HINGE_mm,
      turn_rad: radians(45),
      depth_mm: depth,
      wall_mm: wall,
      kerf_mm: kerf,
      gap_mm: 0,
      pull_rad: 0,
    });
    expect(plan.ok && plan.value.count).toBe(Math.ceil(slits));
  });

  test('1.2 on a lever of 38.5 is 0.031169, and its flat sags 0.371', () => {
    expect(slitClose(1.2, 0, 40, 3)).toBeCloseTo(0.031169, 6);
    expect(facetSag(95.27, HINGE_mm)).toBeCloseTo(0.371, 3);
  });

  test('25 slits would each want 31.416 mrad, 0.36° in all more than they have; 26 are sawn', () => {
    expect(degrees(25 * (radians(45) / 25 - slitClose(1.2, 0, 40, 3)))).toBeCloseTo(0.36, 1);
    const job = {
      hingeRadius_mm: HINGE_mm,
      turn_rad: radians(45),
      depth_mm: 40,
      wall_mm: 3,
      kerf_mm: 1.2,
      gap_mm: 0,
      pull_rad: 0,
    };
    expect(slitPlan({ ...job, count: 25 }).ok).toBe(false);
    const plan = slitPlan(job);
    expect(plan.ok && plan.value.count).toBe(26);
    expect(plan.ok && plan.value.cutLength_mm).toBeCloseTo(2400.57, 2);
  });
});

test('a rail bent at its marks ends where the hinge line ends, within a fifth of a millimetre [derived]', () => {
  // Walk the flats: half a pitch, then turn at each mark. Nothing of the plan's own formulas is used but its numbers.
  const plan = slitPlan({
    hingeRadius_mm: HINGE_mm,
    turn_rad: radians(45),
    depth_mm: 40,
    wall_mm: 3,
    kerf_mm: 1.26,
    gap_mm: 0,
    pull_rad: 0,
    count: 25,
  });
  if (!plan.ok) throw new Error(plan.fault.message);
  let [x, y, slope, at] = [0, 0, 0, 0];
  for (const mark of [...plan.value.marks_mm, plan.value.cutLength_mm]) {
    x += (mark - at) * Math.cos(slope);
    y += (mark - at) * Math.sin(slope);
    at = mark;
    if (mark < plan.value.cutLength_mm) slope += plan.value.close_rad;
  }
  expect(slope).toBeCloseTo(radians(45), 12);
  // Flats that turn at their marks touch a circle of radius p/(2 tan(α/2)) at their middles: 3056.25 for 25 slits. The
  // rail's end lies on it, 0.18 short along the ground and 0.07 low.
  expect(Math.hypot(x, 3056.25 - y)).toBeCloseTo(3056.25, 2);
  expect(HINGE_mm * Math.sin(radians(45)) - x).toBeCloseTo(0.178, 3);
  expect(HINGE_mm * (1 - Math.cos(radians(45))) - y).toBeCloseTo(0.074, 3);
});

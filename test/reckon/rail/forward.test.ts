import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bench,
  flatSag,
  offsetsAt,
  offsetsOn,
  railShape,
  slopesOn,
} from '../../../src/reckon/rail/forward.ts';
import { evenSlits, type RailPlan } from '../../../src/reckon/rail/rail-plan.ts';
import { chance, trueOffsets } from './simulated-rail.ts';

const still = { y_mm: 0, turn_rad: 0 };
const rail = (radius_mm: number, bend_deg: number, count: number): RailPlan => {
  const bend_rad = (bend_deg * Math.PI) / 180;
  return { radius_mm, bend_rad, slits_mm: evenSlits(radius_mm, bend_rad, count) };
};
const REF = rail(3000, 45, 25);
const pitch = (3000 * Math.PI) / 4 / 25;

describe('the shape of a slit rail', () => {
  test('as planned touches its line at the middle of every flat and stands outside it at every slit', () => {
    const middles = Array.from({ length: 26 }, (_, j) => j * pitch);
    for (const o of offsetsAt(REF, [], still, middles)) expect(o).toBeCloseTo(0, 9);
    const outside = 3000 * (1 / Math.cos(Math.PI / 4 / 50) - 1);
    for (const o of offsetsAt(REF, [], still, REF.slits_mm)) expect(o).toBeCloseTo(-outside, 9);
  });

  test('starts on the tangent: the first flat lies along it up to the first slit', () => {
    const [start, first] = railShape(REF, []);
    expect(start).toEqual({ x: 0, y: 0 });
    expect(first!.y).toBeCloseTo(0, 9);
    expect(first!.x).toBeCloseTo(3000 * Math.tan(Math.PI / 4 / 50), 9);
  });

  test('keeps the length of every flat however far its slits close', () => {
    const long = (errors: number[]) => {
      const points = railShape(REF, errors);
      return points.slice(1).map((p, i) => Math.hypot(p.x - points[i]!.x, p.y - points[i]!.y));
    };
    const curled = long(REF.slits_mm.map((_, i) => 0.006 * Math.sin(i)));
    long([]).forEach((l, i) => {
      expect(curled[i]).toBeCloseTo(l, 9);
    });
  });

  test('agrees with a rail walked flat by flat, large errors and all', () => {
    const dice = chance(11);
    for (let k = 0; k < 60; k++) {
      const plan = rail(dice.between(2000, 9000), dice.between(15, 60), dice.whole(6, 40));
      const count = plan.slits_mm.length;
      const errors = Array.from({ length: count }, () => dice.between(-0.004, 0.006));
      const laid = { x: 0, y: dice.between(-30, 30), turn: dice.between(-0.02, 0.02) };
      const arc = plan.radius_mm * plan.bend_rad;
      const stations = Array.from({ length: 31 }, (_, j) => (j * arc) / 30);
      const walked = trueOffsets(
        { radius: plan.radius_mm, bend: plan.bend_rad, count, errors, laid },
        stations,
      );
      const read = offsetsAt(plan, errors, { y_mm: laid.y, turn_rad: laid.turn }, stations);
      read.forEach((o, j) => {
        expect(o).toBeCloseTo(walked[j]!, 6);
      });
    }
  });

  test('a slit closed too far moves nothing before it and curls everything after it toward the centre', () => {
    const errors = REF.slits_mm.map((_, i) => (i === 9 ? 0.02 : 0));
    const stations = Array.from({ length: 26 }, (_, j) => j * pitch);
    const moved = offsetsAt(REF, errors, still, stations);
    for (const o of moved.slice(0, 10)) expect(o).toBeCloseTo(0, 9);
    for (const [j, o] of moved.slice(10).entries()) expect(o).toBeGreaterThan(0.8 + 1.5 * j);
  });

  test('its slopes are those of the shape itself', () => {
    const errors = REF.slits_mm.map((_, i) => 0.003 + 0.002 * Math.cos(3 * i));
    const rigid = { y_mm: 4, turn_rad: 0.006 };
    const stations = [0, 200, 777, 1300, 2000, 2356];
    const on = bench(REF, stations);
    const { bySlit, byShift, byTurn } = slopesOn(on, errors, rigid);
    const step = 1e-6;
    const change = (e: number[], r = rigid) => {
      const far = offsetsOn(on, e, r);
      return offsetsOn(on, errors, rigid).map((o, j) => (far[j]! - o) / step);
    };
    for (const i of [0, 7, 24]) {
      const slope = change(errors.with(i, errors[i]! + step));
      stations.forEach((_, j) => {
        expect(bySlit[i * 6 + j]).toBeCloseTo(slope[j]!, 1);
      });
    }
    const shift = change(errors, { ...rigid, y_mm: 4 + step });
    const turn = change(errors, { ...rigid, turn_rad: 0.006 + step });
    stations.forEach((_, j) => {
      expect(byShift[j]).toBeCloseTo(shift[j]!, 5);
      expect(byTurn[j]).toBeCloseTo(turn[j]!, 1);
    });
  });

  test('runs on straight where the line does', () => {
    const plan = { ...REF, straight_mm: 300 };
    const end = 3000 * (Math.PI / 4) + 300;
    expect(offsetsAt(plan, [], still, [end - 200, end])).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(0, 9),
    ]);
    const lastOpen = REF.slits_mm.map((_, i) => (i === 24 ? -0.01 : 0));
    const [middle, lip] = offsetsAt(plan, lastOpen, still, [end - 300, end]);
    expect(lip! - middle!).toBeCloseTo(-3, 1);
  });

  test('unevenly set slits: every flat still reads nothing at its own middle', () => {
    const plan = { radius_mm: 3000, bend_rad: 0.3, slits_mm: [60, 200, 380, 500, 790] };
    const middles = [0, 130, 290, 440, 645, 900];
    for (const o of offsetsAt(plan, [], still, middles)) expect(o).toBeCloseTo(0, 9);
    expect(flatSag(plan, 720)).toBeCloseTo(-(75 ** 2) / 6000, 2);
  });

  test('gives a number for any rail and any station', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 500, max: 20000, noNaN: true }),
        fc.double({ min: 5, max: 120, noNaN: true }),
        fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), { minLength: 3, maxLength: 30 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (radius, bend, errors, share) => {
          const plan = rail(radius, bend, errors.length);
          const at = share * radius * plan.bend_rad;
          expect(Number.isFinite(offsetsAt(plan, errors, still, [at])[0])).toBe(true);
        },
      ),
    );
  });
});

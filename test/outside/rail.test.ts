import { describe, expect, test } from 'vitest';
import { diagnose } from '../../src/reckon/rail/diagnose.ts';
import { bench, offsetsAt, railShape, slopesOn } from '../../src/reckon/rail/forward.ts';
import { evenSlits, type RailPlan } from '../../src/reckon/rail/rail-plan.ts';
import { planRecuts } from '../../src/reckon/rail/recuts.ts';
import { fitRigid, rigidColumns } from '../../src/reckon/rail/rigid.ts';

/**
 * The slit rail and its diagnosis against worked figures. No published test of a slit and welded tube is known, so the
 * figures are [derived]: worked by hand and by other programs from the same geometry before this one was written. Where
 * a source is named the figure was read in it.
 * [V] versine v = C²/(8R), in railway practice 125 C²/R with C and R in m [found: railway course text]
 */

const R = 3000;
const bend_rad = Math.PI / 4;
const REF: RailPlan = { radius_mm: R, bend_rad, slits_mm: evenSlits(R, bend_rad, 25) };
const still = { y_mm: 0, turn_rad: 0 };
const thirteen = Array.from({ length: 13 }, (_, j) => (j * R * bend_rad) / 12);

describe('offsets of a rail of 25 slits on R 3000, 45° [derived]', () => {
  test('2 mrad too much in every slit: 0 0.4 1.6 3.7 6.5 10 15 20 26 32 39 47 56 by small angles', () => {
    const on = bench(REF, thirteen);
    const { bySlit } = slopesOn(on, new Array<number>(25).fill(0), still);
    const table = [0, 0.4, 1.6, 3.7, 6.5, 10, 15, 20, 26, 32, 39, 47, 56];
    table.forEach((expected, j) => {
      const linear = REF.slits_mm.reduce((sum, _, i) => sum + 0.002 * bySlit[i * 13 + j]!, 0);
      expect(Math.abs(linear - expected)).toBeLessThanOrEqual(j < 5 ? 0.06 : 0.6);
    });
    // and exactly, a little less at the lip: 55.4
    expect(offsetsAt(REF, new Array<number>(25).fill(0.002), still, thirteen)[12]).toBeCloseTo(55.4, 1);
  });

  test('20 mrad too much in slit 10: nothing to there, then 5.7 9.5 13 17 21 25 28', () => {
    const errors = REF.slits_mm.map((_, i) => (i === 9 ? 0.02 : 0));
    const sag = offsetsAt(REF, [], still, thirteen);
    const read = offsetsAt(REF, errors, still, thirteen).map((o, j) => o - sag[j]!);
    for (const o of read.slice(0, 5)) expect(o).toBeCloseTo(0, 9);
    [5.7, 9.5, 13, 17, 21, 25, 28].forEach((expected, k) => {
      expect(Math.abs(read[6 + k]! - expected)).toBeLessThanOrEqual(0.55);
    });
  });

  test('turned 5 mrad about its start: 0 … 10.6, laid anew nothing is left', () => {
    const read = offsetsAt(REF, [], { y_mm: 0, turn_rad: 0.005 }, thirteen);
    expect(read[12]).toBeCloseTo(10.6, 1);
    const sag = offsetsAt(REF, [], still, thirteen);
    const { worst_mm } = fitRigid(
      rigidColumns(REF, thirteen),
      read.map((o, j) => o - sag[j]!),
    );
    expect(worst_mm).toBeLessThan(0.03);
  });

  test('[V] what one even error bends is a parabola of sΔΘ/8 from crest to foot', () => {
    const errors = new Array<number>(25).fill(0.002);
    const sag = offsetsAt(REF, [], still, thirteen);
    const read = offsetsAt(REF, errors, still, thirteen).map((o, j) => o - sag[j]!);
    const { left_mm } = fitRigid(rigidColumns(REF, thirteen), read);
    const high = Math.max(...left_mm) - Math.min(...left_mm);
    expect(high / ((R * bend_rad * 0.05) / 8)).toBeCloseTo(1, 1);
  });

  test('kerf 0.1 mm too wide on every slit turns the lip 3.72° and moves it (−39.7, +65.4); on slit 13 alone (−1.7, +2.6)', () => {
    // 0.1 mm on a lever of 38.5 mm; the hinge line of REF, R 3056.5
    const plan = { radius_mm: 3056.5, bend_rad, slits_mm: evenSlits(3056.5, bend_rad, 25) };
    const each = 0.1 / 38.5;
    expect((25 * each * 180) / Math.PI).toBeCloseTo(3.72, 2);
    const lip = railShape(plan, []).at(-1)!;
    const moved = (errors: number[]) => {
      const to = railShape(plan, errors).at(-1)!;
      return [to.x - lip.x, to.y - lip.y];
    };
    const [x, y] = moved(new Array<number>(25).fill(each));
    expect(Math.abs(x! + 39.7)).toBeLessThanOrEqual(0.9); // the table is of R 3000: 1.9 % less
    expect(Math.abs(y! - 65.4)).toBeLessThanOrEqual(1.4);
    const [one, up] = moved(plan.slits_mm.map((_, i) => (i === 12 ? each : 0)));
    expect(one).toBeCloseTo(-1.7, 1);
    expect(up).toBeCloseTo(2.6, 1);
  });
});

describe('the worked set of 26 stations [derived]', () => {
  // truth: 1.2 mrad in every slit, 20 more in slit 10, laid (3, −2) mm and 2 mrad askew, read to 0.5 mm
  const stations_mm = Array.from({ length: 26 }, (_, j) => (j * R * bend_rad) / 25);
  const offsets_mm = [
    -2, -1.5, -1, -1.5, -1, -0.5, 1, 1.5, 2.5, 2.5, 6, 8.5, 12.5, 15.5, 18.5, 22.5, 26.5, 29.5, 33.5, 38, 41,
    45, 50, 53.5, 57.5, 62,
  ];
  const survey = {
    plan: REF,
    stations_mm,
    offsets_mm,
    read_to_mm: 0.5,
    depth_mm: 40,
    deck_mm: 18,
    wall_mm: 3,
  };
  const found = diagnose(survey);

  test('is over-curl and slit 10, as truth is', () => {
    expect(found.cause).toBe('over-curl and one slit');
    expect(found.odd_slits.map(o => o.slit)).toEqual([10]);
    expect(found.sure).toBeGreaterThan(0.95);
  });

  test('sizes come near 1.12 and 21.4 mrad (truth 1.2 and 20)', () => {
    expect(found.even_rad * 1000).toBeGreaterThan(1.0);
    expect(found.even_rad * 1000).toBeLessThan(1.25);
    expect(found.odd_slits[0]!.turn_rad * 1000).toBeGreaterThan(19.5);
    expect(found.odd_slits[0]!.turn_rad * 1000).toBeLessThan(22);
  });

  test('a shift along the start is folded into the turn: −2 mm across, 2 − 3/3000 mrad', () => {
    expect(found.rigid.y_mm).toBeCloseTo(-2, 0);
    expect(Math.abs(found.rigid.turn_rad - 0.001)).toBeLessThan(0.0005);
  });

  test('the sum over all slits is near the true 50 mrad', () => {
    const total = found.errors_rad.reduce((sum, e) => sum + e, 0) * 1000;
    expect(Math.abs(total - 50)).toBeLessThan(2);
  });

  test('as few re-cuts as bring it within 2 mm: one; for 1 mm two, near slits 10 and 18', () => {
    const one = planRecuts(survey, found, { tolerance_mm: 2 });
    expect(one.recuts).toHaveLength(1);
    expect(one.worst_after_mm).toBeLessThanOrEqual(2);
    const two = planRecuts(survey, found, { tolerance_mm: 1 });
    expect(two.recuts).toHaveLength(2);
    expect(two.recuts[0]!.slit).toBe(10);
  });
});

describe('what even re-cuts leave of 112 mrad over-curl [derived]: minimax fit 4.2, 3.5, 1.6, 0.9, 0.6 mm for 1 to 5', () => {
  const stations_mm = Array.from({ length: 26 }, (_, j) => (j * R * bend_rad) / 25);
  const offsets_mm = offsetsAt(REF, new Array<number>(25).fill(0.112 / 25), still, stations_mm);
  const survey = { plan: REF, stations_mm, offsets_mm, read_to_mm: 0.01 };
  const found = diagnose(survey);

  test('the rail itself is 22 mm out after a least-squares fit', () => {
    expect(planRecuts(survey, found, { tolerance_mm: 30 }).worst_mm).toBeGreaterThan(20);
    expect(planRecuts(survey, found, { tolerance_mm: 30 }).worst_mm).toBeLessThan(23);
  });

  // least-squares laying leaves up to twice what a minimax laying does; the search places cuts better than evenly
  test.each([
    [2, 5.5],
    [3, 2.6],
    [4, 1.4],
    [5, 0.95],
  ])('%d re-cuts leave no more than %d mm', (most, left) => {
    const plan = planRecuts(survey, found, { tolerance_mm: 0.01, most });
    expect(plan.recuts).toHaveLength(most);
    expect(plan.worst_after_mm).toBeLessThanOrEqual(left);
    for (const r of plan.recuts) expect(r.turn_rad).toBeLessThan(0);
  });
});

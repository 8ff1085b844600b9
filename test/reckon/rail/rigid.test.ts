import { describe, expect, test } from 'vitest';
import { offsetsAt } from '../../../src/reckon/rail/forward.ts';
import { evenSlits, type RailPlan } from '../../../src/reckon/rail/rail-plan.ts';
import { fitRigid, rigidColumns } from '../../../src/reckon/rail/rigid.ts';

const bend_rad = Math.PI / 4;
const plan: RailPlan = { radius_mm: 3000, bend_rad, slits_mm: evenSlits(3000, bend_rad, 25) };
const stations = Array.from({ length: 26 }, (_, j) => (j * 3000 * bend_rad) / 25);
const columns = rigidColumns(plan, stations);

describe('laying a rail anew', () => {
  test('finds how a good rail was laid', () => {
    const read = offsetsAt(plan, [], { y_mm: -2, turn_rad: 0.003 }, stations);
    const fit = fitRigid(columns, read);
    expect(fit.rigid.y_mm).toBeCloseTo(-2, 1);
    expect(fit.rigid.turn_rad).toBeCloseTo(0.003, 4);
    expect(fit.worst_mm).toBeLessThan(0.05);
  });

  test('a turn about the centre of the curve changes no offset, so a shift along the start is a turn about it', () => {
    // 5 mm along the start is −5 sin φ across the line: the turn column times −5/3000
    const along = stations.map(s => -5 * Math.sin(s / 3000));
    const fit = fitRigid(columns, along);
    expect(fit.rigid.turn_rad).toBeCloseTo(-5 / 3000, 9);
    expect(fit.worst_mm).toBeCloseTo(0, 9);
  });

  test('leaves 1.9, −1.2, 1.9 of a rail measured 40 mm off all along: it would hide a wrong edge', () => {
    const { left_mm } = fitRigid(
      columns,
      stations.map(() => 40),
    );
    expect(left_mm[0]).toBeCloseTo(2.0, 1);
    expect(Math.min(...left_mm)).toBeCloseTo(-1.1, 1);
    expect(left_mm[25]).toBeCloseTo(2.0, 1);
  });

  test('with the entry mark held only turns the rail', () => {
    const read = stations.map(s => 3 * Math.cos(s / 3000) + 10 * Math.sin(s / 3000));
    const fit = fitRigid(columns, read, 3);
    expect(fit.rigid.y_mm).toBe(3);
    expect(fit.rigid.turn_rad).toBeCloseTo(10 / 3000, 9);
    const stays = fitRigid(
      columns,
      stations.map(() => 4),
      4,
    );
    expect(stays.left_mm[0]).toBeCloseTo(0, 9);
  });

  test('goes on along a straight last part', () => {
    const longer = { ...plan, straight_mm: 400 };
    const arc = 3000 * bend_rad;
    const { shift, turn } = rigidColumns(longer, [arc, arc + 400]);
    expect(shift[1]).toBeCloseTo(shift[0]!, 12);
    expect(turn[1]! - turn[0]!).toBeCloseTo(400, 9);
  });

  test('one station alone is met exactly and nothing blows up', () => {
    const fit = fitRigid(rigidColumns(plan, [0]), [4]);
    expect(fit.rigid).toEqual({ y_mm: 4, turn_rad: 0 });
    expect(fit.worst_mm).toBe(0);
  });
});

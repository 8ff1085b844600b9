import { describe, expect, test } from 'vitest';
import { FRICTION, START_PULL_N, slide } from '../../../src/reckon/handling/slide.ts';
import { standing, standUp } from '../../../src/reckon/handling/stand-up.ts';
import { LIFTING_FILTER_kg, team } from '../../../src/reckon/handling/team.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

describe('people to a frame', () => {
  test('the count that just carries it, and one more for a little more', () => {
    expect(kept(team({ mass_kg: 50 })).people).toBe(3);
    expect(kept(team({ mass_kg: 50.1 })).people).toBe(4);
    expect(kept(team({ mass_kg: 5 })).people).toBe(2);
  });

  test('people who may take less are more', () => {
    const alone_kg = LIFTING_FILTER_kg.woman['elbow to knuckle'].close;
    expect(kept(team({ mass_kg: 40, alone_kg })).people).toBe(4);
    expect(kept(team({ mass_kg: 40 })).people).toBe(3);
  });

  test('from four on it is rolled', () => {
    expect(kept(team({ mass_kg: 40 })).trolley).toBe(false);
    expect(kept(team({ mass_kg: 60 })).trolley).toBe(true);
  });

  test('refusals', () => {
    expect(refused(team({ mass_kg: 0 }))).toMatchObject({ code: 'out-of-range', field: 'mass_kg' });
    expect(refused(team({ mass_kg: 40, alone_kg: 60 }))).toMatchObject({ field: 'alone_kg' });
  });
});

describe('standing a frame up', () => {
  const frame = { mass_kg: 60, along_mm: 1000, above_mm: 300, hands_mm: 2000 };

  test('is heaviest at the start and weighs nothing at the balance', () => {
    const it = kept(standUp(frame));
    expect(it.start_N).toBeCloseTo((60 * 9.80665) / 2, 9);
    const forces = it.holds.map(hold => hold.force_N);
    expect([...forces].sort((a, b) => b - a)).toEqual(forces);
    expect(it.holds.at(-1)).toEqual({ raised_rad: it.balance_rad, force_N: 0 });
    expect(it.balance_rad).toBeCloseTo(Math.atan(1 / 0.3), 12);
  });

  test('a flat frame stands by itself only upright', () => {
    expect(kept(standUp({ ...frame, above_mm: 0 })).balance_rad).toBeCloseTo(Math.PI / 2, 12);
  });

  test('the edge slides least when the hands are far out', () => {
    expect(kept(standUp({ ...frame, hands_mm: 3000 })).friction_needed).toBeLessThan(
      kept(standUp({ ...frame, hands_mm: 1200 })).friction_needed,
    );
  });

  test('hands at the centre of mass are still finite', () => {
    expect(Number.isFinite(kept(standUp({ ...frame, hands_mm: 1000 })).friction_needed)).toBe(true);
  });

  test('what tips it once it stands', () => {
    const it = kept(standing(60, 300, 1200, 600));
    expect(it.push_N).toBeCloseTo((60 * 9.80665) / 4, 9);
    expect(it.tips_at_rad).toBeCloseTo(Math.atan(0.5), 12);
  });

  test('refusals', () => {
    expect(refused(standUp({ ...frame, mass_kg: 0 }))).toMatchObject({ field: 'mass_kg' });
    expect(refused(standUp({ ...frame, hands_mm: 900 }))).toMatchObject({ field: 'hands_mm' });
    expect(refused(standUp({ ...frame, along_mm: 0 }))).toMatchObject({ field: 'along_mm' });
    expect(refused(standing(60, 0, 1200, 600))).toMatchObject({ field: 'half_base_mm' });
    expect(refused(standing(-1, 300, 1200, 600))).toMatchObject({ field: 'mass_kg' });
  });
});

describe('sliding a frame', () => {
  test('a band from the slippery to the grippy end of the ground', () => {
    const it = kept(slide({ mass_kg: 80, slope_rad: 0, friction: FRICTION['dry grass'] }));
    expect(it.keep_going_N.low).toBeCloseTo(80 * 9.80665 * 0.3, 9);
    expect(it.keep_going_N.high).toBeCloseTo(80 * 9.80665 * 0.5, 9);
    expect(it.start_N.high).toBeCloseTo(it.keep_going_N.high * 1.3, 9);
    // Two on the rope start it, one does not.
    expect(it.start_N.low).toBeGreaterThan(START_PULL_N.man);
  });

  test('a rope at its best angle pulls least', () => {
    const flat = { mass_kg: 80, slope_rad: 0, friction: { low: 0.5, high: 0.5 } };
    const best = kept(slide(flat)).best_rope_rad;
    const at = (rope_rad: number) => kept(slide({ ...flat, rope_rad })).keep_going_N.high;
    expect(at(best)).toBeLessThan(at(0));
    expect(at(best)).toBeLessThanOrEqual(at(best + 0.05));
    expect(at(best)).toBeLessThanOrEqual(at(best - 0.05));
  });

  test('held back down a slope by what its weight pulls over the friction, nothing where it stays by itself', () => {
    const friction = { low: 0.1, high: 0.3 };
    for (const slope_rad of [rad(15), rad(-15)]) {
      const { hold_N } = kept(slide({ mass_kg: 80, slope_rad, friction }));
      expect(hold_N.high).toBeCloseTo(80 * 9.80665 * (Math.sin(rad(15)) - 0.1 * Math.cos(rad(15))), 9);
      expect(hold_N.low).toBe(0);
    }
    expect(kept(slide({ mass_kg: 80, slope_rad: 0, friction })).hold_N).toEqual({ low: 0, high: 0 });
  });

  test('downhill it may run away, and wants no pull', () => {
    const it = kept(slide({ mass_kg: 80, slope_rad: rad(-20), friction: FRICTION.snow }));
    expect(it.runs_away).toBe(true);
    expect(it.keep_going_N).toEqual({ low: 0, high: 0 });
    expect(kept(slide({ mass_kg: 80, slope_rad: rad(5), friction: FRICTION.gravel })).runs_away).toBe(false);
  });

  test('refusals', () => {
    const flat = { mass_kg: 80, slope_rad: 0, friction: { low: 0.4, high: 0.6 } };
    expect(refused(slide({ ...flat, mass_kg: -1 }))).toMatchObject({ field: 'mass_kg' });
    expect(refused(slide({ ...flat, slope_rad: rad(60) }))).toMatchObject({ field: 'slope_deg' });
    expect(refused(slide({ ...flat, friction: { low: 0.6, high: 0.4 } }))).toMatchObject({
      field: 'friction',
    });
    expect(refused(slide({ ...flat, rope_rad: rad(80) }))).toMatchObject({ field: 'rope_deg' });
  });
});

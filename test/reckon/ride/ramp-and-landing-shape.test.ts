import { describe, expect, test } from 'vitest';
import { landingSurface } from '../../../src/reckon/ride/landing-surface.ts';
import { arcOnset, leadIn } from '../../../src/reckon/ride/onset.ts';
import { rampPush } from '../../../src/reckon/ride/ramp-push.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

describe('an easy start of the curve', () => {
  test('without a lead-in it is the plain arc', () => {
    const it = kept(leadIn(0.6, rad(40), 0));
    expect(it.radius_m).toBeCloseTo(0.6 / (1 - Math.cos(rad(40))), 12);
    expect(it.base_m).toBeCloseTo(it.radius_m * Math.sin(rad(40)), 12);
    expect(it.path_m).toBeCloseTo(it.radius_m * rad(40), 12);
    expect(it.sharpening_1_m2).toBe(0);
  });

  test('a longer lead-in makes a longer ramp with a tighter arc behind it', () => {
    const short = kept(leadIn(0.6, rad(40), 0.4));
    const long = kept(leadIn(0.6, rad(40), 1.2));
    expect(long.base_m).toBeGreaterThan(short.base_m);
    expect(long.radius_m).toBeLessThan(short.radius_m);
  });

  test('refusals', () => {
    expect(refused(leadIn(0.6, rad(40), 5))).toMatchObject({ code: 'no-solution', field: 'lead_in_m' });
    expect(refused(leadIn(0, rad(40), 0.5))).toMatchObject({ field: 'height_m' });
    expect(refused(leadIn(0.6, 0, 0.5))).toMatchObject({ field: 'exit_deg' });
    expect(refused(arcOnset(0, 2, 1))).toMatchObject({ field: 'speed_m_s' });
    expect(refused(arcOnset(6, 2, 0))).toMatchObject({ field: 'wheelbase_m' });
  });
});

describe('a landing of even fall height', () => {
  const landing = { exit_rad: rad(30), fall_height_m: 0.5, end: { x_m: 6, y_m: -1.2 }, near_m: 2 };

  test('a harder one lies flatter at its end', () => {
    const slopeAt = (fall_height_m: number) =>
      kept(landingSurface({ ...landing, fall_height_m }))[0]?.slope_rad ?? 0;
    expect(slopeAt(1)).toBeGreaterThan(slopeAt(0.5));
  });

  test('refusals', () => {
    expect(refused(landingSurface({ ...landing, near_m: 7 }))).toMatchObject({ field: 'near_m' });
    expect(refused(landingSurface({ ...landing, fall_height_m: 0 }))).toMatchObject({
      field: 'fall_height_m',
    });
    expect(refused(landingSurface({ ...landing, fall_height_m: 9 }))).toMatchObject({ code: 'no-solution' });
    expect(refused(landingSurface({ ...landing, exit_rad: 0 }))).toMatchObject({ field: 'exit_deg' });
    expect(refused(landingSurface({ ...landing, end: { x_m: 999, y_m: 0 } }))).toMatchObject({
      field: 'end',
    });
  });
});

describe('a rider pushes the ramp', () => {
  const ramp = {
    rider_kg: 90,
    speed_m_s: 6,
    radius_m: 3,
    exit_rad: rad(40),
    ramp_kg: 60,
    friction: 0.4,
    base_m: 1.9,
    lip_m: 0.7,
    centre_m: 0.9,
  };

  test('a heavy ramp on a grippy floor holds itself', () => {
    const it = kept(rampPush({ ...ramp, ramp_kg: 600, friction: 0.8 }));
    expect(it.slide_short_N).toBe(0);
    expect(it.hold_down_N).toBe(0);
  });

  test('at the start of the arc all of the push is down', () => {
    const { start } = kept(rampPush(ramp));
    expect(start.forward_N).toBe(0);
    expect(start.down_N).toBe(start.normal_N);
  });

  test('refusals', () => {
    expect(refused(rampPush({ ...ramp, base_m: 0 }))).toMatchObject({
      code: 'out-of-range',
      field: 'base_m',
    });
    expect(refused(rampPush({ ...ramp, friction: -1 }))).toMatchObject({ field: 'friction' });
    expect(refused(rampPush({ ...ramp, speed_m_s: 1 }))).toMatchObject({ code: 'no-solution' });
  });
});

import { describe, expect, test } from 'vitest';
import { type LandingBandInput, landingBand } from '../../../src/reckon/ride/landing-band.ts';
import { wheelLag } from '../../../src/reckon/ride/wheel-lag.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const jump: LandingBandInput = {
  speed_m_s: 7,
  exit_rad: rad(30),
  radius_m: 2.5,
  wheelbase_m: 1,
  drop_m: 0,
};

describe('two wheels on a curve', () => {
  test('a straight of a wheelbase takes the lag away, half of one takes most of it', () => {
    const none = kept(wheelLag(1, 2.5, 0));
    const half = kept(wheelLag(1, 2.5, 0.5));
    expect(kept(wheelLag(1, 2.5, 1))).toBe(0);
    // On a gentle curve it falls with the square of what is left: (w − s)²/(2Rw).
    expect(half / none).toBeCloseTo(0.25, 1);
    expect(half).toBeLessThan(none / 3);
  });

  test('a wheelbase longer than the curve is wide does not fit', () => {
    expect(refused(wheelLag(5, 2.5, 0))).toMatchObject({ code: 'out-of-range', field: 'wheelbase_m' });
    expect(refused(wheelLag(1, 0, 0))).toMatchObject({ field: 'radius_m' });
    expect(refused(wheelLag(1, 2.5, -1))).toMatchObject({ field: 'straight_m' });
  });
});

describe('where a rider may land', () => {
  const band = kept(landingBand(jump));

  test('every cause holds the plain landing, and all together hold every cause', () => {
    for (const cause of [band.by_angle, band.by_spring, band.by_speed]) {
      expect(cause.near_m).toBeLessThanOrEqual(band.plain_m);
      expect(cause.far_m).toBeGreaterThanOrEqual(band.plain_m);
      expect(band.all.near_m).toBeLessThanOrEqual(cause.near_m);
      expect(band.all.far_m).toBeGreaterThanOrEqual(cause.far_m);
    }
  });

  test('a rider who soaks up the lip lands at 2.01 m instead of 4.33, one who springs at 5.02', () => {
    expect(band.plain_m).toBeCloseTo(4.327, 3);
    expect(band.by_spring.near_m).toBeCloseTo(2.014, 3);
    expect(band.by_spring.far_m).toBeCloseTo(5.016, 3);
  });

  test('two wheels on the curve land shorter: at 18.5° as a point would', () => {
    expect(band.by_angle.far_m).toBeCloseTo(4.327, 3);
    expect(band.by_angle.near_m).toBeCloseTo((49 * Math.sin(2 * (rad(30) - Math.asin(0.2)))) / 9.80665, 9);
  });

  test('2 km/h moves the landing by twice what 1 km/h does', () => {
    const width = (speed_error_m_s: number) => {
      const { near_m, far_m } = kept(landingBand({ ...jump, speed_error_m_s })).by_speed;
      return far_m - near_m;
    };
    expect(width(1 / 3.6)).toBeCloseTo(2 * 0.343, 2);
    expect(width(2 / 3.6) / width(1 / 3.6)).toBeCloseTo(2, 6);
  });

  test('a straight last part of the lip narrows the band', () => {
    const straight = kept(landingBand({ ...jump, straight_m: 1 }));
    expect(straight.lag_rad).toBe(0);
    expect(straight.by_angle.near_m).toBe(straight.by_angle.far_m);
  });

  test('past 45° the farthest landing lies inside the angles, not at their ends', () => {
    const steep = kept(landingBand({ ...jump, exit_rad: rad(50), radius_m: 2 }));
    const flattest = kept(landingBand({ ...jump, exit_rad: rad(50) - steep.lag_rad, straight_m: 1 })).plain_m;
    expect(steep.by_angle.far_m).toBeGreaterThan(Math.max(steep.plain_m, flattest));
  });

  test('behind a gap the band says that some of it falls short', () => {
    const gapped = { ...jump, gap_m: 3.5, slope_rad: rad(20) };
    expect(kept(landingBand(gapped)).may_fall_short).toBe(true);
    const sure = { ...gapped, gap_m: 1, spring_m_s: { least: -0.2, most: 0.2 } };
    expect(kept(landingBand(sure)).may_fall_short).toBe(false);
    expect(kept(landingBand(sure)).worst_fall_m).toBeGreaterThan(0);
  });

  test('it refuses what cannot be flown', () => {
    expect(refused(landingBand({ ...jump, speed_m_s: 0 }))).toMatchObject({ field: 'speed_m_s' });
    expect(refused(landingBand({ ...jump, wheelbase_m: 0 }))).toMatchObject({ field: 'wheelbase_m' });
  });
});

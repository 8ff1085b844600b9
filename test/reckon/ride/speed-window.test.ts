import { describe, expect, test } from 'vitest';
import { clearSpeed } from '../../../src/reckon/ride/clear-speed.ts';
import { climb } from '../../../src/reckon/ride/climb.ts';
import { flight } from '../../../src/reckon/ride/flight.ts';
import { type SpeedWindowInput, speedWindow } from '../../../src/reckon/ride/speed-window.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const jump: SpeedWindowInput = {
  radius_m: 3,
  exit_rad: rad(35),
  gap_m: 2,
  drop_m: 0.1,
  slope_rad: rad(20),
  landing_m: 3,
  rolling: 0.01,
  mass_kg: 80,
  drag_area_m2: 0.5,
};

describe('the window', () => {
  test('its ends, ridden, come down at its margins', () => {
    const { entry } = kept(speedWindow(jump));
    for (const [speed_m_s, past] of [
      [entry.least_m_s, 0.5],
      [entry.most_m_s, 2.5],
    ] as const) {
      const up = kept(climb({ ...jump, speed_m_s }));
      const down = kept(flight({ ...jump, speed_m_s: up.exit_speed_m_s }));
      expect(down.distance_m).toBeCloseTo(jump.gap_m + past, 6);
    }
  });

  test('a level table is a landing too', () => {
    const { exit } = kept(speedWindow({ ...jump, drop_m: 0, slope_rad: 0 }));
    expect(
      kept(flight({ ...jump, drop_m: 0, slope_rad: 0, speed_m_s: exit.least_m_s })).distance_m,
    ).toBeCloseTo(2.5, 6);
  });

  test('a longer landing widens it', () => {
    expect(kept(speedWindow({ ...jump, landing_m: 4 })).width_m_s).toBeGreaterThan(
      kept(speedWindow(jump)).width_m_s,
    );
    expect(kept(speedWindow({ ...jump, landing_m: 1.2 })).narrow).toBe(true);
  });

  test('what no speed does is refused', () => {
    expect(refused(speedWindow({ ...jump, drop_m: -3 }))).toMatchObject({
      code: 'no-solution',
      field: 'gap_m',
    });
    expect(refused(speedWindow({ ...jump, landing_m: 1 }))).toMatchObject({
      code: 'out-of-range',
      field: 'landing_m',
    });
    expect(refused(speedWindow({ ...jump, margin_m: -1 }))).toMatchObject({ field: 'margin_m' });
    expect(refused(speedWindow({ ...jump, radius_m: -1 }))).toMatchObject({ field: 'radius_m' });
  });
});

describe('clearing a gap as a bike does', () => {
  const gap = {
    exit_rad: rad(30),
    gap_m: 3,
    drop_m: 0,
    slope_rad: rad(25),
    body_height_m: 0.9,
    wheelbase_m: 1,
  };

  test('asks more than a point, and half a metre past the knuckle more again', () => {
    const past = kept(clearSpeed(gap));
    const bare = kept(clearSpeed({ ...gap, past_m: 0 }));
    expect(bare.point_m_s).toBeLessThan(bare.rear_wheel_m_s);
    expect(bare.rear_wheel_m_s).toBeLessThan(bare.mid_wheelbase_m_s);
    expect(past.rear_wheel_m_s).toBeGreaterThan(bare.rear_wheel_m_s);
  });

  test('a body of no size is a point', () => {
    const it = kept(clearSpeed({ ...gap, body_height_m: 0, wheelbase_m: 0 }));
    expect(it.rear_wheel_m_s).toBe(it.point_m_s);
  });

  test('refusals', () => {
    expect(refused(clearSpeed({ ...gap, body_height_m: -1 }))).toMatchObject({ field: 'body_height_m' });
    expect(refused(clearSpeed({ ...gap, drop_m: -5 }))).toMatchObject({ code: 'no-solution' });
  });
});

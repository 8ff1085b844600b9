import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ClimbInput, climb, entrySpeedFor } from '../../../src/reckon/ride/climb.ts';
import { stiffRider } from '../../../src/reckon/ride/stiff-rider.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const ramp: ClimbInput = { speed_m_s: 7, radius_m: 3, exit_rad: rad(45) };

const anyClimb = fc.record({
  speed_m_s: fc.double({ min: 0.01, max: 100, noNaN: true }),
  radius_m: fc.double({ min: 0.1, max: 1000, noNaN: true }),
  exit_rad: fc.double({ min: 1e-9, max: rad(120), noNaN: true }),
  rolling: fc.double({ min: 0, max: 0.99, noNaN: true }),
  mass_kg: fc.double({ min: 1, max: 1000, noNaN: true }),
  drag_area_m2: fc.double({ min: 0, max: 10, noNaN: true }),
});

describe('the climb', () => {
  test('losses leave less speed, and no loss at the start of the arc', () => {
    const plain = kept(climb(ramp));
    const slowed = kept(climb({ ...ramp, rolling: 0.02, mass_kg: 80, drag_area_m2: 0.5 }));
    expect(slowed.exit_speed_m_s).toBeLessThan(plain.exit_speed_m_s);
    expect(slowed.load_factor_start).toBe(plain.load_factor_start);
  });

  test('drag alone and rolling alone each slow', () => {
    const plain = kept(climb(ramp)).exit_speed_m_s;
    expect(kept(climb({ ...ramp, rolling: 0.02 })).exit_speed_m_s).toBeLessThan(plain);
    expect(kept(climb({ ...ramp, mass_kg: 80, drag_area_m2: 0.5 })).exit_speed_m_s).toBeLessThan(plain);
  });

  test('read backwards it gives the speed it came from', () => {
    const losing = { ...ramp, rolling: 0.02, mass_kg: 80, drag_area_m2: 0.5 };
    expect(entrySpeedFor(losing, kept(climb(losing)).exit_speed_m_s)).toBeCloseTo(7, 12);
  });

  test('a stiff rider is pressed harder than one who stretches', () => {
    expect(kept(stiffRider({ ...ramp, body_height_m: 0.9 })).load_factor_start).toBeGreaterThan(
      kept(climb(ramp)).load_factor_start,
    );
  });

  test('every climb that is given is finite, slower than it began, and above its least speed', () => {
    fc.assert(
      fc.property(anyClimb, input => {
        const outcome = climb(input);
        if (!outcome.ok) {
          expect(outcome.fault.accepted).not.toMatch(/NaN|Infinity/);
          return;
        }
        for (const number of Object.values(outcome.value)) expect(Number.isFinite(number)).toBe(true);
        expect(outcome.value.exit_speed_m_s).toBeLessThanOrEqual(input.speed_m_s);
        expect(outcome.value.least_speed_m_s).toBeLessThanOrEqual(input.speed_m_s * (1 + 1e-9));
        expect(outcome.value.load_factor_end).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });
});

describe('refusals', () => {
  test('a stall is told the least speed, and that one climbs', () => {
    const fault = refused(climb({ ...ramp, speed_m_s: 2, rolling: 0.02, mass_kg: 80, drag_area_m2: 0.5 }));
    expect(fault).toMatchObject({ code: 'no-solution', field: 'speed_m_s' });
    const least = Number.parseFloat(fault.accepted);
    const losing = { ...ramp, rolling: 0.02, mass_kg: 80, drag_area_m2: 0.5 };
    expect(climb({ ...losing, speed_m_s: least }).ok).toBe(true);
    expect(climb({ ...losing, speed_m_s: least - 0.002 }).ok).toBe(false);
  });

  test('past 90° it is not enough to move: the rider must be pressed on', () => {
    const steep = { radius_m: 2, exit_rad: rad(110) };
    const fault = refused(climb({ ...steep, speed_m_s: 5.2 }));
    const least = Number.parseFloat(fault.accepted);
    expect(kept(climb({ ...steep, speed_m_s: least })).load_factor_end).toBeCloseTo(0, 2);
    expect(kept(climb({ ...steep, speed_m_s: least })).exit_speed_m_s).toBeGreaterThan(2);
  });

  test('an arc that no rider gets over says so without a number', () => {
    expect(refused(climb({ ...ramp, radius_m: 900, exit_rad: rad(90) })).accepted).toBe(
      'a lower or gentler arc',
    );
  });

  test.each([
    [{ speed_m_s: 0 }, 'speed_m_s'],
    [{ radius_m: 0 }, 'radius_m'],
    [{ exit_rad: 0 }, 'exit_deg'],
    [{ exit_rad: rad(121) }, 'exit_deg'],
    [{ rolling: -0.01 }, 'rolling'],
    [{ rolling: 1 }, 'rolling'],
    [{ mass_kg: Number.NaN }, 'mass_kg'],
  ] as const)('%o is out of range', (bad, field) => {
    expect(refused(climb({ ...ramp, ...bad }))).toMatchObject({ code: 'out-of-range', field });
  });

  test('a body as high as the curve’s radius has no path', () => {
    expect(refused(stiffRider({ ...ramp, body_height_m: 2.9 }))).toMatchObject({ field: 'body_height_m' });
    expect(refused(stiffRider({ ...ramp, speed_m_s: 1, body_height_m: 0.9 }))).toMatchObject({
      code: 'no-solution',
    });
  });
});

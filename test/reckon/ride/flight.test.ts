import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type FlightInput, flight } from '../../../src/reckon/ride/flight.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const G = 9.80665;
const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const flown = (input: FlightInput) => kept(flight(input));
const refusedFlight = (input: FlightInput) => refused(flight(input));

const speed = fc.double({ min: 1, max: 20, noNaN: true });
const exit = fc.double({ min: 0.02, max: 1.5, noNaN: true });
const drop = fc.double({ min: 0, max: 5, noNaN: true });
const drag = fc.record({
  mass_kg: fc.double({ min: 30, max: 150, noNaN: true }),
  drag_area_m2: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
});

describe('landing', () => {
  test('a rider who comes down before the gap ends is short by what is missing, at the knuckle’s level', () => {
    const it = flown({ speed_m_s: 5, exit_rad: rad(30), drop_m: 0.2, gap_m: 3, slope_rad: rad(20) });
    const level = flown({ speed_m_s: 5, exit_rad: rad(30), drop_m: 0.2 });
    expect(it.distance_m).toBe(level.distance_m);
    expect(it.short_m).toBeCloseTo(3 - level.distance_m, 12);
  });

  test('a rider over the gap is not short', () => {
    expect(
      flown({ speed_m_s: 7, exit_rad: rad(30), drop_m: 0, gap_m: 3, slope_rad: rad(25) }),
    ).not.toHaveProperty('short_m');
  });

  test('a gap in level ground is jumped or not', () => {
    expect(flown({ speed_m_s: 5, exit_rad: rad(30), drop_m: 0, gap_m: 2 })).not.toHaveProperty('short_m');
    expect(flown({ speed_m_s: 5, exit_rad: rad(30), drop_m: 0, gap_m: 3 }).short_m).toBeCloseTo(
      3 - 2.2077,
      3,
    );
  });

  test('just the speed that meets the knuckle lands on it', () => {
    const speed_m_s = Math.sqrt((G * 9) / (2 * Math.cos(rad(30)) ** 2 * 3 * Math.tan(rad(30))));
    const it = flown({ speed_m_s, exit_rad: rad(30), drop_m: 0, gap_m: 3, slope_rad: rad(25) });
    expect(it.distance_m).toBeCloseTo(3, 6);
    expect(it.short_m ?? 0).toBeLessThan(1e-6);
  });

  test('a roll-off from a level edge falls as a stone does', () => {
    const it = flown({ speed_m_s: 3, exit_rad: 0, drop_m: 1 });
    expect(it.time_s).toBeCloseTo(Math.sqrt(2 / G), 12);
    expect(it.rise_m).toBe(0);
    expect(it.fall_height_m).toBeCloseTo(1, 12);
  });

  test('a landing that lies higher is met on the way down', () => {
    const it = flown({ speed_m_s: 7, exit_rad: rad(45), drop_m: -0.5, gap_m: 2, slope_rad: rad(20) });
    expect(it.distance_m).toBeGreaterThan(2);
    expect(it.landing_rad).toBeGreaterThan(0);
  });

  test('up a steep bank a rider may land while still rising', () => {
    const it = flown({ speed_m_s: 10, exit_rad: rad(50), drop_m: 0.2, gap_m: 1, slope_rad: rad(-45) });
    expect(it.landing_rad).toBeLessThan(0);
    expect(it.rise_m).toBeLessThan((10 * Math.sin(rad(50))) ** 2 / (2 * G));
  });

  test('drag with a shallow drop does what the plain path does, a little less', () => {
    const plain = flown({ speed_m_s: 7, exit_rad: rad(30), drop_m: 0.9 });
    const slowed = flown({ speed_m_s: 7, exit_rad: rad(30), drop_m: 0.9, mass_kg: 85, drag_area_m2: 0.5 });
    expect(slowed.distance_m / plain.distance_m).toBeCloseTo(0.989, 3);
  });
});

describe('laws', () => {
  test('without drag it is the closed form', () => {
    fc.assert(
      fc.property(speed, exit, drop, (v, angle, h) => {
        const it = flown({ speed_m_s: v, exit_rad: angle, drop_m: h, mass_kg: 80, drag_area_m2: 0 });
        const up = v * Math.sin(angle);
        const range = (v * Math.cos(angle) * (up + Math.sqrt(up * up + 2 * G * h))) / G;
        expect(it.distance_m).toBeCloseTo(range, 9);
      }),
    );
  });

  test('with next to no drag it is nearly the closed form', () => {
    fc.assert(
      fc.property(speed, exit, drop, (v, angle, h) => {
        const plain = flown({ speed_m_s: v, exit_rad: angle, drop_m: h });
        const thin = flown({ speed_m_s: v, exit_rad: angle, drop_m: h, mass_kg: 1000, drag_area_m2: 1e-6 });
        expect(thin.distance_m).toBeCloseTo(plain.distance_m, 5);
        expect(thin.rise_m).toBeCloseTo(plain.rise_m, 5);
      }),
      { numRuns: 30 },
    );
  });

  test('more speed lands farther, with drag and without', () => {
    fc.assert(
      fc.property(
        speed,
        fc.double({ min: 0.01, max: 3, noNaN: true }),
        exit,
        drop,
        fc.option(drag),
        (v, more, angle, h, air) => {
          const at = (speed_m_s: number) =>
            flown({ speed_m_s, exit_rad: angle, drop_m: h, ...(air ?? {}) }).distance_m;
          expect(at(v + more)).toBeGreaterThan(at(v));
        },
      ),
      { numRuns: 40 },
    );
  });

  test('drag shortens every flight', () => {
    fc.assert(
      fc.property(speed, exit, drop, drag, (v, angle, h, air) => {
        const plain = flown({ speed_m_s: v, exit_rad: angle, drop_m: h });
        const slowed = flown({ speed_m_s: v, exit_rad: angle, drop_m: h, ...air });
        expect(slowed.distance_m).toBeLessThan(plain.distance_m);
        expect(slowed.landing_speed_m_s).toBeLessThan(plain.landing_speed_m_s);
      }),
      { numRuns: 30 },
    );
  });

  test('every flight that is given has only finite numbers, at the ends of every limit too', () => {
    const anything = fc.record({
      speed_m_s: fc.double({ min: 1e-6, max: 100, noNaN: true }),
      exit_rad: fc.double({ min: 0, max: rad(89.999), noNaN: true }),
      drop_m: fc.double({ min: -100, max: 100, noNaN: true }),
      gap_m: fc.option(fc.double({ min: 0, max: 200, noNaN: true }), { nil: undefined }),
      slope_rad: fc.option(fc.double({ min: rad(-45), max: rad(80), noNaN: true }), { nil: undefined }),
      drag_area_m2: fc.constantFrom(0, 0.5, 10),
      mass_kg: fc.constantFrom(1, 80, 1000),
    });
    fc.assert(
      fc.property(anything, input => {
        const outcome = flight(input);
        if (!outcome.ok) expect(outcome.fault.accepted).not.toMatch(/NaN|Infinity/);
        else for (const number of Object.values(outcome.value)) expect(Number.isFinite(number)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe('refusals', () => {
  const good: FlightInput = { speed_m_s: 7, exit_rad: rad(30), drop_m: 0.5 };

  test.each([
    [{ speed_m_s: 0 }, 'speed_m_s'],
    [{ speed_m_s: -3 }, 'speed_m_s'],
    [{ speed_m_s: Number.NaN }, 'speed_m_s'],
    [{ exit_rad: rad(-1) }, 'exit_deg'],
    [{ exit_rad: rad(90) }, 'exit_deg'],
    [{ gap_m: -1 }, 'gap_m'],
    [{ slope_rad: rad(90) }, 'slope_deg'],
    [{ mass_kg: 0, drag_area_m2: 0.5 }, 'mass_kg'],
    [{ mass_kg: 80, drag_area_m2: -0.5 }, 'drag_area_m2'],
  ] as const)('%o is out of range', (bad, field) => {
    const fault = refusedFlight({ ...good, ...bad });
    expect(fault.code).toBe('out-of-range');
    expect(fault.field).toBe(field);
    expect(fault.accepted).toMatch(/\d/);
  });

  test('drag without a mass says what is missing', () => {
    expect(refusedFlight({ ...good, drag_area_m2: 0.5 })).toMatchObject({
      code: 'missing-field',
      field: 'mass_kg',
    });
  });

  test('a speed that cannot reach is told the least that does, and that one is accepted', () => {
    for (const input of [
      { speed_m_s: 4, exit_rad: rad(40), drop_m: -1.5 },
      { speed_m_s: 4, exit_rad: rad(40), drop_m: -1.5, mass_kg: 80, drag_area_m2: 0.5 },
      { speed_m_s: 4, exit_rad: rad(40), drop_m: -1, gap_m: 2, slope_rad: rad(20) },
    ]) {
      const fault = refusedFlight(input);
      expect(fault).toMatchObject({ code: 'no-solution', field: 'speed_m_s' });
      const least = Number.parseFloat(fault.accepted);
      expect(flight({ ...input, speed_m_s: least }).ok).toBe(true);
      const slower = flight({ ...input, speed_m_s: least - 0.002 });
      expect(slower.ok && slower.value.short_m === undefined).toBe(false);
    }
  });

  test('a path still under the landing where it begins hits its face: that is no landing', () => {
    expect(refusedFlight({ speed_m_s: 7, exit_rad: rad(45), drop_m: -1, gap_m: 0.5 })).toMatchObject({
      code: 'no-solution',
    });
  });

  test('a level lip on the ground has no flight', () => {
    expect(refusedFlight({ speed_m_s: 7, exit_rad: 0, drop_m: 0 })).toMatchObject({
      code: 'no-solution',
      field: 'exit_deg',
    });
    expect(refusedFlight({ speed_m_s: 7, exit_rad: 0, drop_m: -1 })).toMatchObject({
      code: 'no-solution',
      field: 'exit_deg',
    });
  });
});

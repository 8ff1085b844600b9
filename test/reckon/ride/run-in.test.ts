import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type RunInInput, runIn } from '../../../src/reckon/ride/run-in.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const good: RunInInput = {
  speed_m_s: 6,
  slope_rad: rad(12),
  flat_m: 4,
  rolling: 0.01,
  mass_kg: 80,
  drag_area_m2: 0.5,
};

describe('the run-in', () => {
  test('a longer flat, more drag and softer ground each ask a higher start', () => {
    const drop = kept(runIn(good)).drop_m;
    expect(kept(runIn({ ...good, flat_m: 8 })).drop_m).toBeGreaterThan(drop);
    expect(kept(runIn({ ...good, drag_area_m2: 0.7 })).drop_m).toBeGreaterThan(drop);
    expect(kept(runIn({ ...good, rolling: 0.03 })).drop_m).toBeGreaterThan(drop);
  });

  test('next to no drag is as none', () => {
    const none = kept(runIn({ ...good, drag_area_m2: 0 }));
    const thin = kept(runIn({ ...good, drag_area_m2: 1e-12 }));
    expect(thin.drop_m).toBeCloseTo(none.drop_m, 9);
  });

  test('whatever is given is finite and higher than falling alone', () => {
    const anything = fc.record({
      speed_m_s: fc.double({ min: 1e-6, max: 100, noNaN: true }),
      slope_rad: fc.double({ min: rad(0.1), max: rad(89.9), noNaN: true }),
      flat_m: fc.double({ min: 0, max: 10_000, noNaN: true }),
      rolling: fc.double({ min: 0, max: 0.99, noNaN: true }),
      mass_kg: fc.double({ min: 1, max: 1000, noNaN: true }),
      drag_area_m2: fc.double({ min: 0, max: 10, noNaN: true }),
    });
    fc.assert(
      fc.property(anything, input => {
        const outcome = runIn(input);
        if (!outcome.ok) {
          expect(outcome.fault.accepted).not.toMatch(/NaN|Infinity/);
          return;
        }
        for (const number of Object.values(outcome.value)) expect(Number.isFinite(number)).toBe(true);
        expect(outcome.value.drop_m).toBeGreaterThanOrEqual((input.speed_m_s ** 2 / 19.6133) * (1 - 1e-9));
      }),
    );
  });
});

describe('refusals', () => {
  test('a slope too gentle to roll is told the one that rolls', () => {
    const fault = refused(runIn({ ...good, slope_rad: rad(0.5) }));
    expect(fault).toMatchObject({ code: 'no-solution', field: 'slope_deg', accepted: 'more than 0.573°' });
  });

  test('a speed that drag forbids is told the one it allows', () => {
    const fault = refused(runIn({ ...good, speed_m_s: 40 }));
    expect(fault).toMatchObject({ code: 'no-solution', field: 'speed_m_s' });
    const most = Number.parseFloat(fault.accepted.replace('less than ', ''));
    expect(runIn({ ...good, speed_m_s: most - 0.001 }).ok).toBe(true);
    expect(runIn({ ...good, speed_m_s: most + 0.002 }).ok).toBe(false);
  });

  test('a flat no rider rolls across', () => {
    expect(refused(runIn({ ...good, flat_m: 9000 }))).toMatchObject({ code: 'no-solution', field: 'flat_m' });
  });

  test.each([
    [{ speed_m_s: -1 }, 'speed_m_s'],
    [{ slope_rad: 0 }, 'slope_deg'],
    [{ slope_rad: rad(90) }, 'slope_deg'],
    [{ flat_m: -1 }, 'flat_m'],
    [{ mass_kg: 0 }, 'mass_kg'],
    [{ drag_area_m2: -1 }, 'drag_area_m2'],
  ] as const)('%o is out of range', (bad, field) => {
    expect(refused(runIn({ ...good, ...bad }))).toMatchObject({ code: 'out-of-range', field });
  });
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type SlitInput, slitClose, slitLever, slitPlan } from '../../../src/reckon/curve/slits.ts';
import { radians } from '../../../src/reckon/numeric/angle.ts';

const job: SlitInput = {
  hingeRadius_mm: 3056.5,
  turn_rad: radians(45),
  depth_mm: 40,
  wall_mm: 3,
  kerf_mm: 1.2,
  gap_mm: 0,
  pull_rad: 0,
};

const planOf = (input: SlitInput) => {
  const plan = slitPlan(input);
  if (!plan.ok) throw new Error(plan.fault.message);
  return plan.value;
};

const faultOf = (input: SlitInput) => {
  const plan = slitPlan(input);
  if (plan.ok) throw new Error('was not refused');
  return plan.fault;
};

const anyJob = fc.record({
  hingeRadius_mm: fc.double({ min: 1500, max: 20_000, noNaN: true }),
  turn_rad: fc.double({ min: 0.1, max: 1.6, noNaN: true }),
  depth_mm: fc.double({ min: 20, max: 60, noNaN: true }),
  wall_mm: fc.double({ min: 1, max: 4, noNaN: true }),
  kerf_mm: fc.double({ min: 0.8, max: 3, noNaN: true }),
  gap_mm: fc.double({ min: 0, max: 0.4, noNaN: true }),
  pull_rad: fc.double({ min: -0.004, max: 0.02, noNaN: true }),
});

describe('a slit plan', () => {
  test('has its marks inside the bend, evenly, half a flat at each end', () => {
    fc.assert(
      fc.property(anyJob, input => {
        const plan = slitPlan(input);
        fc.pre(plan.ok);
        if (!plan.ok) return;
        const { marks_mm, pitch_mm, cutLength_mm, count } = plan.value;
        expect(marks_mm).toHaveLength(count);
        expect(marks_mm[0]).toBeCloseTo(pitch_mm / 2, 8);
        expect(cutLength_mm - (marks_mm.at(-1) as number)).toBeCloseTo(pitch_mm / 2, 8);
        for (const [n, mark] of marks_mm.slice(1).entries())
          expect(mark - (marks_mm[n] as number)).toBeCloseTo(pitch_mm, 8);
      }),
    );
  });

  test('turns the rail by the whole bend once every slit is closed and its weld has pulled', () => {
    fc.assert(
      fc.property(anyJob, input => {
        const plan = slitPlan(input);
        fc.pre(plan.ok);
        if (plan.ok)
          expect(plan.value.count * (plan.value.close_rad + input.pull_rad)).toBeCloseTo(input.turn_rad, 12);
      }),
    );
  });

  test('has as few slits as keep the gap, and leaves no less than the gap', () => {
    fc.assert(
      fc.property(anyJob, input => {
        const plan = slitPlan(input);
        fc.pre(plan.ok);
        if (!plan.ok) return;
        const { count, close_rad, faceGap_mm } = plan.value;
        const most = slitClose(input.kerf_mm, input.gap_mm, input.depth_mm, input.wall_mm);
        expect(close_rad).toBeGreaterThan(0);
        expect(close_rad).toBeLessThanOrEqual(most * (1 + 1e-8));
        expect(faceGap_mm).toBeGreaterThanOrEqual(input.gap_mm);
        if (count > 1)
          expect(input.turn_rad / (count - 1) - input.pull_rad).toBeGreaterThan(most * (1 - 1e-8));
      }),
    );
  });

  // turn/(close) is whole here up to rounding; a plain ceil saws one slit more in about half the cases.
  test('does not saw a slit more where the slits come out whole', () => {
    for (let whole = 1; whole <= 400; whole += 1) {
      const turn_rad = (whole * 1.2) / 38.5;
      const plan = slitPlan({ ...job, hingeRadius_mm: 1e6, turn_rad });
      expect(plan.ok && plan.value.count, `${whole}`).toBe(whole);
      expect(plan.ok && plan.value.faceGap_mm).toBeGreaterThanOrEqual(0);
    }
  });

  test('takes a greater count and closes each slit less', () => {
    const plan = planOf({ ...job, count: 30 });
    expect(plan.count).toBe(30);
    expect(plan.close_rad).toBeCloseTo(radians(1.5), 12);
    expect(plan.faceGap_mm).toBeCloseTo(1.2 - 38.5 * radians(1.5), 12);
    expect(plan.faceGap_mm).toBeGreaterThan(planOf(job).faceGap_mm);
  });

  test('counts the pull in: welds that pull leave less to close and need fewer slits', () => {
    const pulled = planOf({ ...job, pull_rad: radians(0.4) });
    expect(pulled.count).toBe(21);
    expect(pulled.close_rad).toBeCloseTo(radians(45 / 21 - 0.4), 12);
    expect(planOf({ ...job, pull_rad: radians(-0.1) }).count).toBeGreaterThan(26);
  });
});

describe('what cannot be sawn is refused', () => {
  test('a smaller count, with the count that is needed', () => {
    expect(faultOf({ ...job, count: 25 })).toEqual({
      code: 'out-of-range',
      field: 'count',
      message:
        'A count of 25 is too small: each slit would have to close further than it can. 26 are needed.',
      accepted: 'a whole number from 26',
    });
  });

  test('a count whose welds alone pull past the bend, with the range that will do', () => {
    const fault = faultOf({ ...job, pull_rad: radians(0.5), count: 120 });
    expect(fault).toMatchObject({
      code: 'out-of-range',
      field: 'count',
      accepted: 'a whole number from 20 to 89',
    });
    const pulled = { ...job, pull_rad: radians(0.5) };
    expect(slitPlan({ ...pulled, count: 89 }).ok).toBe(true);
    expect(slitPlan({ ...pulled, count: 90 }).ok).toBe(false);
  });

  test('a pull greater than the bend', () => {
    expect(faultOf({ ...job, turn_rad: radians(0.3), pull_rad: radians(0.5) })).toMatchObject({
      code: 'no-solution',
      field: 'pull_rad',
    });
  });

  test('a pull that opens every slit as far as it can close', () => {
    expect(faultOf({ ...job, pull_rad: radians(-2) })).toMatchObject({
      code: 'no-solution',
      field: 'pull_rad',
    });
  });

  test('a gap as wide as the kerf, a wall that fills the tube, a centre inside the tube', () => {
    expect(faultOf({ ...job, gap_mm: 1.2 })).toMatchObject({ code: 'contradiction', field: 'gap_mm' });
    expect(faultOf({ ...job, wall_mm: 20 })).toMatchObject({ code: 'contradiction', field: 'wall_mm' });
    expect(faultOf({ ...job, hingeRadius_mm: 38 })).toMatchObject({
      code: 'contradiction',
      field: 'hingeRadius_mm',
    });
  });

  test('more slits than a rail has, or than have room', () => {
    expect(faultOf({ ...job, kerf_mm: 0.0001 }).code).toBe('too-large');
    expect(faultOf({ ...job, count: 20_000 })).toMatchObject({ code: 'too-large', field: 'count' });
    expect(faultOf({ ...job, count: 2_500 })).toMatchObject({ code: 'no-solution' });
  });

  test('a bend of nothing', () => {
    expect(faultOf({ ...job, turn_rad: 0 })).toMatchObject({ code: 'out-of-range', field: 'turn_rad' });
  });
});

test('the lever runs from the middle of the back wall to the slit face', () => {
  expect(slitLever(40, 3)).toBe(38.5);
});

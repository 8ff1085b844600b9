import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pullFromRise, risePerBend, updatePull } from '../../../src/reckon/rail/pull.ts';
import { gapForPull, pullPrior, slitsWithPull, tackRadius } from '../../../src/reckon/rail/pull-prior.ts';

describe('what is believed of the weld pull', () => {
  test('a measured rail says nearly all, the belief before it little', () => {
    const after = updatePull(4.5, 0.6, 6.2, 0.14);
    expect(after.pull).toBeGreaterThan(6);
    expect(after.pull).toBeLessThan(6.2);
    expect(after.spread).toBeLessThan(0.15);
  });

  test('lies between belief and measurement, is surer than both, and the next rail may differ more', () => {
    const some = fc.double({ min: 0.05, max: 5, noNaN: true });
    fc.assert(
      fc.property(some, some, some, fc.double({ min: 0, max: 2, noNaN: true }), (prior, spread, seen, sd) => {
        const after = updatePull(prior, spread, seen, sd);
        expect(after.pull).toBeGreaterThanOrEqual(Math.min(prior, seen) * 0.999999);
        expect(after.pull).toBeLessThanOrEqual(Math.max(prior, seen) * 1.000001);
        expect(after.spread).toBeLessThanOrEqual(spread);
        expect(after.next_low).toBeLessThan(after.pull);
        expect(after.next_high / after.pull).toBeCloseTo(after.pull / after.next_low, 6);
        expect(after.next_high).toBeGreaterThan(after.pull * Math.exp(1.95 * after.spread));
      }),
    );
  });

  test('does not break on a measurement that says nothing', () => {
    const after = updatePull(0.25, 0.6, 1e-300, 1);
    expect(after.pull).toBeCloseTo(0.25, 9);
    expect(after.spread).toBeCloseTo(0.6, 9);
  });

  test('the rise of an arc of fixed length grows with its bend as the arc itself says', () => {
    const rise = (bend: number) => (2356.19 / bend) * (1 - Math.cos(bend / 2));
    const bend = Math.PI / 4;
    const slope = (rise(bend + 1e-5) - rise(bend - 1e-5)) / 2e-5;
    expect(risePerBend(2356.19, bend)).toBeCloseTo(slope, 3);
    expect(pullFromRise(33, 2356.19, bend, 25)).toBeCloseTo(0.00466, 4);
  });
});

describe('before the first rail', () => {
  test('the pull falls with the lever of the tube', () => {
    expect(pullPrior(38.5).pull_rad).toBeCloseTo(0.0045, 12);
    // 2 in tube pulls 22 % less
    expect(pullPrior(49.3).pull_rad / 0.0045).toBeCloseTo(0.78, 2);
    const { low_rad, high_rad } = pullPrior(38.5);
    expect(low_rad).toBeLessThan(0.0015);
    expect(high_rad).toBeGreaterThan(0.0104);
  });

  test('a rail is set for its pull by fewer slits, a larger radius or a gap', () => {
    expect(slitsWithPull(Math.PI / 4, 38.5, 1.2, 0, 0)).toBe(26);
    expect(slitsWithPull(Math.PI / 4, 38.5, 1.2, 0, 0.00608)).toBe(22);
    expect(slitsWithPull(0.1, 38.5, 1.2, 0, 0.3)).toBe(1);
    expect(gapForPull(38.5, 0.0045)).toBeCloseTo(0.173, 3);
    const pitch = (3000 * Math.PI) / 4 / 25;
    const radius = tackRadius(3000, pitch, 0.0045)!;
    expect(pitch / radius + 0.0045).toBeCloseTo(pitch / 3000, 12);
    expect(tackRadius(3000, 10, 0.0045)).toBeNull();
  });
});

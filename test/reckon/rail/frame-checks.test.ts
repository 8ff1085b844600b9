import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mismatch } from '../../../src/reckon/rail/mismatch.ts';
import { sidewaysBow } from '../../../src/reckon/rail/sideways.ts';
import { twistOf } from '../../../src/reckon/rail/twist.ts';

const readings = (offsets: number[], pitch = 100) =>
  offsets.map((offset_mm, j) => ({ station_mm: j * pitch, offset_mm }));

describe('rail against rail', () => {
  test('finds the worst difference, the worst step, the lean and the twist', () => {
    const found = mismatch(readings([0, 1, 2, 6, 6]), readings([0, 0, 0, 0, 1]), 1200)!;
    expect(found.worst_mm).toBe(6);
    expect(found.worst_at_mm).toBe(300);
    expect(found.step_mm).toBe(4);
    expect(found.step_at_mm).toBe(300);
    expect(found.twist_rad_mm).toBeCloseTo(4 / 100 / 1200, 12);
    // 5 mm at 1200 is 0.24°
    expect((mismatch(readings([5]), readings([0]), 1200)!.stations[0]!.roll_rad * 180) / Math.PI).toBeCloseTo(
      0.24,
      2,
    );
  });

  test('a difference that stays the same twists nothing', () => {
    const found = mismatch(readings([3, 3, 3]), readings([0, 0, 0]), 1200)!;
    expect(found.worst_mm).toBe(3);
    expect(found.step_mm).toBe(0);
    expect(found.twist_rad_mm).toBe(0);
  });

  test('counts only stations that both rails were read at, in any order', () => {
    const first = [...readings([0, 2, 4, 8])].reverse();
    const second = [
      { station_mm: 100.4, offset_mm: 1 },
      { station_mm: 300, offset_mm: 1 },
      { station_mm: 555, offset_mm: 90 },
    ];
    const found = mismatch(first, second, 1000)!;
    expect(found.stations.map(s => s.apart_mm)).toEqual([1, 7]);
    expect(mismatch(readings([1]), [{ station_mm: 50, offset_mm: 1 }], 1000)).toBeNull();
  });

  test('keeps its sign: the first rail further out is less', () => {
    expect(mismatch(readings([-4]), readings([1]), 1000)!.worst_mm).toBe(-5);
  });
});

describe('twist of a frame', () => {
  test('is how far the fourth corner lifts off the plane of the others', () => {
    const { lift_mm, angle_rad } = twistOf([0, 0, 0, 5], 1200);
    expect(lift_mm).toBe(5);
    expect(angle_rad).toBeCloseTo(5 / 1200, 12);
  });

  test('a floor that falls any way shows none; what stands on it is taken off', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: -99, max: 99 }),
        fc.integer({ min: -99, max: 99 }),
        (z, a, b) => {
          const height = z % 1000;
          expect(twistOf([height, height + a, height + a + b, height + b], 1000).lift_mm).toBe(0);
        },
      ),
    );
    expect(twistOf([10, 12, 9, 11], 1000, [10, 12, 9, 8]).lift_mm).toBe(3);
  });
});

describe('a rail beside its string', () => {
  const stations = [0, 250, 500, 750, 1000, 1250, 1500, 1750, 2000];

  test('straight within a reading', () => {
    expect(sidewaysBow(stations, [5, 5, 5.5, 5, 5.5, 5, 5, 5, 5], 0.5).shape).toBe('straight');
  });

  test('a banana is smooth, and its worst is in the middle with its sign', () => {
    const found = sidewaysBow(
      stations,
      stations.map(s => 10 - Math.round(2 * 34 * 4 * (s / 2000) * (1 - s / 2000)) / 2),
      0.5,
    );
    expect(found.shape).toBe('smooth');
    expect(found.worst_mm).toBe(-34);
    expect(found.worst_at_mm).toBe(1000);
    expect(found.kink_at_mm).toBeNull();
  });

  test('one corner is a kink, and where', () => {
    const found = sidewaysBow(
      stations,
      stations.map(s => Math.round(Math.min(s, (500 / 1500) * (2000 - s)) * 0.02)),
      1,
    );
    expect(found.shape).toBe('kinked');
    expect(found.kink_at_mm).toBe(500);
    expect(found.worst_mm).toBe(10);
  });

  test('the string need not hang the same at both ends', () => {
    const found = sidewaysBow([0, 500, 1000], [3, 8, 13], 0.5);
    expect(found.worst_mm).toBe(0);
    expect(found.shape).toBe('straight');
  });
});

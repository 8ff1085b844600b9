import { describe, expect, test } from 'vitest';
import { readPoints } from '../../../src/reckon/rail/points.ts';

/** 3058 mm and 45°, the line of a bottom face; slits do not matter here. */
const line = { radius_mm: 3058, bend_rad: Math.PI / 4, slits_mm: [] };
const spots = [0, 400, 900, 1400, 2000, 2401.7];
const value = (got: ReturnType<typeof readPoints>) => {
  if (!got.ok) throw new Error(got.fault.message);
  return got.value;
};

describe('points of a rail as a survey has them', () => {
  test('on the line they are off by nothing, at their stations, and the circle is the line’s', () => {
    const points = spots.map(s => ({
      x_mm: 3058 * Math.sin(s / 3058),
      y_mm: 3058 - 3058 * Math.cos(s / 3058),
    }));
    const read = value(readPoints(line, 'base line', points.toReversed()));
    read.stations_mm.forEach((s, k) => {
      expect(s).toBeCloseTo(spots[k]!, 9);
    });
    for (const o of read.offsets_mm) expect(o).toBeCloseTo(0, 9);
    expect(read.circle.radius_mm).toBeCloseTo(3058, 6);
    expect(read.circle.radius_sd_mm).toBeLessThan(1e-6);
  });

  test('5 mm nearer the centre all along is +5, and a circle 5 mm smaller', () => {
    const points = spots.map(s => ({
      x_mm: 3053 * Math.sin(s / 3058),
      y_mm: 3058 - 3053 * Math.cos(s / 3058),
    }));
    const read = value(readPoints(line, 'base line', points));
    for (const o of read.offsets_mm.slice(1)) expect(o).toBeCloseTo(5, 9);
    expect(read.circle.radius_mm).toBeCloseTo(3053, 6);
  });

  test('chord and rise from a string: the ordinates of the reference rail, R 3000 and 45° [derived]', () => {
    const short = { radius_mm: 3000, bend_rad: Math.PI / 4, slits_mm: [] };
    // From mid-chord 0, 287, 574, 861, 1148.05: rises 228.36, 214.60, 172.93, 102.14, 0, to 0.01 mm.
    const rises: readonly (readonly [number, number])[] = [
      [0, 228.36],
      [287, 214.6],
      [574, 172.93],
      [861, 102.14],
      [1148.05, 0],
    ];
    const points = rises.flatMap(([x, rise]) =>
      x === 0 ? [{ x_mm: 1148.05, y_mm: rise }] : [-x, x].map(at => ({ x_mm: 1148.05 + at, y_mm: rise })),
    );
    const read = value(readPoints(short, 'string', points));
    for (const o of read.offsets_mm) expect(Math.abs(o)).toBeLessThan(0.02);
    expect(read.stations_mm[4]).toBeCloseTo((3000 * Math.PI) / 8, 1);
    expect(read.circle.radius_mm).toBeCloseTo(3000, 0);
  });

  test('past the bend they are held against the straight last part', () => {
    const straight = { ...line, straight_mm: 200 };
    const [ex, ey] = [3058 * Math.SQRT1_2, 3058 * (1 - Math.SQRT1_2)];
    const d = 150 * Math.SQRT1_2;
    const points = [
      { x_mm: 0, y_mm: 0 },
      { x_mm: 1000, y_mm: 3058 - Math.sqrt(3058 ** 2 - 1000 ** 2) },
      { x_mm: ex + d - 2 * Math.SQRT1_2, y_mm: ey + d + 2 * Math.SQRT1_2 },
    ];
    const read = value(readPoints(straight, 'base line', points));
    expect(read.stations_mm[2]).toBeCloseTo(line.radius_mm * line.bend_rad + 150, 9);
    expect(read.offsets_mm[2]).toBeCloseTo(2, 9);
  });

  test('three on a straight line are no curve', () => {
    const got = readPoints(
      line,
      'base line',
      [0, 500, 1000].map(x => ({ x_mm: x, y_mm: 0 })),
    );
    expect(got.ok).toBe(false);
  });
});

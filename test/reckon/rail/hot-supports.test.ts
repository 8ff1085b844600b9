import { describe, expect, test } from 'vitest';
import { MOVE_FROM, STOP_FROM } from '../../../src/reckon/rail/hot-sag.ts';
import { bestRow, type HotRail, hotRow, indexOf, supportRow } from '../../../src/reckon/rail/hot-supports.ts';

/** 40×40×3, 2400 mm, 25 slits, welded slits up at 700 °C. */
const rail: HotRail = {
  tube: { width_mm: 40, depth_mm: 40, wall_mm: 3, yield_MPa: 235, mass_kg_m: 3.3 },
  length_mm: 2400,
  slits_mm: Array.from({ length: 25 }, (_, i) => 48 + 96 * i),
  hot_C: 700,
  slits_up: true,
};

describe('supports under a rail whose slits are hot', () => {
  test('stand evenly, as far in at either end; one in the middle', () => {
    expect(supportRow(2400, 4, 300)).toEqual([300, 900, 1500, 2100]);
    expect(supportRow(2400, 1, 0)).toEqual([1200]);
  });

  test('two let it hang over them and open slits that hold next to nothing; four or five do not', () => {
    // An overhang a hogs by w a²/2, and a hot back wall alone holds 4.9 N·m (both derived).
    const two = hotRow(rail, 2, 600);
    const at = two.slits[two.worst];
    expect(at?.closes).toBe(false);
    const end = Math.min(at?.at_mm ?? 0, 2400 - (at?.at_mm ?? 0));
    expect(end).toBeCloseTo(600, -2);
    // Hogging w a²/2 over what a back wall at 700 °C holds, 0.23 f_y B t²/4: near 1.2 at the supports, 600 mm in.
    expect(at?.index).toBeGreaterThan(
      ((3.3 * 9.80665) / 1000) * (552 ** 2 / 2 / (0.23 * 235 * 40 * (9 / 4))),
    );
    expect(indexOf(two)).toBeGreaterThan(STOP_FROM);
    expect(indexOf(bestRow(rail, 5))).toBeLessThan(MOVE_FROM);
  });

  test('each more support leaves less to bear, at its best', () => {
    const shares = [1, 2, 3, 4, 5, 6].map(n => indexOf(bestRow(rail, n)));
    expect([...shares].sort((a, b) => b - a)).toEqual(shares);
  });

  test('two at their best stand where a bar is bent least: 0.207 of its length in', () => {
    const two = bestRow({ ...rail, slits_mm: Array.from({ length: 239 }, (_, i) => 10 + 10 * i) }, 2);
    expect(two.over_mm / 2400).toBeCloseTo(0.2071, 2);
    expect(indexOf(two)).toBeCloseTo((0.02145 * ((3.3 * 9.80665) / 1000) * 2400 ** 2) / 4864.5, 1);
  });

  test('no other even row of as many does better', () => {
    const best = indexOf(bestRow(rail, 4));
    for (let over = 30; over <= 700; over += 10)
      expect(indexOf(hotRow(rail, 4, over))).toBeGreaterThanOrEqual(best - 0.01);
  });

  test('turned slits down, what closed opens, and is no lighter', () => {
    const up = hotRow(rail, 2, 24);
    const down = hotRow({ ...rail, slits_up: false }, 2, 24);
    expect(down.slits.map(s => s.closes)).toEqual(up.slits.map(s => !s.closes));
    expect(indexOf(down)).toBe(indexOf(up));
  });
});

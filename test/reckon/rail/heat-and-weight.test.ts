import { describe, expect, test } from 'vitest';
import { hotSlits, momentAt } from '../../../src/reckon/rail/hot-sag.ts';
import { hotSteel } from '../../../src/reckon/rail/hot-steel.ts';
import { backWallMoment, foldingOverhang, type SlitTube } from '../../../src/reckon/rail/own-weight.ts';
import { distanceToPeak, peakAt, softBand } from '../../../src/reckon/rail/soft-zone.ts';
import { greatestMoment, OVERHANG, supportPoints } from '../../../src/reckon/rail/supports.ts';

const tube = (wall_mm: number, mass_kg_m: number): SlitTube => ({
  width_mm: 40,
  depth_mm: 40,
  wall_mm,
  yield_MPa: 235,
  mass_kg_m,
});

describe('a slit rail that is not welded', () => {
  test('folds by its own weight at a free overhang of 1.14, 0.91 and 0.78 m', () => {
    expect(foldingOverhang(tube(3, 3.3)) / 1000).toBeCloseTo(1.14, 2);
    expect(foldingOverhang(tube(2, 2.31)) / 1000).toBeCloseTo(0.91, 2);
    expect(foldingOverhang(tube(1.5, 1.77)) / 1000).toBeCloseTo(0.78, 2);
  });

  test('holds by its back wall alone: 21.1, 9.4 and 5.3 N·m', () => {
    expect(backWallMoment(tube(3, 3.3)) / 1000).toBeCloseTo(21.15, 2);
    expect(backWallMoment(tube(2, 2.31)) / 1000).toBeCloseTo(9.4, 2);
    expect(backWallMoment(tube(1.5, 1.77)) / 1000).toBeCloseTo(5.29, 2);
  });
});

describe('own weight over supports', () => {
  const w = 0.0324;
  test('sags between two supports and hogs over them', () => {
    const ends = momentAt(w, 2000, [0, 2000]);
    expect(ends(1000) / 1000).toBeCloseTo(16, 0);
    expect(ends(0)).toBeCloseTo(0, 9);
    const inside = momentAt(w, 2000, [400, 1600]);
    expect(inside(400)).toBeCloseTo((-w * 400 ** 2) / 2, 6);
    expect(inside(200)).toBeCloseTo((-w * 200 ** 2) / 2, 6);
    expect(inside(1000)).toBeCloseTo((w * 1200 ** 2) / 8 - (w * 400 ** 2) / 2, 6);
  });

  test('over three supports at ends and middle hogs w L²/8 of one span over the middle', () => {
    const three = momentAt(w, 2000, [0, 1000, 2000]);
    expect(three(1000)).toBeCloseTo((-w * 1000 ** 2) / 8, 6);
  });

  test('over four supports is the same from either end', () => {
    const four = momentAt(w, 2400, [200, 900, 1500, 2200]);
    for (const at of [100, 200, 500, 900, 1200]) expect(four(at)).toBeCloseTo(four(2400 - at), 6);
  });

  test('one support in the middle is the lift that folds it', () => {
    expect(momentAt(w, 2400, [1200])(1200)).toBeCloseTo((-w * 1200 ** 2) / 2, 6);
  });
});

describe('a slit while it is hot', () => {
  const t3 = tube(3, 3.3);
  test('closed by sagging with its slits up it holds; opened over an overhang it does not', () => {
    const [overhang, middle] = hotSlits(t3, 2400, [300, 1200], [800, 1600], 600, true);
    expect(middle!.closes).toBe(false); // both sides hang out: the middle hogs too
    expect(overhang!.closes).toBe(false);
    const between = hotSlits(t3, 2000, [1000], [0, 2000], 600, true)[0]!;
    expect(between.closes).toBe(true);
    expect(between.advice).toBe('go');
    const turned = hotSlits(t3, 2000, [1000], [0, 2000], 600, false)[0]!;
    expect(turned.closes).toBe(false);
    expect(turned.advice).toBe('do not weld here');
  });

  test('its back wall holds 16.5, 9.9, 4.9 and 2.3 N·m at 500 to 800 °C', () => {
    for (const [at, hold] of [
      [500, 16.5],
      [600, 9.9],
      [700, 4.9],
      [800, 2.3],
    ] as const) {
      const slit = hotSlits(t3, 2000, [1000], [0, 2000], at, false)[0]!;
      expect(slit.moment_Nmm / slit.index / 1000).toBeCloseTo(hold, 1);
    }
  });

  test('tacks carry most of it: two of 12 mm² hold 217 N·m more when cold, 50 at 700 °C', () => {
    const hold = (at: number, tacks: number) => {
      const slit = hotSlits(t3, 2000, [1000], [0, 2000], at, false, tacks)[0]!;
      return slit.moment_Nmm / slit.index / 1000;
    };
    expect(hold(20, 24) - hold(20, 0)).toBeCloseTo(217, 0);
    expect(hold(700, 24) - hold(700, 0)).toBeCloseTo(50, 0);
  });
});

describe('how hot how far from a weld', () => {
  const zone = { wall_mm: 3, net_heat_J_mm: 288, start_C: 25 };
  test('distance and peak are each other undone', () => {
    for (const peak of [400, 500, 600, 730, 1200])
      expect(peakAt(zone, distanceToPeak(zone, peak)!)).toBeCloseTo(peak, 9);
    expect(distanceToPeak(zone, 1510)).toBeCloseTo(0, 12);
    expect(distanceToPeak(zone, 25)).toBeNull();
  });

  test('the soft band of a 5 mm bead in 3 mm wall is about 16 mm', () => {
    expect(softBand(zone, 5)).toBeCloseTo(16, 0);
  });

  test('steel keeps its strength to 400 °C and is half gone by 600', () => {
    expect(hotSteel(15).yield).toBe(1);
    expect(hotSteel(550).yield).toBeCloseTo(0.625, 12);
    expect(hotSteel(1500)).toEqual({ yield: 0, proportional: 0, modulus: 0 });
  });
});

describe('two supports', () => {
  test('at the moment rule hog as much as they sag, and no other pair bends the bar less', () => {
    const best = greatestMoment(OVERHANG['least moment']);
    for (let a = 0.05; a < 0.5; a += 0.005) expect(greatestMoment(a)).toBeGreaterThanOrEqual(best - 1e-12);
    expect(supportPoints(2400, 'least moment')[0]).toBeCloseTo(497, 0);
  });
});

import { describe, expect, test } from 'vitest';
import { type SettingsInput, settings } from '../../../src/reckon/welding/settings.ts';
import { along, between } from '../../../src/reckon/welding/start-band.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const mix = (wall_mm: number, more: object = {}) =>
  kept(settings({ process: 'gmaw', gas: '75/25', wall_mm, ...more }));
const cored = (wall_mm: number, more: object = {}) => kept(settings({ process: 'fcaw-s', wall_mm, ...more }));
const rods = (wall_mm: number, more: object = {}) => kept(settings({ process: 'smaw', wall_mm, ...more }));

const WALLS = Array.from({ length: 50 }, (_, n) => 1.5 + n / 10);

describe('every process, every wall', () => {
  const inputs: readonly SettingsInput[] = WALLS.flatMap(wall_mm => [
    { process: 'gmaw', gas: 'CO2', wall_mm } as const,
    { process: 'gmaw', gas: '75/25', wall_mm } as const,
    { process: 'gmaw', gas: '75/25', wall_mm, hand_mm_s: 8 } as const,
    { process: 'fcaw-s', wall_mm } as const,
    { process: 'smaw', wall_mm } as const,
  ]);

  test('each start lies in its band, and nothing is nought', () => {
    for (const input of inputs) {
      const it = kept(settings(input));
      for (const band of [it.amps, it.volts, it.feed_m_min, it.stick_out_mm, it.travel_mm_s, it.gas_l_min]) {
        if (band === null) continue;
        expect(band.low).toBeGreaterThan(0);
        expect(band.low).toBeLessThanOrEqual(band.start);
        expect(band.start).toBeLessThanOrEqual(band.high);
        expect(band.source).not.toBe('');
      }
    }
  });

  test('a thicker wall never asks less current of the same filler, until it is bevelled', () => {
    for (const process of ['gmaw', 'fcaw-s', 'smaw'] as const) {
      const starts = WALLS.filter(wall => wall < 5).map(wall_mm => {
        const it = kept(
          settings(process === 'gmaw' ? { process, gas: '75/25', wall_mm } : { process, wall_mm }),
        );
        return { filler: it.filler_mm, amps: it.amps.start };
      });
      for (const [n, { filler, amps }] of starts.entries()) {
        const before = starts[n - 1];
        if (before?.filler === filler) expect(amps).toBeGreaterThanOrEqual(before.amps - 1e-9);
      }
    }
  });

  test('from 5 mm on there are two passes in a bevel', () => {
    expect(mix(4.9).passes).toBe(1);
    expect(mix(5).passes).toBe(2);
    expect(mix(5).cautions).toContain('bevel, two passes');
    expect(cored(6).cautions).toContain('no single-pass wire');
    expect(rods(6).passes).toBe(2);
  });
});

describe('solid wire', () => {
  test('polarity, wire by wall, gas', () => {
    expect(mix(2)).toMatchObject({ polarity: 'electrode positive', filler_mm: 0.8 });
    expect(mix(3).filler_mm).toBe(0.9);
    expect(mix(3).gas_l_min).toMatchObject({ low: 10, high: 15 });
    expect(mix(5).gas_l_min).toMatchObject({ low: 15, high: 20 });
  });

  test('CO2 wants about a volt more than the mix', () => {
    const co2 = kept(settings({ process: 'gmaw', gas: 'CO2', wall_mm: 2.5 }));
    expect(co2.volts.start - mix(2.5).volts.start).toBeCloseTo(0.8, 9);
    expect(co2.cautions).not.toContain('mix kinder than CO2');
    expect(kept(settings({ process: 'gmaw', gas: 'CO2', wall_mm: 1.6 })).cautions).toContain(
      'mix kinder than CO2',
    );
  });

  test('a slow hand never goes above the slow rule, a quick one is stepped up', () => {
    const unseen = mix(2);
    expect(mix(2, { hand_mm_s: 3 }).amps.high).toBeCloseTo(2 / 0.0254, 9);
    expect(mix(2, { hand_mm_s: 5 }).amps.start).toBe(unseen.amps.start);
    const quickening = mix(2, { hand_mm_s: 7 }).amps.start;
    expect(quickening).toBeGreaterThan(unseen.amps.start);
    expect(quickening).toBeLessThan(55 + 56);
    expect(mix(2, { hand_mm_s: 8 }).amps.start).toBe(55 + 56);
  });

  test('a wire that carries no more says so', () => {
    expect(mix(4.8).amps.start).toBe(180);
    expect(mix(4.8).cautions).toContain('wire at its limit');
    expect(mix(4, { filler_mm: 0.6 }).amps.start).toBe(90);
    expect(mix(4.8).cautions).toContain('volts reckoned past their fit');
  });

  test('refusals', () => {
    expect(refused(settings({ process: 'gmaw', gas: 'CO2', wall_mm: 1.4 }))).toMatchObject({
      code: 'out-of-range',
      field: 'wall_mm',
    });
    expect(refused(settings({ process: 'gmaw', gas: 'CO2', wall_mm: 8 })).accepted).toBe(
      'at least 1.5, at most 6.4 mm',
    );
    expect(refused(settings({ process: 'gmaw', gas: 'CO2', wall_mm: 2, filler_mm: 1.6 }))).toMatchObject({
      code: 'out-of-range',
      field: 'filler_mm',
      accepted: '0.6, 0.8, 0.9, 1, 1.1 mm',
    });
    expect(refused(settings({ process: 'gmaw', gas: 'CO2', wall_mm: 1.5, filler_mm: 1.1 }))).toMatchObject({
      code: 'contradiction',
      accepted: '0.6, 0.8, 0.9 mm',
    });
    expect(refused(settings({ process: 'gmaw', gas: 'CO2', wall_mm: 2, hand_mm_s: 0 }))).toMatchObject({
      field: 'hand_mm_s',
    });
  });
});

describe('self-shielded cored wire', () => {
  test('runs on electrode negative without gas, after the door chart', () => {
    const it = cored(2);
    expect(it).toMatchObject({ polarity: 'electrode negative', gas_l_min: null, filler_mm: 0.9 });
    expect(it.cautions).toContain('door chart first');
    expect(it.amps.start).toBeCloseTo((0.95 * 2) / 0.0254, 9);
  });

  test('its volts and feed rise with the current', () => {
    expect(cored(2.5).volts.start).toBeGreaterThan(cored(1.6).volts.start);
    expect(cored(2.5).feed_m_min?.start).toBeGreaterThan(cored(1.6).feed_m_min?.start ?? Number.NaN);
    const heavy = cored(4);
    expect(heavy.filler_mm).toBe(1.1);
    // 150 A: between 140 and 160 A of the table, 90 and 110 in a minute.
    expect((heavy.feed_m_min?.start ?? 0) / 0.0254).toBeCloseTo(99.6, 1);
  });

  test('no source gives the feed of 0.8 mm', () => {
    expect(cored(2, { filler_mm: 0.8 }).feed_m_min).toBeNull();
    expect(cored(2, { filler_mm: 0.8 }).cautions).toContain('feed from door chart');
    expect(cored(3, { filler_mm: 0.8 }).cautions).toContain('wire at its limit');
  });

  test('refusals', () => {
    expect(refused(settings({ process: 'fcaw-s', wall_mm: 2, filler_mm: 1.2 }))).toMatchObject({
      code: 'out-of-range',
    });
    expect(refused(settings({ process: 'fcaw-s', wall_mm: 2, filler_mm: 1.1 }))).toMatchObject({
      code: 'contradiction',
    });
  });
});

describe('covered rods', () => {
  test('a beginner’s rods by wall', () => {
    expect(rods(1.6).filler_mm).toBe(1.6);
    expect(rods(2.5).filler_mm).toBe(2.5);
    expect(rods(4)).toMatchObject({ filler_mm: 3.2, feed_m_min: null, stick_out_mm: null, gas_l_min: null });
    // E7018 of 3.2 mm: 1 A for each 0.001 in of core.
    expect(rods(4).amps.start).toBeCloseTo(126, 0);
    expect(rods(2).cautions).toContain('thin for a rod');
  });

  test('refusals', () => {
    expect(refused(settings({ process: 'smaw', wall_mm: 1.6, filler_mm: 3.2 }))).toMatchObject({
      code: 'contradiction',
    });
    expect(refused(settings({ process: 'smaw', wall_mm: 3, rod: 'E7018', filler_mm: 1.6 }))).toMatchObject({
      code: 'out-of-range',
      accepted: '2.5, 3.2, 4 mm',
    });
  });
});

describe('between the points of a table', () => {
  test('straight inside, standing still outside', () => {
    expect(between(15, [10, 1], [20, 3])).toBe(2);
    expect(between(5, [10, 1], [20, 3])).toBe(1);
    expect(between(25, [10, 1], [20, 3])).toBe(3);
    const table = [
      [1, 10],
      [2, 20],
      [4, 60],
    ] as const;
    expect([0, 1, 1.5, 3, 4, 9].map(x => along(x, table))).toEqual([10, 10, 15, 40, 60, 60]);
  });
});

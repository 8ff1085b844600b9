import { describe, expect, test } from 'vitest';
import { discSpeed } from '../../../src/reckon/welding/disc-speed.ts';
import { shade } from '../../../src/reckon/welding/shade.ts';
import { weldWeather } from '../../../src/reckon/welding/weld-weather.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

describe('shade', () => {
  test('a beginner starts with 11 for wire and 10 for rods, darker where the current asks it', () => {
    expect(kept(shade('gmaw', 80)).start).toBe(11);
    expect(kept(shade('smaw', 80)).start).toBe(10);
    expect(kept(shade('gmaw', 200)).start).toBe(12);
    expect(kept(shade('gmaw', 40)).start).toBe(11);
  });

  test('a thick rod at a low current takes the row of the rod', () => {
    expect(kept(shade('smaw', 50, 3.2)).least).toBe(8);
  });

  test('no lens below the least is ever the start', () => {
    for (let amps = 5; amps <= 250; amps += 5)
      for (const process of ['gmaw', 'fcaw-s', 'smaw'] as const) {
        const it = kept(shade(process, amps));
        expect(it.start).toBeGreaterThanOrEqual(it.least);
      }
  });

  test('refusals', () => {
    expect(refused(shade('gmaw', 0))).toMatchObject({ field: 'amps' });
    expect(refused(shade('gmaw', 300))).toMatchObject({ field: 'amps' });
    expect(refused(shade('smaw', 100, 9))).toMatchObject({ field: 'rod_mm' });
  });
});

describe('disc speed', () => {
  test('the printed speed goes before the rim’s', () => {
    expect(kept(discSpeed({ disc_mm: 125, grinder_rpm: 11_500 })).fits).toBe(true);
    expect(kept(discSpeed({ disc_mm: 125, grinder_rpm: 11_500, marked_rpm: 11_000 })).fits).toBe(false);
    expect(kept(discSpeed({ disc_mm: 125, grinder_rpm: 12_250, marked_rpm: 12_250 })).fits).toBe(true);
  });

  test('a marking no disc has was misread', () => {
    expect(refused(discSpeed({ disc_mm: 230, grinder_rpm: 6500, marked_rpm: 13_300 }))).toMatchObject({
      code: 'contradiction',
      field: 'marked_rpm',
    });
  });

  test('refusals', () => {
    expect(refused(discSpeed({ disc_mm: 0, grinder_rpm: 11_000 }))).toMatchObject({ field: 'disc_mm' });
    expect(refused(discSpeed({ disc_mm: 125, grinder_rpm: 0 }))).toMatchObject({ field: 'grinder_rpm' });
    expect(refused(discSpeed({ disc_mm: 125, grinder_rpm: 11_000, marked_rpm: 1 }))).toMatchObject({
      field: 'marked_rpm',
    });
  });
});

describe('weather', () => {
  test('all that is wrong is told at once', () => {
    const it = kept(weldWeather({ process: 'gmaw', air_C: -30, steel_C: -30, wind_m_s: 9, wet: true }));
    expect(it).toMatchObject({ weld: false, stops: ['air too cold', 'too windy', 'steel wet'] });
    expect(it.warm_to_C).not.toBeNull();
  });

  test('refusals', () => {
    const fair = { process: 'gmaw', air_C: 15, steel_C: 15, wind_m_s: 1, wet: false } as const;
    expect(refused(weldWeather({ ...fair, air_C: 200 }))).toMatchObject({ field: 'air_C' });
    expect(refused(weldWeather({ ...fair, steel_C: Number.NaN }))).toMatchObject({ field: 'steel_C' });
    expect(refused(weldWeather({ ...fair, wind_m_s: -1 }))).toMatchObject({ field: 'wind_m_s' });
  });
});

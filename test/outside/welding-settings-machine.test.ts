import { describe, expect, test } from 'vitest';
import { dutyShare } from '../../src/reckon/welding/duty.ts';
import { feedCurrent } from '../../src/reckon/welding/feed-current.ts';
import { settings } from '../../src/reckon/welding/settings.ts';
import { kept } from '../quantity/expect-outcome.ts';

const IPM_m_min = 0.0254;

// A filler maker's GMAW guide, CO2 short-arc fillet table, 0.035 in wire: feed in a minute and current [memory]. The rule from
// power-source makers' manuals (1.6 in a minute for each ampere [found]) lies within 8 to 9 % of it.
describe('current of 0.9 mm solid wire at a feed', () => {
  test.each([
    [175, 120],
    [225, 130],
    [275, 160],
    [300, 175],
  ])('%d in a minute draws about %d A', (ipm, amps) => {
    const drawn = feedCurrent('gmaw', 0.9, ipm * IPM_m_min) ?? 0;
    expect(Math.abs(drawn / amps - 1)).toBeLessThan(0.09);
  });
});

// Power-source makers' owner manuals, typical control settings [found]: 2 in a minute for each ampere of 0.030 in wire.
test('0.8 mm solid wire at 200 in a minute draws 100 A', () => {
  expect(feedCurrent('gmaw', 0.8, 200 * IPM_m_min)).toBeCloseTo(100, 6);
});

// E71T-11 data sheet, 0.045 in: feed, current, volts from and to [memory].
describe('current and volts of 1.1 mm cored wire', () => {
  test.each([
    [70, 120, 15, 16],
    [90, 140, 16, 17],
    [110, 160, 17, 18],
    [130, 170, 18, 19],
  ])('%d in a minute: %d A, %d to %d V', (ipm, amps, low, high) => {
    expect(feedCurrent('fcaw-s', 1.1, ipm * IPM_m_min)).toBeCloseTo(amps, 6);
    // The wall whose ruled current is that one, where the rule reaches it.
    const it = kept(
      settings({ process: 'fcaw-s', wall_mm: Math.min(6.4, (amps / 0.95) * 0.0254), filler_mm: 1.1 }),
    );
    expect(it.amps.start).toBeCloseTo(amps, 6);
    expect(it.volts.start).toBeGreaterThanOrEqual(low);
    expect(it.volts.start).toBeLessThanOrEqual(high);
  });
});

// Bench rule [calc from common practice]: 20 % at 90 A burns 120 s in ten minutes; a slit of 108 mm at 250 mm/min takes 26 s; so four
// to five slits. The falling with the square of the current is the usual approximation [memory].
test('a 120 V machine at 90 A welds four to five slits in ten minutes', () => {
  const slits = (600 * kept(dutyShare(120, 90))) / (108 / (250 / 60));
  expect(slits).toBeGreaterThan(4);
  expect(slits).toBeLessThan(5);
});

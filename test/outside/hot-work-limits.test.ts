import { describe, expect, test } from 'vitest';
import { WINDIEST_m_s } from '../../src/reckon/welding/weld-weather.ts';
import { LATE_s, WATCH_s } from '../../src/stages/prep/fire-watch.ts';
import { CLEAR_m } from '../../src/stages/prep/place.ts';
import { CEILING_m, MOVING_m_s, ROOM_m3 } from '../../src/stages/prep/room.ts';
import { CO2_l_kg } from '../../src/stages/prep/supplies.ts';

// 29 CFR 1910.252(c)(2): a fan where a welder has less than 10 000 cubic feet (284 m³), or a ceiling under 16 feet (5 m), or where
// partitions keep the air off; (c)(3): 100 linear feet a minute (30 m/min) in the zone of welding [found, both as the text prints them].
describe('air for one welder, 29 CFR 1910.252(c) [found]', () => {
  test('284 m³ and 5 m, as the text prints them beside its feet', () => {
    expect(Math.abs(ROOM_m3 / 284 - 1)).toBeLessThan(0.005);
    expect(Math.abs(CEILING_m / 5 - 1)).toBeLessThan(0.03);
    expect(Math.abs((MOVING_m_s * 60) / 30 - 1)).toBeLessThan(0.02);
  });

  test('air that carries smoke off is far less than the wind that takes gas: 1.1 against 5 mph [derived]', () => {
    expect(MOVING_m_s / 0.44704).toBeCloseTo(1.136, 2);
    expect(MOVING_m_s).toBeLessThan(WINDIEST_m_s.gmaw / 4);
  });
});

describe('wind', () => {
  // AWS D1.1 as an article quotes its clause [found]: gas-shielded welding in no wind over 5 mph (8 km/h), or sheltered to that.
  test('5 mph is 8 km/h at the weld', () => {
    expect(WINDIEST_m_s.gmaw * 3.6).toBeCloseTo(8.05, 2);
  });

  // One owner's specification stops all welding at 15 mph [found]; D1.1 bars a "high wind" without a number [found].
  test('15 mph without gas', () => {
    expect(WINDIEST_m_s.smaw / 0.44704).toBeCloseTo(15, 6);
    expect(WINDIEST_m_s['fcaw-s']).toBe(WINDIEST_m_s.smaw);
  });
});

describe('fire', () => {
  // A state text that mirrors 29 CFR 1910.252(a)(2)(iii) [found]: combustibles within 35 feet (10.7 m), watch of at least half an hour.
  test('35 ft round, and no shorter watch than half an hour', () => {
    expect(CLEAR_m).toBeCloseTo(10.67, 2);
    expect(WATCH_s).toBeGreaterThanOrEqual(1800);
  });

  // NFPA 51B-2019 as a fire consultant's note has it [found]: an hour, and up to three more as the permit giver asks.
  test('an hour, and a later look at three', () => {
    expect(WATCH_s).toBe(3600);
    expect(LATE_s).toBe(3 * 3600);
  });
});

// 72.7 cubic feet of gas from a gallon of liquid that weighs 8.46 lb: a note of a mailing list [found]; per kilogram [derived].
test('a kilogram of CO2 is 0.54 m³ of gas', () => {
  const ft3_lb = 72.7 / 8.46;
  const l_kg = (ft3_lb * 28.316846592) / 0.45359237;
  expect(Math.abs(CO2_l_kg / l_kg - 1)).toBeLessThan(0.01);
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dutyShare, thickestOnePass } from '../../../src/reckon/welding/duty.ts';
import { feedCurrent } from '../../../src/reckon/welding/feed-current.ts';
import { heatInput, heatVerdict } from '../../../src/reckon/welding/heat.ts';
import { settings } from '../../../src/reckon/welding/settings.ts';
import { toldSettings, withinMachine } from '../../../src/reckon/welding/told-settings.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

const mix = (wall_mm: number) => kept(settings({ process: 'gmaw', gas: '75/25', wall_mm }));

describe('a chart in the door goes before the rule', () => {
  test('its volts and feed are set; current and travel follow from them', () => {
    const ruled = mix(3);
    const told = toldSettings(ruled, 'gmaw', 3, { volts: 19.5, feed_m_min: 5.6 }, 'door chart');
    expect(told.volts.start).toBe(19.5);
    expect(told.feed_m_min?.start).toBe(5.6);
    // 0.9 mm wire: 1.6 in a minute for each ampere.
    expect(told.amps.start).toBeCloseTo(5.6 / 0.0254 / 1.6, 9);
    expect(told.amps.source).toBe('door chart');
    const heat = kept(
      heatInput({
        volts: 19.5,
        amps: told.amps.start,
        travel_mm_s: told.travel_mm_s.start,
        process: 'gmaw',
      }),
    );
    expect(heatVerdict(heat.kJ_mm, 3, 'gmaw')).toBe('suits');
    expect(told.gas_l_min).toEqual(ruled.gas_l_min);
  });

  test('where no rule ties feed to current the ruled current stays', () => {
    const ruled = kept(settings({ process: 'fcaw-s', wall_mm: 2, filler_mm: 0.8 }));
    const told = toldSettings(ruled, 'fcaw-s', 2, { volts: 15.5, feed_m_min: 3 }, 'door chart');
    expect(told.amps).toEqual(ruled.amps);
    expect(told.volts.start).toBe(15.5);
  });

  test('a rod is set by its current alone', () => {
    const ruled = kept(settings({ process: 'smaw', wall_mm: 3, rod: 'E6013' }));
    const told = toldSettings(ruled, 'smaw', 3, { amps: 80 }, 'door chart');
    expect(told.amps.start).toBe(80);
    expect(told.feed_m_min).toBeNull();
    expect(told.volts.start).toBeCloseTo(23.2, 9);
  });

  test('feed and current are one another’s inverse for every wire that has a feed', () => {
    for (const [process, filler_mm, wall_mm] of [
      ['gmaw', 0.6, 2],
      ['gmaw', 0.8, 2.5],
      ['gmaw', 0.9, 3],
      ['gmaw', 1, 3],
      ['gmaw', 1.1, 4],
      ['fcaw-s', 0.9, 2.5],
      ['fcaw-s', 1.1, 4],
    ] as const) {
      const it = kept(
        settings(
          process === 'gmaw' ? { process, gas: 'CO2', wall_mm, filler_mm } : { process, wall_mm, filler_mm },
        ),
      );
      expect(feedCurrent(process, filler_mm, it.feed_m_min?.start ?? 0)).toBeCloseTo(it.amps.start, 6);
    }
    expect(feedCurrent('smaw', 2.5, 3)).toBeNull();
    expect(feedCurrent('gmaw', 2, 3)).toBeNull();
    expect(feedCurrent('gmaw', 0.8, 0)).toBeNull();
  });
});

describe('a machine gives no more than it has', () => {
  test('settings inside it stay as they are', () => {
    expect(withinMachine(mix(2), 'gmaw', 2, 200)).toEqual(mix(2));
  });

  test('never a current above its highest, the bands in order, the heat still suited', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.5, max: 6.4, noNaN: true }),
        fc.double({ min: 20, max: 300, noNaN: true }),
        (wall_mm, most_A) => {
          const ruled = mix(wall_mm);
          const it = withinMachine(ruled, 'gmaw', wall_mm, most_A);
          expect(it.amps.high).toBeLessThanOrEqual(Math.max(most_A, 1e-9) + 1e-9);
          expect(it.amps.low).toBeLessThanOrEqual(it.amps.start);
          expect(it.amps.start).toBeLessThanOrEqual(it.amps.high);
          const feed = it.feed_m_min;
          expect(feed !== null && feed.low <= feed.start && feed.start <= feed.high).toBe(true);
          expect((feed?.start ?? 0) / it.amps.start).toBeCloseTo(
            (ruled.feed_m_min?.start ?? 0) / ruled.amps.start,
            9,
          );
        },
      ),
    );
  });
});

describe('duty and mains', () => {
  test('at its plate’s current its plate’s share, at half of it four times as long, never more than all', () => {
    expect(kept(dutyShare(120, 90))).toBeCloseTo(0.2, 12);
    expect(kept(dutyShare(230, 140))).toBeCloseTo(0.3, 12);
    expect(kept(dutyShare(120, 45))).toBeCloseTo(0.8, 12);
    expect(kept(dutyShare(230, 30))).toBe(1);
  });

  test('one pass on the low mains goes into 3.2 mm with wire', () => {
    expect(thickestOnePass(120, 'gmaw')).toBe(3.2);
    expect(thickestOnePass(120, 'smaw')).toBeNull();
    expect(thickestOnePass(230, 'fcaw-s')).toBeNull();
  });

  test('no such mains, no such current', () => {
    expect(refused(dutyShare(12, 90)).code).toBe('out-of-range');
    expect(refused(dutyShare(120, 0)).code).toBe('out-of-range');
  });
});

import { describe, expect, test } from 'vitest';
import { RIDE_LIMIT_RULES, rideVerdicts } from '../../../src/reckon/strength/limits.ts';
import { ridingLoads } from '../../../src/reckon/strength/loads.ts';
import type { RideFacts } from '../../../src/reckon/strength/ride-facts.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

/** An invented first ramp as it should be. */
const SOUND: RideFacts = {
  uses: [],
  novice: true,
  first: true,
  exit_rad: 0.4,
  load_factor: 1.9,
  radius_m: 4.5,
  speed_m_s: 5,
  speed_cap_m_s: null,
  straight_m: 1.1,
  wheelbase_m: 1.1,
  width_mm: 1200,
  stand_m: 0.6,
  drop_m: 0.6,
  landing: 'table',
  fall_m: 0.2,
  window_m_s: 1.1,
  clear_behind_m: 6,
  clear_beside_m: 3,
  towed: false,
  anchors: 4,
  entryAnchors: 2,
  pulled: true,
  inspected: true,
  proven: true,
  crack: false,
  children: true,
  adult: true,
  othersChildren: false,
  utilisation: 0.7,
  deck_utilisation: 0.8,
};

const codes = (change: RideFacts) => rideVerdicts({ ...SOUND, ...change }).map(({ code }) => code);

describe('the limits of a ride', () => {
  test('a sound first ramp breaks none; what is not known is not judged', () => {
    expect(codes({})).toEqual([]);
    expect(rideVerdicts({})).toEqual([]);
  });

  test.each<[string, RideFacts, string[]]>([
    ['a footbridge', { uses: ['footbridge'] }, ['use-refused']],
    ['a crack', { crack: true }, ['crack']],
    ['a tow', { towed: true }, ['towed']],
    ['no anchors', { anchors: 0, entryAnchors: 0 }, ['anchors-few', 'anchors-entry']],
    ['eight wanted in soaked lawn', { anchorsWanted: 8 }, ['anchors-short']],
    ['ground in which nothing holds', { anchorable: false }, ['anchors-none-hold']],
    ['all anchors at the rear', { entryAnchors: 0 }, ['anchors-entry']],
    ['anchors nobody pulled', { pulled: false }, ['anchors-not-pulled']],
    ['water', { landing: 'water' }, ['landing-water']],
    ['parked cars', { landing: 'people or vehicles' }, ['landing-people']],
    ['a wall’s edge', { landing: 'hard edge' }, ['landing-edge']],
    ['painted before inspection', { inspected: false, proven: false }, ['not-inspected', 'not-proven']],
    ['too weak', { utilisation: 1.01 }, ['over-used']],
    ['nearly too weak', { utilisation: 0.9 }, ['nearly-used']],
    ['boards too far apart', { deck_utilisation: 1.3 }, ['deck-over-used']],
    ['a gap first', { landing: 'gap' }, ['gap-first']],
    ['a steep lip', { exit_rad: (36 * Math.PI) / 180 }, ['steep-novice']],
    ['too fast for its radius', { load_factor: 3.2 }, ['load-novice', 'load-engineer']],
    ['a little fast', { load_factor: 2.4 }, ['load-novice-band']],
    ['an expert too fast', { novice: false, load_factor: 4.1 }, ['load-hard', 'load-engineer']],
    [
      'a flat landing from high',
      { landing: 'flat ground', apex_m: 1.2, fall_m: 1.2 },
      ['flat-from-high', 'fall-hard'],
    ],
    ['a fall as from a roof', { fall_m: 1.6 }, ['fall-stop']],
    ['a landing that is felt', { fall_m: 0.4 }, ['fall-felt']],
    ['a window of 2 km/h', { window_m_s: 2 / 3.6 }, ['window-narrow']],
    ['tight and fast', { radius_m: 1.8, speed_m_s: 6.5, straight_m: 0 }, ['tight-and-fast', 'lip-curved']],
    ['past the cap', { speed_cap_m_s: 4.4 }, ['speed-cap']],
    ['a child alone', { adult: false }, ['child-alone']],
    ['the neighbours’ children', { othersChildren: true }, ['others-children']],
    ['a high lip', { drop_m: 1.2, stand_m: 1.2 }, ['drop-engineer', 'guard']],
    ['a narrow one', { width_mm: 800 }, ['narrow']],
    ['a fence close by', { clear_behind_m: 3, clear_beside_m: 1 }, ['clear-behind', 'clear-beside']],
  ])('%s', (_, change, expected) => {
    expect(codes(change)).toEqual(expected);
  });

  test('says how far it is broken, in the unit of the rule', () => {
    expect(rideVerdicts({ ...SOUND, anchors: 2 })[0]).toMatchObject({
      value: 2,
      limit: 4,
      unit: 'count',
      never: true,
    });
    expect(rideVerdicts({ ...SOUND, window_m_s: 0.5 })[0]).toMatchObject({
      value: 0.5,
      limit: expect.closeTo(3 / 3.6, 12),
      severity: 'refuse',
    });
  });

  test('what has no way round comes first, warnings last', () => {
    const all = rideVerdicts({ ...SOUND, width_mm: 900, load_factor: 3.5, crack: true });
    expect(all.map(({ severity, never }) => (never ? 0 : severity === 'refuse' ? 1 : 2))).toEqual([
      0, 1, 2, 2,
    ]);
  });

  test('no way round: the uses, a crack, a tow, no anchors, water, people', () => {
    expect(RIDE_LIMIT_RULES.filter(({ never }) => never).map(({ code }) => code)).toEqual([
      'use-refused',
      'crack',
      'towed',
      'anchors-few',
      'anchors-entry',
      'landing-water',
      'landing-people',
    ]);
  });

  test('every rule has a code of its own, a reason, and is called judgement', () => {
    expect(new Set(RIDE_LIMIT_RULES.map(({ code }) => code)).size).toBe(RIDE_LIMIT_RULES.length);
    for (const { reason, mark, severity, never } of RIDE_LIMIT_RULES) {
      expect(reason.length).toBeGreaterThan(20);
      expect(mark).toBe('judgement');
      if (never) expect(severity).toBe('refuse');
    }
  });
});

describe('the loads as a person is shown them', () => {
  const ride = { mass_kg: 90, speed_m_s: 6, radius_m: 4.5, exit_rad: Math.PI / 6 };

  test('all seven, each with where it acts, its source and its mark', () => {
    const { assumptions } = kept(ridingLoads(ride));
    expect([...new Set(assumptions.map(({ load }) => load))]).toEqual([
      'L1',
      'L2',
      'L3',
      'L4',
      'L5',
      'L6',
      'L7',
    ]);
    for (const { source, where, value } of assumptions) {
      expect(source).not.toBe('');
      expect(where).not.toBe('');
      expect(Number.isFinite(value)).toBe(true);
    }
    expect(assumptions.filter(({ counted }) => !counted).map(({ load }) => load)).toEqual(['L3', 'L7']);
  });

  test('a slow ride is still reckoned with three times the weight', () => {
    const slow = kept(ridingLoads({ ...ride, speed_m_s: 2 }));
    expect(slow.riding_N).toBeCloseTo(3 * 90 * 9.80665, 9);
    expect(slow.load_factor).toBeLessThan(1.1);
  });

  test('a curve too tight for the model caps the speed where three times the weight is reached', () => {
    const tight = kept(ridingLoads({ ...ride, radius_m: 1.3, speed_m_s: 4 }));
    expect(tight.stiff_factor).toBeNull();
    expect(tight.speed_cap_m_s).toBeCloseTo(Math.sqrt(2 * 9.80665 * 1.3), 12);
    expect(kept(ridingLoads(ride)).speed_cap_m_s).toBeNull();
  });

  test('a drop is never counted as less than half a metre', () => {
    expect(kept(ridingLoads({ ...ride, drop_m: 0.1 })).drop_N).toBe(kept(ridingLoads(ride)).drop_N);
    expect(kept(ridingLoads({ ...ride, drop_m: 0.9 })).drop_N).toBeGreaterThan(
      kept(ridingLoads(ride)).drop_N,
    );
  });

  test('what is no ride is refused', () => {
    expect(refused(ridingLoads({ ...ride, mass_kg: 0 })).field).toBe('mass_kg');
    expect(refused(ridingLoads({ ...ride, speed_m_s: Number.NaN })).field).toBe('speed_m_s');
    expect(refused(ridingLoads({ ...ride, exit_rad: 2 })).field).toBe('exit_rad');
  });
});

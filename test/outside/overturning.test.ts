// Ramps that slide and tip under a rider. Worked cases: 110 kg at 8 m/s on R 2.5 m to 40°, ramp of 80 kg; 90 kg at 6 m/s on R 2.5 m at
// 45° [calc, statics]. Ground: IBC table 1806.2 in two reproductions [found]. Anchors: tent-trade article on an IFAI study, an
// earth-anchor test note [found].
import { describe, expect, test } from 'vitest';
import { ANCHORS, ballast } from '../../src/reckon/strength/anchors.ts';
import { footPressure, GROUNDS } from '../../src/reckon/strength/ground.ts';
import { type StandingInput, standing } from '../../src/reckon/strength/standing.ts';
import { kept } from '../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
const PSF = 47.880259;
const LBF = 4.4482216;

/** The rider at the lip of the first case: N 3137.61 N [calc]. */
const lip: StandingInput = {
  places: [
    {
      x_mm: 2500 * Math.sin(rad(40)),
      y_mm: 2500 * (1 - Math.cos(rad(40))),
      slope_rad: rad(40),
      normal_N: 3137.61,
    },
  ],
  along_share: 0,
  side_share: 0,
  weight_N: 784.53,
  centre_x_mm: 0.55 * 1606.969,
  front_x_mm: 0,
  rear_x_mm: 2500 * Math.sin(rad(40)),
  track_mm: 1200,
  deck_mm: 1200,
  friction: 0.4,
};

describe('80 kg of ramp under a rider at its lip', () => {
  const it = kept(standing(lip));
  const forward = 2016.81;

  test('pushes 2016.81 N forward: μ 0.632611 would hold it, 0.4 is 741.58 N short', () => {
    expect(0.4 / it.slide.safety!).toBeCloseTo(0.632611, 5);
    expect(forward * (1 - it.slide.safety!)).toBeCloseTo(741.58, 1);
  });

  test('tips about the foot under the lip, 1179.61 against 567.32 N·m: 381.02 N at the entry edge would just hold it', () => {
    expect(it.tipForward.safety! * 1179.61).toBeCloseTo(567.32, 1);
    expect((1179.61 * (1 - it.tipForward.safety!)) / 1.606969).toBeCloseTo(381.02, 1);
  });

  test('with 1.5 on the push, anchors hold 1750 N along and 748 N up (derived)', () => {
    expect(it.held.slide_N).toBeCloseTo(1.5 * 2016.81 - 0.4 * (784.53 + 2403.55), 0);
    expect(it.held.lift_N).toBeCloseTo((1.5 * 1179.61 - 567.32) / 1.606969, 0);
  });
});

describe('785 N of ramp, 1358 N forward and down, μ 0.35', () => {
  const it = kept(
    standing({
      ...lip,
      places: [{ x_mm: 1767, y_mm: 732, slope_rad: rad(45), normal_N: 1358 * Math.SQRT2 }],
      rear_x_mm: 1767,
      centre_x_mm: 972,
      weight_N: 785,
      friction: 0.35,
    }),
  );

  test('safety against sliding 0.55, anchors 1287 N', () => {
    expect(it.slide.safety).toBeCloseTo(0.55, 2);
    expect(Math.abs(it.held.slide_N - 1287)).toBeLessThan(1);
  });
});

test('300 kg of bags stand in for 1.2 kN at μ 0.4 [calc]', () => {
  const frame = kept(standing(lip));
  const held = { slide_N: 1200, sideways_N: 0, lift_N: 0, sideLift_N: 0 };
  const bags = ballast({ ...frame, held }, 0.4)!;
  expect(bags.slide_kg / 300).toBeCloseTo(1.02, 2);
});

describe('what ground bears: IBC table 1806.2 [found], lawn [practice]', () => {
  test.each([
    ['concrete', 12_000],
    ['gravel', 3000],
    ['sand', 2000],
    ['clay', 1500],
  ] as const)('%s: %d lb/ft²', (ground, psf) => {
    expect(GROUNDS[ground].bears_MPa! * 1e6).toBeCloseTo(psf * PSF, 0);
  });

  test('a kilonewton on 100 × 100 mm is 100 kPa, too much for lawn; on 300 × 300 mm it is 11 kPa', () => {
    const pad = footPressure(1000, 100, 100, GROUNDS['dry lawn'])!;
    expect(pad.pressure_MPa * 1000).toBeCloseTo(100, 9);
    expect(pad.utilisation).toBeGreaterThan(1);
    const board = footPressure(1000, 300, 300, GROUNDS['wet lawn'])!;
    expect(board.pressure_MPa * 1000).toBeCloseTo(11, 0);
    expect(board.utilisation).toBeLessThan(1);
  });
});

describe('anchors, a third of what tests drew [found, practice]', () => {
  test('a 1 × 36 in stake in lawn: about 300 lb, half in soaked ground', () => {
    expect(ANCHORS['stake 900 mm'].holds_N / LBF).toBeCloseTo(300, 4);
    expect(ANCHORS['stake 900 mm'].holds_N).toBeLessThan((1000 * LBF) / 3);
    expect(ANCHORS['stake 900 mm, soaked ground'].holds_N).toBe(ANCHORS['stake 900 mm'].holds_N / 2);
  });

  test('a 30 in helix: a third of 1500 lb', () => {
    expect(ANCHORS['screw anchor 760 mm'].holds_N / LBF).toBeCloseTo(500, 4);
  });
});

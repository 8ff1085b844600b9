import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ANCHORS, anchorPlan, ballast, PULL_TEST } from '../../../src/reckon/strength/anchors.ts';
import { footPressure, GROUNDS } from '../../../src/reckon/strength/ground.ts';
import { type StandingInput, standing } from '../../../src/reckon/strength/standing.ts';
import { kept, refused } from '../../quantity/expect-outcome.ts';

/** An invented ramp of 70 kg: deck from the entry edge to a lip 2250 mm away and 600 up. */
const ramp: StandingInput = {
  places: Array.from({ length: 11 }, (_, k) => {
    const slope_rad = (k / 10) * (Math.PI / 6);
    return {
      x_mm: 4500 * Math.sin(slope_rad),
      y_mm: 4500 * (1 - Math.cos(slope_rad)),
      slope_rad,
      normal_N: 2648,
    };
  }),
  along_share: 0.3,
  side_share: 0.2,
  weight_N: 700,
  centre_x_mm: 1300,
  front_x_mm: 0,
  rear_x_mm: 2250,
  track_mm: 1160,
  deck_mm: 1200,
  friction: 0.3,
};

describe('a ramp with a rider on it', () => {
  test('slides and tips: the rider at the lip is the worst', () => {
    const it = kept(standing(ramp));
    expect(it.staysAlone).toBe(false);
    expect(it.slide.place).toBe(10);
    expect(it.tipForward.place).toBe(10);
    expect(it.slide.safety).toBeLessThan(1);
    for (const force of Object.values(it.held)) expect(force).toBeGreaterThan(0);
  });

  test('with what is held added, every safety is 1.5', () => {
    const { held } = kept(standing(ramp));
    const { x_mm, y_mm, slope_rad: s, normal_N: N } = ramp.places[10]!;
    expect(x_mm).toBeCloseTo(2250, 0);
    const forward = N * (Math.sin(s) + 0.3 * Math.cos(s));
    const down = N * (Math.cos(s) - 0.3 * Math.sin(s));
    expect((0.3 * (700 + down) + held.slide_N) / forward).toBeCloseTo(1.5, 9);
    const upset = forward * y_mm + down * Math.max(0, x_mm - 2250);
    expect((700 * 950 + held.lift_N * 2250 + down * Math.max(0, 2250 - x_mm)) / upset).toBeCloseTo(1.5, 6);
  });

  test('a rider behind the last feet turns it over, one before them holds it', () => {
    const at = (rear_x_mm: number) => kept(standing({ ...ramp, rear_x_mm })).held.lift_N;
    expect(at(1900)).toBeGreaterThan(at(2250));
    expect(at(2450)).toBeLessThan(at(2250));
  });

  test('a deck wider than its feet tips over the side sooner', () => {
    const at = (deck_mm: number) => kept(standing({ ...ramp, deck_mm })).held.sideLift_N;
    expect(at(1800)).toBeGreaterThan(at(1200));
    expect(at(1100)).toBeLessThan(at(1200));
  });

  test('heavy enough it stays, and a rider who pushes nowhere upsets nothing', () => {
    expect(kept(standing({ ...ramp, weight_N: 50_000 })).staysAlone).toBe(true);
    const flat = { ...ramp, along_share: 0, side_share: 0 };
    const still = kept(standing({ ...flat, places: [{ ...ramp.places[0]!, x_mm: 900 }], deck_mm: 1100 }));
    expect(still.slide.safety).toBeNull();
    expect(still.staysAlone).toBe(true);
  });

  test('nothing is ever no number', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 9000, noNaN: true }),
        fc.double({ min: 1, max: 9000, noNaN: true }),
        fc.double({ min: 0, max: 1.2, noNaN: true }),
        (normal_N, weight_N, friction) => {
          const places = ramp.places.map(place => ({ ...place, normal_N }));
          const it = kept(standing({ ...ramp, places, weight_N, friction }));
          for (const force of Object.values(it.held)) expect(Number.isFinite(force)).toBe(true);
          for (const one of [it.slide, it.sideways, it.tipForward, it.tipSideways])
            expect(one.safety === null || Number.isFinite(one.safety)).toBe(true);
        },
      ),
    );
  });

  test.each([
    [{ places: [] }, 'places'],
    [{ weight_N: 0 }, 'weight_N'],
    [{ rear_x_mm: 50 }, 'rear_x_mm'],
    [{ friction: Number.NaN }, 'friction'],
    [{ places: [{ ...ramp.places[0]!, y_mm: -1 }] }, 'places.0.y_mm'],
  ])('%o is no ramp', (change, field) => {
    expect(refused(standing({ ...ramp, ...change })).field).toBe(field);
  });
});

describe('anchors', () => {
  const heavy = kept(standing(ramp));
  const steady = kept(standing({ ...ramp, weight_N: 50_000 }));

  test('are four even where the ramp would stay alone: two at each end', () => {
    expect(anchorPlan(steady, ANCHORS['stake 900 mm'])).toMatchObject({ entry: 2, rear: 2 });
  });

  test('each is tested to one and a half times its need', () => {
    const plan = anchorPlan(heavy, ANCHORS['screw anchor 760 mm'])!;
    expect(plan.entryTest_N).toBeCloseTo(PULL_TEST * plan.entryEach_N, 9);
    expect(plan.rearTest_N).toBeCloseTo(PULL_TEST * plan.rearEach_N, 9);
    expect(plan.entryEach_N).toBeGreaterThan(plan.rearEach_N);
  });

  test('weaker ones are more, and none is counted beyond what it holds', () => {
    const strong = anchorPlan(heavy, ANCHORS['screw anchor 760 mm'])!;
    const weak = anchorPlan(heavy, ANCHORS['reinforcing bar 600 mm'])!;
    expect(weak.entry).toBeGreaterThan(strong.entry);
    expect(weak.entryEach_N).toBeLessThanOrEqual(ANCHORS['reinforcing bar 600 mm'].holds_N);
    expect(weak.liftUnproven).toBe(true);
    expect(strong.liftUnproven).toBe(false);
  });

  test('where no number of them would do, there is no plan', () => {
    expect(anchorPlan(heavy, { holds_N: 20, sideOnly: true, source: 'a tent peg' })).toBeNull();
  });

  test('weight on the frame counts against sliding only by its friction', () => {
    const weights = ballast(heavy, 0.3)!;
    expect(weights.slide_kg * 9.80665 * 0.3).toBeCloseTo(heavy.held.slide_N, 9);
    expect(weights.entry_kg * 9.80665).toBeCloseTo(heavy.held.lift_N, 9);
    expect(ballast(heavy, 0)).toBeNull();
  });
});

describe('feet', () => {
  test('a board wide enough is found, in steps of 50 mm', () => {
    const pad = footPressure(2000, 100, 100, GROUNDS['dry lawn'])!;
    expect(pad.utilisation).toBeCloseTo(4, 9);
    expect(pad.side_mm).toBe(200);
    expect(
      footPressure(2000, pad.side_mm, pad.side_mm, GROUNDS['dry lawn'])!.utilisation,
    ).toBeLessThanOrEqual(1);
  });

  test('nothing is presumed of filled ground', () => {
    expect(footPressure(2000, 300, 300, GROUNDS['soft or filled ground'])).toBeNull();
  });
});

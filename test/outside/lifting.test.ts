import { describe, expect, test } from 'vitest';
import { frequencyMultiplier } from '../../src/reckon/handling/frequency.ts';
import { type Grip, type LiftInput, lift } from '../../src/reckon/handling/lift.ts';
import { slide } from '../../src/reckon/handling/slide.ts';
import { standing, standUp } from '../../src/reckon/handling/stand-up.ts';
import { team } from '../../src/reckon/handling/team.ts';
import { kept } from '../quantity/expect-outcome.ts';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;

/**
 * The Applications Manual (DHHS (NIOSH) 94-110) works in inches and pounds, whose form of the equation has rounder
 * constants: its 10, 25, 30 and 70 in are the metric form's 25, 63, 75 and 175 cm, its 51 lb the 23 kg. Its examples
 * are therefore laid on the metric form by its own 2.5 cm to the inch and 23 kg to 51 lb.
 */
const EQUATION_IN_mm = 25;
const EQUATION_LB_kg = 23 / 51;

type Inches = Readonly<{
  H: number;
  V: number;
  D: number;
  per_min: number;
  hours: number;
  grip: Grip;
  L?: number;
}>;

const asked = (
  { H, V, D, per_min, hours, grip, L = 20 }: Inches,
  in_mm: number,
  lb_kg: number,
): LiftInput => ({
  load_kg: L * lb_kg,
  hands_from_body_mm: H * in_mm,
  hands_height_mm: V * in_mm,
  raise_mm: D * in_mm,
  twist_rad: 0,
  lifts_per_min: per_min,
  hours,
  grip,
});
const byEquation = (example: Inches) => kept(lift(asked(example, EQUATION_IN_mm, EQUATION_LB_kg)));
const limit_lb = (example: Inches): number => byEquation(example).limit_kg / EQUATION_LB_kg;

/** The manual prints multipliers to 0.01 and limits to 0.1 lb: 2.5 % covers what that rounds away. */
const ROUNDED = 0.025;
const agrees = (value: number, printed: number): void =>
  expect(Math.abs(value / printed - 1)).toBeLessThan(ROUNDED);

describe('NIOSH Applications Manual, worked examples', () => {
  // Example 4, package inspection: limits and multipliers in a public transcription (rev. 9/2021) [found]; load and
  // reach [memory].
  test('package inspection: 34.9 lb at the origin, 15.2 lb at the destination', () => {
    const job = { D: 37, per_min: 3, hours: 1, grip: 'fair', L: 26 } as const;
    const origin = { ...job, H: 10, V: 22 };
    agrees(limit_lb(origin), 34.9);
    const m = byEquation(origin);
    for (const [multiplier, printed] of [
      [m.horizontal, 1],
      [m.vertical, 0.94],
      [m.distance, 0.87],
      [m.twist, 1],
      [m.frequency, 0.88],
      [m.coupling, 0.95],
    ] as const)
      expect(multiplier).toBeCloseTo(printed, 2);
    agrees(limit_lb({ ...job, H: 20, V: 59 }), 15.2);
    expect(byEquation({ ...job, H: 20, V: 59 }).index).toBeCloseTo(1.7, 1);
  });

  // Example 1, loading punch press stock, pp. 33–37 [memory].
  test('punch press stock: 16.3 lb at the origin, 14.5 lb at the destination', () => {
    const job = { H: 23, D: 49, per_min: 0.1, hours: 1, grip: 'fair', L: 44 } as const;
    agrees(limit_lb({ ...job, V: 15 }), 16.3);
    agrees(limit_lb({ ...job, V: 64 }), 14.5);
    expect(byEquation({ ...job, V: 15 }).index).toBeCloseTo(2.7, 1);
    // 3.11 here: the manual divides by a limit whose multipliers it had rounded up.
    expect(Math.abs((byEquation({ ...job, V: 64 }).index ?? 0) - 3)).toBeLessThan(0.12);
  });

  // Example 2, loading supply rolls [memory].
  test('supply rolls: 20.9 lb at the origin, 18.1 lb at the destination', () => {
    const job = { H: 20, D: 17, per_min: 0.1, hours: 1, grip: 'poor', L: 35 } as const;
    agrees(limit_lb({ ...job, V: 27 }), 20.9);
    agrees(limit_lb({ ...job, V: 10 }), 18.1);
  });

  // In true inches the metric form is up to 2.3 % harder, because it has rounded 10 in down to 25 cm [derived].
  test('in true inches and pounds the same examples come out a little harder, never easier', () => {
    for (const [example, printed] of [
      [{ H: 10, V: 22, D: 37, per_min: 3, hours: 1, grip: 'fair' }, 34.9],
      [{ H: 20, V: 59, D: 37, per_min: 3, hours: 1, grip: 'fair' }, 15.2],
      [{ H: 23, V: 15, D: 49, per_min: 0.1, hours: 1, grip: 'fair' }, 16.3],
      [{ H: 20, V: 27, D: 17, per_min: 0.1, hours: 1, grip: 'poor' }, 20.9],
    ] as const) {
      const limit = kept(lift(asked(example, 25.4, 0.45359237))).limit_kg / 0.45359237;
      expect(limit).toBeLessThan(printed);
      expect(limit / printed).toBeGreaterThan(0.95);
    }
  });

  // A worked metric problem of a course [found].
  test('25, 55 and 95 cm, three lifts a minute for 45 minutes, fair: 15.7 kg', () => {
    const it = kept(
      lift({
        load_kg: 12,
        hands_from_body_mm: 250,
        hands_height_mm: 550,
        raise_mm: 950,
        twist_rad: 0,
        lifts_per_min: 3,
        hours: 0.75,
        grip: 'fair',
      }),
    );
    expect(it.vertical).toBeCloseTo(0.94, 3);
    expect(it.distance).toBeCloseTo(0.867, 3);
    expect(it.frequency).toBe(0.88);
    expect(it.limit_kg).toBeCloseTo(15.7, 1);
  });
});

// DHHS (NIOSH) 94-110, Table 5, in a public transcription (rev. 9/2021) [found], as it is printed: lifts a minute, then
// up to 1, 2 and 8 hours; of a pair the first is for hands below 75 cm.
const FREQUENCY = `
  .2 1.00 .95 .85
  .5 .97 .92 .81
  1 .94 .88 .75
  2 .91 .84 .65
  3 .88 .79 .55
  4 .84 .72 .45
  5 .80 .60 .35
  6 .75 .50 .27
  7 .70 .42 .22
  8 .60 .35 .18
  9 .52 .30 0/.15
  10 .45 .26 0/.13
  11 .41 0/.23 0
  12 .37 0/.21 0
  13 0/.34 0 0
  14 0/.31 0 0
  15 0/.28 0 0`;

test('every figure of the frequency table', () => {
  const rows = FREQUENCY.trim().split('\n');
  expect(rows).toHaveLength(17);
  for (const row of rows) {
    const [per_min = '', ...columns] = row.trim().split(' ');
    for (const [n, hours] of [1, 2, 8].entries()) {
      const [low = '', high = low] = (columns[n] ?? '').split('/');
      expect(frequencyMultiplier(Number(per_min), hours, 700)).toBe(Number(low));
      expect(frequencyMultiplier(Number(per_min), hours, 800)).toBe(Number(high));
    }
  }
});

// Worked apart from this code [derived].
describe('handling a frame', () => {
  test('120 kg stood up by hands at 2 m: 54, 34.8, 21.2 and 6.2 kg at 0, 30, 45 and 60°, balance at 66°', () => {
    const it = kept(standUp({ mass_kg: 120, along_mm: 900, above_mm: 400, hands_mm: 2000 }));
    for (const [angle, kg] of [
      [0, 54],
      [30, 34.8],
      [45, 21.2],
      [60, 6.2],
    ] as const) {
      const hold = it.holds.find(one => Math.abs(one.raised_rad - rad(angle)) < 1e-9);
      expect((hold?.force_N ?? 0) / 9.80665).toBeCloseTo(kg, 1);
    }
    expect((it.balance_rad * 180) / Math.PI).toBeCloseTo(66, 0);
  });

  test('a side frame of 20 kg on a 40 mm base tips at 3.3°', () => {
    expect((kept(standing(20, 20, 700, 350)).tips_at_rad * 180) / Math.PI).toBeCloseTo(3.3, 1);
  });

  test.each([
    [0, 0.4, 0.4],
    [0, 0.6, 0.6],
    [10, 0.5, 0.67],
    [15, 0.6, 0.84],
  ])('on %d° with friction %d the pull is %d of the weight', (slope, friction, share) => {
    const it = kept(
      slide({ mass_kg: 100, slope_rad: rad(slope), friction: { low: friction, high: friction } }),
    );
    expect(it.keep_going_N.low / 980.665).toBeCloseTo(share, 2);
  });

  // Two together lift about two thirds of what they lift apart: HSE L23 [memory], on the 25 kg of HSE's filter [memory].
  test('people to a frame', () => {
    expect(kept(team({ mass_kg: 12 })).people).toBe(2);
    expect(kept(team({ mass_kg: 33 })).people).toBe(2);
    expect(kept(team({ mass_kg: 34 })).people).toBe(3);
    expect(kept(team({ mass_kg: 50 })).people).toBe(3);
    expect(kept(team({ mass_kg: 51 }))).toMatchObject({ people: 4, trolley: true });
  });
});

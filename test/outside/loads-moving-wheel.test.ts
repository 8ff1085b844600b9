// A wheel rolling over a rail on props, against influence lines of continuous beams: simple span PL/4, two equal spans 0.2074 PL at 0.432 L
// and −0.0962 PL over the middle prop with the wheel at 0.577 L [memory: beam tables; re-derived beside it from the equation of three moments].
import { describe, expect, test } from 'vitest';
import type { SideFrameInput } from '../../src/reckon/strength/side-frame-input.ts';
import { willItHold } from '../../src/reckon/strength/will-it-hold.ts';
import { kept } from '../quantity/expect-outcome.ts';

const L = 1000;
const P = 2000;
/** So that AISC's 0.93 of the wall is 3 mm: 421 mm² and 9.32 cm⁴ by a maker's brochure [found]. */
const tube = { depth_mm: 40, width_mm: 40, wall_mm: 3 / 0.93 };

/** A level rail propped on the ground; its last prop stands under a stub of base rail, which turns with it and bends nothing. */
const level = (spans: number): SideFrameInput => ({
  standard: 'AISC',
  grade: { yield_MPa: 235, tensile_MPa: 360 },
  rail: {
    points: [
      { x_mm: 0, y_mm: 100 },
      { x_mm: spans * L, y_mm: 100 },
    ],
    tube,
    opened: false,
    sideways_mm: L,
  },
  base: { tube, y_mm: 40, from_x_mm: spans * L - 20, to_x_mm: spans * L },
  uprights: [],
  diagonals: [],
  feet: Array.from({ length: spans }, (_, k) => ({
    name: `prop ${k}`,
    x_mm: k * L,
    anchored: k === 0,
  })).concat({
    name: 'last',
    x_mm: spans * L - 20,
    anchored: false,
  }),
  loads: { riding_N: P, drop_N: 0, along_share: 0, standing_N_mm: 0, deck_N_mm: 0 },
  slitProven: true,
  jointProven: true,
  positions: 160,
});

/** Own weight of the rail, N/mm: 421 mm² of steel [found area]. */
const OWN = 421 * 7850e-9 * 9.80665;

const extremes = async (spans: number) => {
  const { members, feet, sags } = kept(await willItHold(level(spans)));
  const rails = members.filter(({ kind }) => kind === 'curved rail').slice(0, spans);
  return {
    most: Math.max(...rails.map(({ envelope }) => envelope.moment_Nmm.most)),
    least: Math.min(...rails.map(({ envelope }) => envelope.moment_Nmm.least)),
    feet,
    sags,
  };
};

describe('a wheel rolling over a rail', () => {
  test('one span of 980 mm: PL/4, and PL³/48EI', async () => {
    const { most, least, sags } = await extremes(1);
    const span = L - 20;
    expect(most / ((P * span) / 4 + (OWN * span ** 2) / 8)).toBeCloseTo(1, 2);
    // The free end of 20 mm hogs by no more than the wheel on it.
    expect(least).toBeGreaterThan(-P * 20 * 1.05);
    const AISC_E = 199_948;
    expect(sags.span.sag_mm / ((P * span ** 3) / (48 * AISC_E * 93_200))).toBeCloseTo(1, 2);
  });

  test('two spans: 0.2074 PL between, −0.0962 PL over the middle prop', async () => {
    const { most, least } = await extremes(2);
    // The last span is 20 mm short, and the rail has a weight of its own: wL²/8 over the prop, 9wL²/128 between.
    expect((most - (9 / 128) * OWN * L ** 2) / (P * L) / 0.2074).toBeCloseTo(1, 1);
    expect((least + (OWN * L ** 2) / 8) / (P * L) / -0.0962).toBeCloseTo(1, 1);
    // Three moments, wheel at a from the left of the first of two equal spans: M over the prop = −P a (L² − a²) / 4L² (derived).
    const over = (a: number) => (-P * a * (L ** 2 - a ** 2)) / (4 * L ** 2);
    expect(over(L / Math.sqrt(3)) / (P * L)).toBeCloseTo(-0.0962, 4);
    const under = (a: number) => (P * a * (L - a)) / L + (over(a) * a) / L;
    expect(under(0.432 * L) / (P * L)).toBeCloseTo(0.2074, 4);
  });

  test('the prop under the wheel takes all of it and its share of the rail', async () => {
    const { feet } = await extremes(2);
    expect(Math.abs(feet[0]!.down_N - (P + (3 / 8) * OWN * L))).toBeLessThan(5);
    expect(Math.abs(feet[1]!.down_N - (P + (5 / 4) * OWN * L))).toBeLessThan(5);
    // A wheel in the first span lifts the far end: 0.0962 P of it.
    expect(Math.abs(feet[2]!.lift_N - (0.0962 * P - (3 / 8) * OWN * L))).toBeLessThan(6);
  });

  test('three spans and more: four fifths of a single span’s moment [practice] is on the safe side between props', async () => {
    const { most } = await extremes(4);
    expect(most / (P * L)).toBeLessThan(0.8 / 4 + 0.012);
  });
});

// Spring-back of a forced rail. There is no published table of it; these are closed forms and a plane-frame run of our own
// [derived], worked apart from this code: fraction back = K_free / (K_free + K_brace), and K⁻¹·F for two points.
import { describe, expect, test } from 'vitest';
import type { ForcedRail, Stiff, Upright } from '../../src/reckon/statics/forced-rail.ts';
import { layToLine, placesAlong } from '../../src/reckon/statics/rail-line.ts';
import { springBack, springBackTable } from '../../src/reckon/statics/spring-back.ts';

const E = 210_000;
/** SHS 40×40×3 and 30×30×2, EN 10219. */
const RAIL = { area_mm2: 420.8, inertia_mm4: 93_240, depth_mm: 40 };
const POST: Stiff = { area_mm2: 213.7, inertia_mm4: 27_219 };

const SPAN = 2400;
const HEIGHT = 400;

const pinnedPost = (at_mm: number, area_mm2 = POST.area_mm2): Upright => ({
  at_mm,
  section: { ...POST, area_mm2 },
  counts: 1,
  pinned: true,
});

/** A straight rail above a straight base; a hair of a diagonal keeps pinned posts from leaning over, and holds nothing else. */
const straight = (change: Partial<ForcedRail>): ForcedRail => ({
  line: [
    { x: 0, y: HEIGHT },
    { x: SPAN, y: HEIGHT },
  ],
  rail: RAIL,
  clamps: [
    { at_mm: 0, forced_mm: 0 },
    { at_mm: SPAN / 2, forced_mm: 10 },
    { at_mm: SPAN, forced_mm: 0 },
  ],
  base: { from: { x: 0, y: 0 }, to: { x: SPAN, y: 0 }, section: RAIL, heldAt_mm: [] },
  toeJoined: false,
  uprights: [0, SPAN / 2, SPAN].map(at => pinnedPost(at)),
  diagonals: [{ foot_mm: 0, head_mm: SPAN / 2, section: { area_mm2: 1e-4, inertia_mm4: 1e-6 }, counts: 1 }],
  stations_mm: [0, SPAN / 2, SPAN],
  ...change,
});

const sprung = async (forced: ForcedRail) => {
  const back = await springBack(forced);
  if (!back.ok) throw new Error(back.fault.message);
  return back.value;
};

const held = (at: readonly number[]) => ({ ...straight({}).base, heldAt_mm: at });

describe('forced at one point', () => {
  const free = (48 * E * RAIL.inertia_mm4) / SPAN ** 3;

  test('10 mm at the middle of 2 400 mm takes 48EI/L³, 68 N/mm: 680 N', async () => {
    const { clamps, clamped_MPa } = await sprung(straight({}));
    expect(clamps[1]!.force_N).toBeCloseTo(680, -1);
    expect(clamps[1]!.force_N / (10 * free)).toBeCloseTo(1, 6);
    expect(clamps[0]!.force_N / (-5 * free)).toBeCloseTo(1, 6);
    expect(clamped_MPa).toBeCloseTo(((10 * free * SPAN) / 4) * (20 / RAIL.inertia_mm4), 4);
  });

  test('without braces all of it comes back', async () => {
    const { worst_mm, unbraced_mm, stations, released_MPa, over } = await sprung(
      straight({ uprights: [], diagonals: [] }),
    );
    expect(worst_mm).toBeCloseTo(unbraced_mm, 9);
    // Nothing holds it: no forcing past its line leaves less.
    expect(over).toEqual({ times: 1, left_mm: worst_mm });
    expect(stations[1]!.back_mm - stations[0]!.back_mm).toBeCloseTo(-10, 5);
    expect(released_MPa).toBeLessThan(1e-6);
  });

  test('braced to a loose base rail like itself, half comes back', async () => {
    const { worst_mm, unbraced_mm, over } = await sprung(straight({}));
    expect(worst_mm / unbraced_mm).toBeCloseTo(0.5, 2);
    // Over-corrected by 1/(1 − f) = 2 nothing would be left; half as far past its line as it was off, a quarter is [derived].
    expect(over.times).toBe(1.5);
    expect(over.left_mm / unbraced_mm).toBeCloseTo(0.25, 2);
  });

  test('braced to a base rail held at its ends and thirds, three spans of 800, 0.2 mm of 10 comes back', async () => {
    const { worst_mm, unbraced_mm } = await sprung(
      straight({ base: held([0, SPAN / 3, (2 * SPAN) / 3, SPAN]) }),
    );
    // Three equal spans, load at the middle of the middle one, by three moments: −3PL/40 over the supports, so the sag is
    // PL³/EI · (1/48 − 3/320). (One span of 800 alone would be 1 836 N/mm, and 0.36 mm.)
    const base = (E * RAIL.inertia_mm4) / (SPAN / 3) ** 3 / (1 / 48 - 3 / 320);
    const posts = (E * POST.area_mm2) / HEIGHT / 1.5;
    const brace = 1 / (1 / base + 1 / posts);
    expect(worst_mm / unbraced_mm).toBeCloseTo(free / (free + brace), 5);
  });

  test('braced by a post of EA/L 1.1e5 to the ground, 0.01 mm of 10 comes back', async () => {
    const { worst_mm, unbraced_mm } = await sprung(straight({ base: held([0, SPAN / 2, SPAN]) }));
    const post = (E * POST.area_mm2) / HEIGHT;
    // The ends stand on posts of their own, each with half the force: one and a half times the one post's give.
    expect((10 * worst_mm) / unbraced_mm).toBeCloseTo((10 * free * 1.5) / post, 3);
  });

  test('posts only tacked let more back than welded ones, and cut posts nothing at all', async () => {
    const shares = await Promise.all(
      ([1, 0.3, 0] as const).map(async counts => {
        const uprights = straight({}).uprights.map(upright => ({ ...upright, pinned: false, counts }));
        return (await sprung(straight({ uprights, diagonals: [] }))).worst_mm;
      }),
    );
    expect(shares[0]).toBeLessThan(shares[1]!);
    expect(shares[1]).toBeLessThan(shares[2]!);
  });
});

describe('forced at two points, the thirds', () => {
  // K = [367.13 −321.24; −321.24 367.13] N/mm, forced (6, 3) mm: F = (1 239, −826) N.
  const thirds = [0, 800, 1600, SPAN];
  const forced = [0, 6, 3, 0];
  const rail = (spring: number) => {
    const ends = 1e9;
    return straight({
      clamps: thirds.map((at_mm, k) => ({ at_mm, forced_mm: forced[k]! })),
      uprights: thirds.map((at, k) => pinnedPost(at, ((k === 0 || k === 3 ? ends : spring) * HEIGHT) / E)),
      base: held(thirds),
      stations_mm: thirds,
    });
  };

  test('the clamps push 1 239 N and pull 826 N', async () => {
    const { clamps } = await sprung(rail(200));
    expect(Math.abs(clamps[1]!.force_N - 1239)).toBeLessThan(1);
    expect(Math.abs(clamps[2]!.force_N + 826)).toBeLessThan(1);
    expect(clamps.reduce((sum, { force_N }) => sum + force_N, 0)).toBeCloseTo(0, 3);
  });

  test.each([
    [20, 4.59, 1.68],
    [200, 2.0, -0.32],
    [2000, 0.49, -0.28],
    [20_000, 0.06, -0.04],
  ])('on springs of %d N/mm, %d and %d mm come back', async (spring, first, second) => {
    const { stations } = await sprung(rail(spring));
    const places = placesAlong(straight({}).line, thirds);
    // What comes back is away from where it was forced; read, as a rail is, after it is laid to its line.
    const wanted = layToLine(places, [0, -first, -second, 0]);
    for (const [k, { back_mm }] of stations.entries())
      expect(Math.abs(back_mm - wanted[k]!)).toBeLessThan(0.011);
  });
});

describe('a rail over-curled by 40 mrad, R 3 000 and 45°, five clamps, posts evenly spaced to the lip', () => {
  const R = 3056.5;
  const turn = Math.PI / 4;
  const BAYS = 48;
  const line = Array.from({ length: BAYS + 1 }, (_, k) => {
    const angle = (turn * k) / BAYS;
    return { x: R * Math.sin(angle), y: R * (1 - Math.cos(angle)) };
  });
  const along = 2 * R * BAYS * Math.sin(turn / BAYS / 2);
  /** How far the free rail stands inside its line at a share of its length, toe on the line: the curl's turns times their levers. */
  const curl = (share: number) => (0.04 / turn) * R * (1 - Math.cos(turn * share));
  const rail = (posts: number): ForcedRail => ({
    line,
    rail: RAIL,
    clamps: [0, 0.25, 0.5, 0.75, 1].map(share => ({ at_mm: along * share, forced_mm: -curl(share) })),
    base: { from: { x: 0, y: 0 }, to: { x: R * Math.sin(turn), y: 0 }, section: RAIL, heldAt_mm: [] },
    toeJoined: true,
    uprights: Array.from({ length: posts }, (_, k) => ({
      at_mm: (along * (k + 1)) / posts,
      section: POST,
      counts: 1,
    })),
    diagonals: [],
    stations_mm: Array.from({ length: 13 }, (_, k) => (along * k) / 12),
  });

  test('free, it is 7.9 mm off its line; the clamps push 0.5 to 1 kN', async () => {
    const { unbraced_mm, clamps } = await sprung(rail(3));
    // Which stations are read moves the fit a little.
    expect(Math.abs(unbraced_mm - 7.9)).toBeLessThan(0.5);
    for (const { force_N } of clamps) {
      expect(Math.abs(force_N)).toBeGreaterThan(450);
      expect(Math.abs(force_N)).toBeLessThan(1100);
    }
  });

  // Share of the free error that is left: base loose, loose with diagonals, held. The run it is held against had its own
  // spacing of posts and clamps, so a few hundredths are allowed.
  test.each([
    [1, 0.62, 0.62, 0.62],
    [2, 0.34, 0.24, 0.07],
    [3, 0.26, 0.12, 0.04],
    [4, 0.23, 0.13, 0.03],
    [6, 0.19, 0.1, 0.03],
    [8, 0.16, 0.09, 0.03],
  ])('%d posts: %d loose, %d with diagonals, %d held', async (posts, loose, withDiagonals, heldDown) => {
    const forced = rail(posts);
    const table = await springBackTable(forced, POST);
    if (!table.ok) throw new Error(table.fault.message);
    const free = (await sprung(forced)).unbraced_mm;
    const row = table.value.at(-1)!;
    expect(row.welded).toBe(posts);
    expect(Math.abs(row.loose_mm / free - loose)).toBeLessThan(0.035);
    expect(Math.abs(row.looseWithDiagonals_mm / free - withDiagonals)).toBeLessThan(0.035);
    expect(Math.abs(row.held_mm / free - heldDown)).toBeLessThan(0.035);
  });

  test('each upright welded before letting go leaves less to come back', async () => {
    const forced = rail(4);
    // Lip first, as they go in.
    const table = await springBackTable({ ...forced, uprights: [...forced.uprights].reverse() }, POST);
    if (!table.ok) throw new Error(table.fault.message);
    const loose = table.value.map(({ loose_mm }) => loose_mm);
    expect(loose).toEqual([...loose].sort((a, b) => b - a));
  });
});

import { describe, expect, test } from 'vitest';
import type { ForcedRail } from '../../../src/reckon/statics/forced-rail.ts';
import { placeNearest, placesAlong } from '../../../src/reckon/statics/rail-line.ts';
import { springBack, springBackTable } from '../../../src/reckon/statics/spring-back.ts';

const POST = { area_mm2: 213.7, inertia_mm4: 27_219 };
const RAIL = { area_mm2: 420.8, inertia_mm4: 93_240, depth_mm: 40 };

/** A bent rail, invented: seven facets of 300 mm, each turned 6° from the last. */
const facets = Array.from({ length: 8 }, (_, k) => {
  // Sum of the first k facets: a chord of the circle through their corners.
  const chord = (300 * Math.sin((k * Math.PI) / 60)) / Math.sin(Math.PI / 60);
  const heading = ((k - 1) * Math.PI) / 60;
  return { x: chord * Math.cos(heading), y: 20 + chord * Math.sin(heading) };
});

/** It curled too much, evenly, and was pulled open to its line. */
const forced: ForcedRail = {
  line: facets,
  rail: RAIL,
  clamps: [
    { at_mm: 0, forced_mm: 0 },
    { at_mm: 700, forced_mm: -1.3 },
    { at_mm: 1400, forced_mm: -5.3 },
    { at_mm: 2100, forced_mm: -12 },
  ],
  base: { from: { x: 0, y: 0 }, to: { x: facets.at(-1)!.x, y: 0 }, section: RAIL, heldAt_mm: [] },
  toeJoined: true,
  uprights: [1000, 1600, 2100].map(at_mm => ({ at_mm, section: POST, counts: 1 as const })),
  diagonals: [],
  stations_mm: [0, 300, 700, 1000, 1400, 1800, 2100],
};

const sprung = async (change: Partial<ForcedRail> = {}) => {
  const back = await springBack({ ...forced, ...change });
  if (!back.ok) throw new Error(back.fault.message);
  return back.value;
};

describe('a forced rail', () => {
  test('how the free rail lay before it was clamped changes no clamp force', async () => {
    const before = await sprung();
    // All clamps 5 mm up: a bodily move, seen by each along its own normal. Facets do not face one centre,
    // so the strut along the rail takes a trace of it.
    const places = placesAlong(
      facets,
      forced.clamps.map(({ at_mm }) => at_mm),
    );
    const moved = forced.clamps.map(({ at_mm, forced_mm }) => {
      const { left } = places[placeNearest(places, at_mm)]!;
      return { at_mm, forced_mm: forced_mm + 5 * left.y };
    });
    const after = await sprung({ clamps: moved });
    for (const [k, { force_N }] of before.clamps.entries())
      expect(after.clamps[k]!.force_N / force_N).toBeCloseTo(1, 2);
  });

  test('forced twice as far, it takes twice the force, twice the stress, and springs twice as far', async () => {
    const once = await sprung();
    const twice = await sprung({
      clamps: forced.clamps.map(({ at_mm, forced_mm }) => ({ at_mm, forced_mm: 2 * forced_mm })),
    });
    expect(twice.worst_mm / once.worst_mm).toBeCloseTo(2, 6);
    expect(twice.clamped_MPa / once.clamped_MPa).toBeCloseTo(2, 6);
    expect(twice.clamps[1]!.force_N / once.clamps[1]!.force_N).toBeCloseTo(2, 6);
  });

  test('forced inward it springs outward where it was forced most', async () => {
    const { stations, worst_mm } = await sprung({ uprights: [], toeJoined: false });
    const worst = stations.find(({ back_mm }) => Math.abs(back_mm) === worst_mm)!;
    const inward = await sprung({
      uprights: [],
      toeJoined: false,
      clamps: forced.clamps.map(({ at_mm, forced_mm }) => ({ at_mm, forced_mm: -forced_mm })),
    });
    expect(inward.stations.find(({ at_mm }) => at_mm === worst.at_mm)!.back_mm).toBeCloseTo(
      -worst.back_mm,
      6,
    );
  });

  test('more holds more: joined toe, tacked, welded, held', async () => {
    const tacked = forced.uprights.map(upright => ({ ...upright, counts: 0.3 as const }));
    const held = { ...forced.base, heldAt_mm: [0, 1000, 1900] };
    const worsts = [
      await sprung({ uprights: [], toeJoined: false }),
      await sprung({ uprights: tacked }),
      await sprung(),
      await sprung({ base: held }),
    ].map(({ worst_mm }) => worst_mm);
    expect(worsts).toEqual([...worsts].sort((a, b) => b - a));
    expect(worsts[0]).toBeGreaterThan(2 * worsts[3]!);
  });

  test('a base rail that nothing ties to the rail holds nothing, held down or not', async () => {
    const loose = await sprung({ uprights: [], toeJoined: false });
    const held = await sprung({
      uprights: [],
      toeJoined: false,
      base: { ...forced.base, heldAt_mm: [0, 1500] },
    });
    expect(held.worst_mm).toBeCloseTo(loose.unbraced_mm, 6);
  });

  test('the table has a row for each upright, and diagonals between two or more make it better', async () => {
    const table = await springBackTable(forced, POST);
    if (!table.ok) throw new Error(table.fault.message);
    expect(table.value.map(({ welded }) => welded)).toEqual([1, 2, 3]);
    expect(table.value[0]!.looseWithDiagonals_mm).toBe(table.value[0]!.loose_mm);
    for (const { loose_mm, looseWithDiagonals_mm, held_mm } of table.value.slice(1)) {
      expect(looseWithDiagonals_mm).toBeLessThan(loose_mm);
      expect(held_mm).toBeLessThan(loose_mm);
    }
    // The row of all three is the rail itself.
    expect(table.value[2]!.loose_mm).toBeCloseTo((await sprung()).worst_mm, 6);
  });
});

test.each([
  ['one clamp', { clamps: [{ at_mm: 0, forced_mm: 1 }] }, 'clamps'],
  ['a clamp past the lip', { clamps: [...forced.clamps, { at_mm: 2200, forced_mm: 1 }] }, 'clamps.4.at_mm'],
  ['two clamps on one spot', { clamps: [...forced.clamps, { at_mm: 700, forced_mm: 1 }] }, 'clamps.4.at_mm'],
  [
    'an upright off the rail',
    { uprights: [{ at_mm: -5, section: POST, counts: 1 as const }] },
    'uprights.0.at_mm',
  ],
  [
    'a foot past the base rail',
    { diagonals: [{ foot_mm: 9000, head_mm: 100, section: POST, counts: 1 as const }] },
    'diagonals.0.foot_mm',
  ],
  ['one station', { stations_mm: [3] }, 'stations_mm'],
  ['a rail without length', { line: [{ x: 0, y: 0 }] }, 'line'],
])('%s is refused', async (_, change, field) => {
  expect(await springBack({ ...forced, ...change })).toMatchObject({ ok: false, fault: { field } });
});

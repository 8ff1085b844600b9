import { describe, expect, test } from 'vitest';
import { topic as circle } from '../../../src/commands/reckon/circle.ts';
import { topic as pull } from '../../../src/commands/reckon/pull.ts';
import { topic as rail } from '../../../src/commands/reckon/rail.ts';

type Answer = Record<string, unknown>;
const pitch = (3000 * Math.PI) / 4 / 25;
const input = {
  radius_mm: 3000,
  turn_deg: 45,
  slits_mm: Array.from({ length: 25 }, (_, i) => (i + 0.5) * pitch),
  stations_mm: Array.from({ length: 26 }, (_, j) => j * pitch),
  offsets_mm: Array.from({ length: 26 }, (_, j) => (j > 10 ? Math.round((j - 10) * pitch * 0.02) : 0)),
};

const answer = (given: Record<string, unknown>): Answer => {
  const found = rail.run(given) as { ok: boolean; value: Answer };
  expect(found.ok).toBe(true);
  return found.value;
};
const fault = (given: Record<string, unknown>) =>
  (rail.run(given) as { fault: { code: string; field: string } }).fault;

describe('reckon rail', () => {
  test('gives every field of its contract, angles in degrees', () => {
    const found = answer({ ...input, depth_mm: 40, wall_mm: 3, kerf_mm: 1.2 });
    expect(Object.keys(found)).toEqual(
      expect.arrayContaining([
        'cause',
        'sure',
        'rivals',
        'detail',
        'even_deg',
        'odd_slit',
        'odd_deg',
        'rigid',
        'worst_mm',
        'recuts',
        'worst_after_mm',
      ]),
    );
    expect(found.cause).toBe('one slit');
    expect(found.odd_slit).toBeGreaterThanOrEqual(10);
    expect(found.odd_slit).toBeLessThanOrEqual(11);
    expect(found.odd_deg).toBeCloseTo(1.15, 1);
    expect(found.rigid).toMatchObject({ x_mm: 0 });
    const [recut] = found.recuts as { turn_deg: number; face_gap_mm: number }[];
    expect(recut!.turn_deg).toBeLessThan(-0.8);
    expect(recut!.face_gap_mm).toBeCloseTo(1.2 - 38.5 * ((recut!.turn_deg * Math.PI) / 180), 9);
  });

  test('a rail without an odd slit has none, and its turn is nothing', () => {
    expect(answer({ ...input, offsets_mm: input.offsets_mm.map(() => 0) })).toMatchObject({
      cause: 'on the line',
      odd_slit: null,
      odd_deg: 0,
      recuts: [],
    });
  });

  test('the gap is not known without kerf and tube', () => {
    const [recut] = answer(input).recuts as { face_gap_mm: number | null }[];
    expect(recut!.face_gap_mm).toBeNull();
  });

  test('names what cannot be', () => {
    expect(fault({ ...input, offsets_mm: [1, 2, 3] })).toMatchObject({
      code: 'contradiction',
      field: 'offsets_mm',
    });
    expect(fault({ ...input, slits_mm: [300, 200] })).toMatchObject({
      code: 'out-of-range',
      field: 'slits_mm.1',
    });
    expect(fault({ ...input, slits_mm: [300, 2400] })).toMatchObject({
      code: 'out-of-range',
      field: 'slits_mm.1',
    });
    expect(fault({ ...input, stations_mm: input.stations_mm.with(25, 2400) })).toMatchObject({
      code: 'out-of-range',
      field: 'stations_mm.25',
    });
    expect(fault({ ...input, offsets_mm: input.offsets_mm.with(3, 1e5) })).toMatchObject({
      code: 'out-of-range',
      field: 'offsets_mm.3',
    });
    expect(fault({ ...input, depth_mm: 40, wall_mm: 20 })).toMatchObject({
      code: 'contradiction',
      field: 'wall_mm',
    });
    expect(fault({ ...input, turn_deg: 170, slits_mm: [4450] })).toMatchObject({ code: 'contradiction' });
  });

  test('a last station rounded past the end is taken', () => {
    expect(answer({ ...input, stations_mm: input.stations_mm.with(25, 2356.2) }).cause).toBe('one slit');
  });
});

describe('reckon circle and reckon pull', () => {
  test('answer in the fields of their contract', () => {
    const found = circle.run({
      points_mm: [
        [0, 0],
        [2, 0],
        [1, 1],
        [1, -1],
      ],
    }) as { value: Answer };
    expect(found.value).toMatchObject({
      centre_mm: [1, expect.closeTo(0, 9)],
      radius_mm: expect.closeTo(1, 9),
    });
    const learned = pull.run({
      prior_deg: 0.258,
      prior_spread: 0.6,
      measured_deg: 0.355,
      measured_sd_deg: 0.008,
    }) as { value: Answer };
    expect(Object.keys(learned.value)).toEqual(['deg', 'spread', 'next_deg_low', 'next_deg_high']);
  });
});

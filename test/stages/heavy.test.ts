import { describe, expect, test } from 'vitest';
import { evenSlits } from '../../src/reckon/rail/rail-plan.ts';
import { type RailQuestion, railAnswer } from '../../src/stages/heavy/rail-answer.ts';
import { springBackAnswer } from '../../src/stages/heavy/spring-back-answer.ts';
import { clampedRail } from '../../src/stages/remedies/forced-rail.ts';
import { springBackAsk, springBackFigures } from '../../src/stages/remedies/spring-back.ts';
import { askKey } from '../../src/stages/situation.ts';
import { BEGUN, surveyed } from './rail-findings-measured.ts';
import { situationFor } from './situation-for.ts';

/** A worked rail: R 3000, 45°, 25 slits, 26 stations read to 0.5; truth 1.2 mrad a slit and 20 at slit 10 [derived]. */
const WORKED: RailQuestion = {
  line: { radius_mm: 3000, bend_rad: Math.PI / 4, slits_mm: evenSlits(3000, Math.PI / 4, 25) },
  stations_mm: [0, ...Array.from({ length: 24 }, (_, k) => 94.25 * (k + 1)), 2356.2],
  offsets_mm: [
    -2, -1.5, -1, -1.5, -1, -0.5, 1, 1.5, 2.5, 2.5, 6, 8.5, 12.5, 15.5, 18.5, 22.5, 26.5, 29.5, 33.5, 38, 41,
    45, 50, 53.5, 57.5, 62,
  ],
  read_to_mm: 0.5,
  depth_mm: 40,
  deck_mm: 18,
  wall_mm: 3,
  twice_mm: [],
  gauge: [],
  aim_mm: 1.5,
  recut: { open_rad: 0.039, close_rad: 0.03, leave: [] },
  fresh: null,
};

describe('the answer about a rail', () => {
  test('the worked rail: slit 10, and a general over-bend', () => {
    const a = railAnswer(WORKED);
    expect(a.cause).toBe('over-curl and one slit');
    expect(a.odd_slits[0]?.slit).toBe(10);
    expect(a.odd_slits[0]?.turn_rad).toBeCloseTo(0.021, 2);
    expect(a.even_rad).toBeCloseTo(0.0011, 3);
    expect(a.recut_mm).toBeLessThanOrEqual(1.5);
    expect(a.recut_mm).toBeLessThan(a.worst_mm);
    expect(a.missed).toBeNull();
  });

  test('it is data: the same question gives the same answer, and survives being sent', () => {
    const sent = JSON.parse(JSON.stringify(WORKED)) as RailQuestion;
    expect(JSON.stringify(railAnswer(sent))).toBe(JSON.stringify(railAnswer(WORKED)));
  });

  test('slits that are to be left are left, and bounds on a turn are kept', () => {
    const a = railAnswer({ ...WORKED, recut: { open_rad: 0.012, close_rad: 0.01, leave: [9, 10, 11] } });
    for (const cut of a.recuts) {
      expect([9, 10, 11]).not.toContain(cut.slit);
      expect(cut.turn_rad).toBeGreaterThanOrEqual(-0.012 - 1e-9);
      expect(cut.turn_rad).toBeLessThanOrEqual(0.01 + 1e-9);
    }
    expect(a.recuts.length).toBeGreaterThan(1);
  });

  test('where no slit may be cut none is, and the rail stays as it is', () => {
    const a = railAnswer({ ...WORKED, recut: null });
    expect(a.recuts).toEqual([]);
    expect(a.recut_mm).toBeCloseTo(a.worst_mm, 9);
  });

  test('new slits only where there is room for them', () => {
    const short = WORKED.stations_mm.map(s => Math.round((-0.003 * 25 * s * s) / (2 * 2356.2)));
    const a = railAnswer({ ...WORKED, offsets_mm: short, fresh: { most_rad: 0.03, behind: [4, 5, 14, 20] } });
    expect(a.cause).toBe('under-curl');
    expect(a.fresh?.slits.length).toBeGreaterThanOrEqual(3);
    for (const x of a.fresh?.slits ?? []) expect([4, 5, 14, 20]).toContain(x.slit);
    const total = (a.fresh?.slits ?? []).reduce((sum, x) => sum + x.turn_rad, 0);
    expect(total).toBeCloseTo(-a.even_rad * 25, 9);
    expect(a.fresh?.after_mm).toBeLessThan(a.worst_mm);
  });

  test('no room at all, no new slit', () => {
    const short = WORKED.stations_mm.map(s => Math.round((-0.003 * 25 * s * s) / (2 * 2356.2)));
    expect(
      railAnswer({ ...WORKED, offsets_mm: short, fresh: { most_rad: 0.03, behind: [] } }).fresh,
    ).toBeNull();
  });
});

describe('letting a clamped rail go', () => {
  const s = situationFor(BEGUN);
  const clamped = clampedRail(
    s,
    'A',
    along => 6 * (1 - ((2 * along) / 1800 - 1) ** 2),
    () => 1,
  );
  if (clamped === null) throw new Error('nothing to clamp');

  test('with all its uprights in, and with its diagonals too, less comes back than bare', async () => {
    const { input } = springBackAsk(clamped);
    const all = await springBackAnswer(input);
    if (!all.ok) throw new Error(all.fault.message);
    const none = await springBackAnswer({
      ...input,
      forced: {
        ...input.forced,
        uprights: input.forced.uprights.map(u => ({ ...u, counts: 0 as const })),
        diagonals: [],
      },
    });
    if (!none.ok) throw new Error(none.fault.message);
    expect(all.value.now_mm).toBeLessThan(none.value.now_mm);
    expect(none.value.now_mm).toBeLessThanOrEqual(none.value.bare_mm + 1e-6);
    expect(all.value.clamps).toHaveLength(clamped.clamps.length);
  });

  test('the table by uprights agrees with the answer of the moment where both are the same frame', async () => {
    const { input } = springBackAsk(clamped);
    const bare = { ...input.forced, diagonals: [] };
    const table = await springBackAnswer({ forced: bare, diagonal: clamped.post });
    const now = await springBackAnswer({ forced: bare, diagonal: clamped.post, want: 'now' });
    if (!table.ok || !now.ok) throw new Error('no answer');
    expect(now.value.now_mm).toBeCloseTo(table.value.at(-1)?.loose_mm ?? 0, 6);
  });

  test('the clamps push the way the rail is to go, and no one clamp stands for all', async () => {
    const now = await springBackAnswer(springBackAsk(clamped).input);
    if (!now.ok) throw new Error(now.fault.message);
    const forces = now.value.clamps.map(c => c.force_N);
    // A free rail: pushes and pulls balance.
    expect(Math.abs(forces.reduce((a, f) => a + f, 0))).toBeLessThan(
      0.35 * Math.max(...forces.map(Math.abs)),
    );
    expect(Math.max(...forces.map(Math.abs))).toBeGreaterThan(100);
  });

  test('as uprights are ticked the question changes, and with the next one in less comes back', async () => {
    const cold = [...BEGUN, ...surveyed(BEGUN, { phase: 'cold', errors: () => 0.002 })];
    const before = springBackFigures(situationFor(cold), 'A');
    expect(before.asked).not.toBeNull();
    expect(before.next).toBe('lip');
    const lip = { kind: 'step-ticked', step: 'brace/fit-uprights@A#lip', basis: {} } as const;
    const later = situationFor([...cold, lip]);
    const ask = springBackFigures(later, 'A').asked;
    if (ask === null || before.asked === null) throw new Error('nothing asked');
    expect(askKey(ask)).not.toBe(askKey(before.asked));
    const value = await springBackAnswer(ask.input as never);
    const figures = springBackFigures(situationFor([...cold, lip], new Map([[askKey(ask), value]])), 'A');
    expect(figures.asked).toBeNull();
    expect(figures.now_mm).toBeGreaterThan(figures.next_mm ?? 99);
    expect(figures.clamps.every(c => c.name.startsWith('flat '))).toBe(true);
  });

  test('a rail that was hardly pulled springs back by nothing, and nothing is asked', () => {
    const true_ = [...BEGUN, ...surveyed(BEGUN, { phase: 'cold' })];
    expect(springBackFigures(situationFor(true_), 'A')).toMatchObject({ asked: null, now_mm: 0 });
  });

  test('a rail that was never measured says nothing', () => {
    expect(springBackFigures(situationFor(BEGUN), 'A')).toMatchObject({
      asked: null,
      now_mm: null,
      forced_mm: null,
    });
  });
});

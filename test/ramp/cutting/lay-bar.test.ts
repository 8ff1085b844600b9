import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Cut, layBar } from '../../../src/ramp/cutting/lay-bar.ts';
import type { Needed } from '../../../src/ramp/cutting/needed.ts';

const KERF = 3;
const RAD = Math.PI / 180;

/** A post of 30 mm with its two ends off square by so many degrees. */
const post = (
  long_mm: number,
  first: number,
  second: number,
  known = true,
  kind: 'upright' | 'diagonal' = 'upright',
): Needed => {
  const ends = { first_rad: first * RAD, second_rad: second * RAD };
  const steepest = Math.max(ends.first_rad, ends.second_rad);
  return {
    need: `post ${long_mm}`,
    kind,
    long_mm,
    short_mm: long_mm - 30 * (Math.tan(ends.first_rad) + Math.tan(ends.second_rad)),
    ends,
    across_mm: 30,
    when: 'to the rail',
    known,
    over_mm: known ? 0 : 10,
    plan_mm: long_mm + KERF / Math.cos(steepest) - KERF + (known ? 0 : 10),
  };
};

/** The piece's start and end along the bar at a height across it, by how its cuts lean. */
const spanAt = (c: Cut, y: number): [number, number] => [
  c.from_mm + (c.start_lean === '/' ? y : 30 - y) * Math.tan(c.start_rad),
  c.to_mm - (c.end_lean === '/' ? 30 - y : y) * Math.tan(c.end_rad),
];

describe('mitres in one bar', () => {
  test('two equal mitres share their wedge: the row is shorter by depth × tan, the blade taken once', () => {
    const laid = layBar([post(400, 0, 20), post(400, 0, 20)], 6000, KERF);
    const [a, b] = laid.cuts;
    expect(b?.turned).toBe(true);
    expect(b?.start_rad).toBeCloseTo(20 * RAD, 12);
    expect((b?.from_mm ?? 0) - (a?.to_mm ?? 0)).toBeCloseTo(
      KERF / Math.cos(20 * RAD) - 30 * Math.tan(20 * RAD),
      9,
    );
    expect(laid.saved_mm).toBeCloseTo(30 * Math.tan(20 * RAD), 9);
    // One line for both: the saw stays as it stands.
    expect([a?.start_lean, a?.end_lean, b?.start_lean, b?.end_lean]).toEqual(['|', '\\', '\\', '|']);
    expect(laid.cuts.some(c => c.swung)).toBe(false);
  });

  test('a diagonal’s mitres are parallel, those of a rear diagonal lean toward each other', () => {
    const [diagonal] = layBar([post(500, 20, 50, true, 'diagonal')], 6000, KERF).cuts;
    expect([diagonal?.start_lean, diagonal?.end_lean, diagonal?.swung]).toEqual(['\\', '\\', false]);
    const [rear] = layBar([post(500, 20, 70)], 6000, KERF).cuts;
    expect([rear?.start_lean, rear?.end_lean, rear?.swung]).toEqual(['\\', '/', true]);
  });

  test('square pieces save nothing and are not rolled over', () => {
    const laid = layBar([post(400, 0, 0), post(300, 0, 0)], 6000, KERF);
    expect(laid.saved_mm).toBe(0);
    expect(laid.cuts.some(c => c.turned)).toBe(false);
    expect(laid.left_mm).toBeCloseTo(6000 - 700 - 2 * KERF, 9);
  });

  test('steel held back is not turned: its mitre is not known yet', () => {
    const laid = layBar([post(400, 0, 20, false), post(400, 0, 20, false)], 6000, KERF);
    expect(laid.cuts.some(c => c.turned)).toBe(false);
    expect(laid.cuts[0]?.to_mm).toBe(410);
  });

  test('a piece that just fits leaves nothing, never less', () => {
    const laid = layBar([post(1000, 0, 0)], 1001, KERF);
    expect(laid.left_mm).toBe(0);
    expect(laid.kerfs_mm).toBe(1);
  });

  const pieces = fc.array(
    fc.record({
      long: fc.integer({ min: 300, max: 1500 }),
      first: fc.integer({ min: 0, max: 60 }),
      second: fc.integer({ min: 0, max: 60 }),
      known: fc.boolean(),
      kind: fc.constantFrom('upright' as const, 'diagonal' as const),
    }),
    { minLength: 1, maxLength: 8 },
  );

  test('never longer than planned by long points, and every piece clear of the next by the blade at every height', () => {
    fc.assert(
      fc.property(pieces, list => {
        const posts = list.map(p => post(p.long, p.first, p.second, p.known, p.kind));
        const laid = layBar(posts, 20_000, KERF);
        const planned = posts.reduce((sum, p) => sum + p.plan_mm, 0) + KERF * (posts.length - 1);
        const end = laid.cuts.at(-1)?.to_mm ?? 0;
        expect(end).toBeLessThanOrEqual(planned + 1e-6);
        expect(end + laid.left_mm).toBeLessThanOrEqual(20_000 + 1e-6);
        let stands: string | null = null;
        laid.cuts.forEach((cut, i) => {
          for (const [lean, rad] of [
            [cut.start_lean, cut.start_rad],
            [cut.end_lean, cut.end_rad],
          ] as const)
            expect(lean === '|').toBe(rad === 0);
          const mitres = [cut.start_lean, cut.end_lean].filter(lean => lean !== '|');
          if (mitres.length === 2) expect(mitres[0] === mitres[1]).toBe(cut.piece.kind === 'diagonal');
          // The saw swings over just where a mitre leans against the one before it.
          const row = stands === null ? mitres : [stands, ...mitres];
          expect(cut.swung).toBe(row.some((lean, k) => k > 0 && lean !== row[k - 1]));
          stands = mitres.at(-1) ?? stands;
          const before = laid.cuts[i - 1];
          if (before === undefined) return;
          for (const y of [0, 10, 20, 30]) {
            const gap = spanAt(cut, y)[0] - spanAt(before, y)[1];
            expect(gap).toBeGreaterThanOrEqual(KERF - 1e-6);
          }
        });
      }),
    );
  });
});

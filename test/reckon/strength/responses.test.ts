import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { prepareFrame } from '../../../src/reckon/statics/frame.ts';
import type { FrameLoad } from '../../../src/reckon/statics/frame-loads.ts';
import { eachCombination } from '../../../src/reckon/strength/load-combinations.ts';
import {
  AXIAL,
  PER_PIECE,
  responsesOf,
  SAG_FROM,
  SAG_TO,
  SHEAR,
} from '../../../src/reckon/strength/responses.ts';
import { sideFrame } from '../../../src/reckon/strength/side-frame.ts';
import { kept } from '../../quantity/expect-outcome.ts';
import { madeFrame, POST } from './side-frames.ts';

const shapes = fc.record({
  radius_mm: fc.integer({ min: 2500, max: 9000 }),
  exit_rad: fc.double({ min: 0.4, max: 1, noNaN: true }),
  slits: fc.integer({ min: 4, max: 20 }),
  spacing_mm: fc.integer({ min: 250, max: 700 }),
});

const readied = async (made: Parameters<typeof madeFrame>[0], crossed: boolean) => {
  const input = madeFrame(made);
  const stands = [input.base.from_x_mm, ...input.uprights.map(({ x_mm }) => x_mm)];
  const [from, to] = stands.slice(-2) as [number, number];
  const diagonal = { name: 'diagonal', base_x_mm: from, rail_x_mm: to, tube: POST };
  const frame = kept(sideFrame(crossed ? { ...input, diagonals: [diagonal] } : input));
  return { frame, responses: kept(await responsesOf(frame)) };
};

describe('the quick answers', () => {
  test('are those of the exact solver, wherever the wheel stands', async () => {
    await fc.assert(
      fc.asyncProperty(
        shapes,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.boolean(),
        async (made, far, crossed) => {
          const { frame, responses } = await readied(made, crossed);
          const place = Math.min(frame.places.length - 1, Math.floor(far * frame.places.length));
          const load: FrameLoad = {
            node: String(frame.places[place]!.node),
            x_N: 600,
            y_N: -2500,
          };
          const exact = kept(kept(await prepareFrame(frame.model)).solve([load]));
          const moment = Math.max(...exact.members.map(({ from }) => Math.abs(from.moment_Nmm)));
          for (const [k, { from, to }] of exact.members.entries()) {
            const at = (figure: number) =>
              600 * responses.right[place]!.pieces[PER_PIECE * k + figure]! -
              2500 * responses.up[place]!.pieces[PER_PIECE * k + figure]!;
            expect(Math.abs(at(AXIAL) - to.axial_N)).toBeLessThan(0.01);
            expect(Math.abs(at(SHEAR) - from.shear_N)).toBeLessThan(0.01);
            expect(Math.abs(at(SAG_FROM) + from.moment_Nmm)).toBeLessThan(1 + 1e-5 * moment);
            expect(Math.abs(at(SAG_TO) - to.moment_Nmm)).toBeLessThan(1 + 1e-5 * moment);
          }
          for (const [k, foot] of frame.feet.entries()) {
            const push = exact.reactions.find(({ node }) => node === String(foot.node))!;
            const at = (side: number) =>
              600 * responses.right[place]!.feet[2 * k + side]! -
              2500 * responses.up[place]!.feet[2 * k + side]!;
            expect(Math.abs(at(0) - push.x_N)).toBeLessThan(0.01);
            expect(Math.abs(at(1) - push.y_N)).toBeLessThan(0.01);
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  test('leave nothing over: the feet bear what is on the frame, in every arrangement', async () => {
    const { frame, responses } = await readied({}, true);
    const { loads } = frame.input;
    const steel = frame.weight_N.reduce((sum, value) => sum + value, 0);
    const deck = loads.deck_N_mm * frame.places.at(-1)!.along_mm;
    const run = frame.places.at(-1)!.x_mm - frame.places[0]!.x_mm;
    const seen = new Set<string>();
    eachCombination(frame, responses, { dead: 1, live: 1 }, 'feet', ({ load, place }, figures) => {
      seen.add(load);
      const up = frame.feet.reduce((sum, _, k) => sum + figures[2 * k + 1]!, 0) - steel - deck;
      const along = frame.feet.reduce((sum, _, k) => sum + figures[2 * k]!, 0);
      if (load === 'L3') expect(up).toBeCloseTo(loads.standing_N_mm * run, 3);
      else if (load === 'L2') expect(up).toBeCloseTo(loads.drop_N, 3);
      else {
        const size = load === 'L1' ? 1 : Math.hypot(1, loads.along_share);
        expect(Math.hypot(up, along)).toBeCloseTo(size * loads.riding_N, 3);
        // The rider pushes the ramp forward; the ground pushes it back.
        if (load === 'L1' && frame.places[place!]!.slope_rad > 0.1) expect(along).toBeLessThan(0);
      }
    });
    expect([...seen].sort()).toEqual(['L1', 'L2', 'L3', 'L6']);
  });

  test('the hard drop stays off the lower half, the wheel goes to every place asked for', async () => {
    const { frame, responses } = await readied({}, false);
    expect(frame.places.length).toBeGreaterThanOrEqual(40);
    const half = frame.places.at(-1)!.along_mm / 2;
    const dropped: number[] = [];
    const ridden: number[] = [];
    eachCombination(frame, responses, { dead: 1, live: 1 }, 'feet', ({ load, place }) => {
      if (load === 'L2') dropped.push(frame.places[place!]!.along_mm);
      if (load === 'L1') ridden.push(place!);
    });
    expect(Math.min(...dropped)).toBeGreaterThanOrEqual(half);
    expect(ridden).toEqual(frame.places.map((_, k) => k));
  });
});

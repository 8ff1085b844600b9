import { describe, expect, test } from 'vitest';
import { type Fix, fixesFor } from '../../../src/reckon/strength/fixes.ts';
import type { SideFrameInput } from '../../../src/reckon/strength/side-frame-input.ts';
import { willItHold } from '../../../src/reckon/strength/will-it-hold.ts';
import { kept } from '../../quantity/expect-outcome.ts';
import { madeFrame } from './side-frames.ts';

const fixes = async (input: SideFrameInput): Promise<readonly Fix[]> => kept(await fixesFor(input));
const heavier = (times: number) => {
  const { loads } = madeFrame();
  return { loads: { ...loads, riding_N: loads.riding_N * times, drop_N: loads.drop_N * times } };
};
const closed = (input: SideFrameInput): SideFrameInput => ({
  ...input,
  rail: { ...input.rail, opened: false },
});

describe('the one change that mends a frame', () => {
  test('there is none to make where it holds', async () => {
    expect(await fixes(madeFrame())).toEqual([]);
  });

  test('uprights too far apart: closer ones mend it, and applying them says the same', async () => {
    const bad = madeFrame({ spacing_mm: 900 });
    const found = await fixes(bad);
    const closer = found.find(({ change }) => change.kind === 'closer uprights')!;
    expect(closer.holds).toBe(true);
    const again = kept(await willItHold(closer.input));
    expect(again.holds).toBe(true);
    expect(again.governing.utilisation).toBe(closer.utilisation);
    if (closer.change.kind !== 'closer uprights') throw new Error('closer uprights');
    // No upright stands on a slit: 25 mm from its edge at the least.
    for (const x of closer.change.added_x_mm)
      for (const point of bad.rail.points.filter(({ slit }) => slit))
        expect(Math.abs(point.x_mm - x)).toBeGreaterThan(25);
  });

  test('a slit a little too weak: a V, a thicker wall or a test piece, each by itself', async () => {
    // A hard drop comes seldom: it is a matter of the weld, not of riding again and again.
    const { loads } = madeFrame();
    const bad = closed(madeFrame({ change: { loads: { ...loads, drop_N: 2 * loads.drop_N } } }));
    const found = await fixes(bad);
    const kinds = found.filter(({ holds }) => holds).map(({ change }) => change.kind);
    expect(kinds).toContain('a V at the slits');
    expect(kinds).toContain('slit test piece');
    expect(kinds).toContain('next wall');
    for (const { input, utilisation } of found)
      expect(kept(await willItHold(input)).governing.utilisation).toBe(utilisation);
  });

  test('those that mend it come first, then the least used', async () => {
    const found = await fixes(closed(madeFrame({ change: heavier(1.5) })));
    const order = found.map(({ holds, utilisation }) => (holds ? 0 : 100) + utilisation);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });

  test('what no single change mends is said so: every use stays over 1', async () => {
    const found = await fixes(madeFrame({ change: heavier(6) }));
    expect(found.length).toBeGreaterThan(2);
    expect(found.some(({ holds }) => holds)).toBe(false);
    for (const { utilisation } of found) expect(utilisation).toBeGreaterThan(1);
  });

  test('only walls that can be had are offered', async () => {
    const bad = closed(madeFrame({ change: heavier(1.8) }));
    const none = kept(await fixesFor(bad, undefined, [2, 3]));
    expect(none.some(({ change }) => change.kind === 'next wall')).toBe(false);
    const some = kept(await fixesFor(bad, undefined, [3, 6]));
    expect(some.find(({ change }) => change.kind === 'next wall')?.change).toEqual({
      kind: 'next wall',
      of: 'rail',
      from_mm: 3,
      to_mm: 6,
    });
  });
});

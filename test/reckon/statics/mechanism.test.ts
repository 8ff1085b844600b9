import { describe, expect, test } from 'vitest';
import { prepareFrame } from '../../../src/reckon/statics/frame.ts';
import type { FrameMember, FrameNode, FrameSupport } from '../../../src/reckon/statics/frame-model.ts';

const node = (id: string, x_mm: number, y_mm: number): FrameNode => ({ id, x_mm, y_mm });
const member = (from: string, to: string, change: Partial<FrameMember> = {}): FrameMember => ({
  id: `${from}-${to}`,
  from,
  to,
  E_MPa: 210_000,
  area_mm2: 400,
  inertia_mm4: 90_000,
  ...change,
});
const bar = (from: string, to: string, change: Partial<FrameMember> = {}) =>
  member(from, to, { hinge_from: true, hinge_to: true, ...change });
const pin = (id: string): FrameSupport => ({ node: id, x: true, y: true });

const moves = async (nodes: FrameNode[], members: FrameMember[], supports: FrameSupport[]) => {
  const frame = await prepareFrame({ nodes, members, supports });
  return frame.ok ? null : frame.fault;
};

/** A square panel of hinged bars on two pins. */
const panel = [node('a', 0, 0), node('b', 0, 800), node('c', 900, 800), node('d', 900, 0)];
const sides = [bar('a', 'b'), bar('b', 'c'), bar('c', 'd')];

describe('what moves freely is named', () => {
  test('a panel without a diagonal leans over: its top goes along x', async () => {
    const fault = await moves(panel, sides, [pin('a'), pin('d')]);
    expect(fault).toMatchObject({ code: 'mechanism' });
    expect(['nodes.1', 'nodes.2']).toContain(fault!.field);
    expect(fault!.message).toMatch(/^Node "[bc]" moves freely along x/);
  });

  test('a diagonal stops it, be it a thread against girders', async () => {
    for (const area_mm2 of [400, 1e-6, 1e-12, 1e12]) {
      expect(await moves(panel, [...sides, bar('a', 'c', { area_mm2 })], [pin('a'), pin('d')])).toBeNull();
    }
  });

  test('one welded corner stops it too', async () => {
    expect(
      await moves(
        panel,
        [member('a', 'b', { hinge_from: true }), member('b', 'c', { hinge_to: true }), bar('c', 'd')],
        [pin('a'), pin('d')],
      ),
    ).toBeNull();
  });

  test('three hinges in a line: the middle one goes across', async () => {
    const fault = await moves(
      [node('a', 0, 0), node('b', 500, 0), node('c', 1000, 0)],
      [bar('a', 'b'), bar('b', 'c')],
      [pin('a'), pin('c')],
    );
    expect(fault).toMatchObject({ code: 'mechanism', field: 'nodes.1' });
    expect(fault!.message).toContain('along y');
  });

  test('the same line turned by any angle, its nodes rounded as numbers are', async () => {
    for (const degrees of [1, 30, 45, 77, 90, 135]) {
      const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const fault = await moves(
        [node('a', 0, 0), node('b', 500 * c, 500 * s), node('c', 1000 * c, 1000 * s)],
        [bar('a', 'b'), bar('b', 'c')],
        [pin('a'), pin('c')],
      );
      expect(fault, `${degrees}°`).toMatchObject({ code: 'mechanism', field: 'nodes.1' });
    }
  });

  test('a shallow pair of bars stands, if only just', async () => {
    expect(
      await moves(
        [node('a', 0, 0), node('b', 500, 0.05), node('c', 1000, 0)],
        [bar('a', 'b'), bar('b', 'c')],
        [pin('a'), pin('c')],
      ),
    ).toBeNull();
  });

  test('a frame on one pin turns about it: the farthest node is named', async () => {
    const fault = await moves(
      [node('a', 0, 0), node('b', 700, 0), node('c', 900, 1200)],
      [member('a', 'b'), member('b', 'c'), member('a', 'c')],
      [pin('a')],
    );
    expect(fault).toMatchObject({ code: 'mechanism', field: 'nodes.2' });
    expect(fault!.message).toContain(`at ${Math.round((Math.atan2(900, -1200) * 180) / Math.PI)}° from x`);
  });

  test('without supports all of it moves', async () => {
    expect(await moves(panel, [...sides, bar('a', 'c'), bar('a', 'd')], [])).toMatchObject({
      code: 'mechanism',
    });
  });

  test('a node that no member reaches', async () => {
    const fault = await moves(
      [...panel, node('astray', 50, 50)],
      [...sides, bar('a', 'c')],
      [pin('a'), pin('d')],
    );
    expect(fault).toMatchObject({ code: 'mechanism', field: 'nodes.4' });
    const still = [pin('a'), pin('d'), pin('astray')];
    expect(await moves([...panel, node('astray', 50, 50)], [...sides, bar('a', 'c')], still)).toBeNull();
  });

  test('a loose part is found in a large frame that stands', async () => {
    const wall = Array.from({ length: 60 }, (_, k) => node(`w${k}`, 0, 100 * k));
    const wallMembers = wall.slice(1).map((_, k) => member(`w${k}`, `w${k + 1}`));
    const nodes = [...wall, node('flap', 300, 3000)];
    const fault = await moves(
      nodes,
      [...wallMembers, member('w30', 'flap', { hinge_from: true })],
      [{ ...pin('w0'), turn: true }],
    );
    expect(fault).toMatchObject({ code: 'mechanism', field: 'nodes.60' });
    expect(fault!.message).toContain('along y');
  });
});

describe('what only looks like moving', () => {
  test('a node whose every end is hinged has turn 0 and stands', async () => {
    const frame = await prepareFrame({
      nodes: panel,
      members: [...sides, bar('a', 'c')],
      supports: [pin('a'), pin('d')],
    });
    if (!frame.ok) throw new Error(frame.fault.message);
    const solved = frame.value.solve([{ node: 'b', x_N: 500 }]);
    if (!solved.ok) throw new Error(solved.fault.message);
    expect(solved.value.nodes.map(({ turn_rad }) => turn_rad)).toEqual([0, 0, 0, 0]);
  });

  test('a cantilever of four hundred short lengths stands', async () => {
    const nodes = Array.from({ length: 400 }, (_, k) => node(`${k}`, 10 * k, 0));
    const members = nodes.slice(1).map((_, k) => member(`${k}`, `${k + 1}`));
    const frame = await prepareFrame({ nodes, members, supports: [{ ...pin('0'), turn: true }] });
    if (!frame.ok) throw new Error(frame.fault.message);
    const solved = frame.value.solve([{ node: '399', y_N: -1 }]);
    if (!solved.ok) throw new Error(solved.fault.message);
    expect(solved.value.nodes[399]!.y_mm / (-(3990 ** 3) / 3 / 210_000 / 90_000)).toBeCloseTo(1, 9);
  });
});

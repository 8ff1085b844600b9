import { describe, expect, test } from 'vitest';
import { type FrameAnswer, prepareFrame, type SupportMovement } from '../../../src/reckon/statics/frame.ts';
import type { FrameLoad } from '../../../src/reckon/statics/frame-loads.ts';
import type { FrameModel } from '../../../src/reckon/statics/frame-model.ts';

const E = 210_000;
const AREA = 421;
const I = 93_200;
const steel = { E_MPa: E, area_mm2: AREA, inertia_mm4: I };

const solve = async (
  model: FrameModel,
  loads: readonly FrameLoad[],
  supportMovements: readonly SupportMovement[] = [],
): Promise<FrameAnswer> => {
  const frame = await prepareFrame(model);
  if (!frame.ok) throw new Error(frame.fault.message);
  const solved = frame.value.solve(loads, supportMovements);
  if (!solved.ok) throw new Error(solved.fault.message);
  return solved.value;
};

/** One member from a wall at the origin, at an angle. */
const cantilever = (degrees: number, length = 1000): FrameModel => ({
  nodes: [
    { id: 'wall', x_mm: 0, y_mm: 0 },
    {
      id: 'tip',
      x_mm: length * Math.cos((degrees * Math.PI) / 180),
      y_mm: length * Math.sin((degrees * Math.PI) / 180),
    },
  ],
  members: [{ id: 'm', from: 'wall', to: 'tip', ...steel }],
  supports: [{ node: 'wall', x: true, y: true, turn: true }],
});

describe('signs, as the contract has them', () => {
  test('pushed along itself a member has + at from and − at to, and the wall pushes back', async () => {
    const { members, reactions, nodes } = await solve(cantilever(0), [{ node: 'tip', x_N: -800 }]);
    expect(members[0]!.from.axial_N).toBeCloseTo(800, 9);
    expect(members[0]!.to.axial_N).toBeCloseTo(-800, 9);
    expect(reactions[0]!.x_N).toBeCloseTo(800, 9);
    expect(nodes[1]!.x_mm).toBeCloseTo((-800 * 1000) / E / AREA, 12);
  });

  test('a load down on a tip turns it clockwise; the wall holds up and turns counter-clockwise', async () => {
    const { members, reactions, nodes } = await solve(cantilever(0), [{ node: 'tip', y_N: -50 }]);
    expect(nodes[1]!.turn_rad).toBeCloseTo((-50 * 1000 ** 2) / (2 * E * I), 12);
    expect(reactions[0]!.y_N).toBeCloseTo(50, 9);
    expect(reactions[0]!.moment_Nmm).toBeCloseTo(50_000, 6);
    expect(members[0]!.from).toEqual({
      axial_N: expect.closeTo(0, 9),
      shear_N: expect.closeTo(50, 9),
      moment_Nmm: expect.closeTo(50_000, 6),
    });
    expect(members[0]!.to.shear_N).toBeCloseTo(-50, 9);
    expect(members[0]!.to.moment_Nmm).toBeCloseTo(0, 6);
  });

  test('a load across is + to the left of from→to: on an upright that goes up, toward −x', async () => {
    const { nodes, reactions } = await solve(cantilever(90), [{ member: 'm', across_N_mm: 0.4 }]);
    expect(nodes[1]!.x_mm).toBeCloseTo((-0.4 * 1000 ** 4) / (8 * E * I), 9);
    expect(reactions[0]!.x_N).toBeCloseTo(400, 9);
    expect(reactions[0]!.moment_Nmm).toBeCloseTo((-0.4 * 1000 ** 2) / 2, 6);
  });

  test('the same member drawn the other way round has its loads and ends changed over', async () => {
    const one = cantilever(35);
    const other = { ...one, members: [{ id: 'm', from: 'tip', to: 'wall', ...steel }] };
    const first = await solve(one, [{ member: 'm', across_N_mm: 0.4 }]);
    const second = await solve(other, [{ member: 'm', across_N_mm: -0.4 }]);
    expect(second.nodes[1]!.x_mm).toBeCloseTo(first.nodes[1]!.x_mm, 9);
    // The member's axes are turned half round: a pair of turns leaves every force's sign, and the ends change places.
    expect(second.members[0]!.to.shear_N).toBeCloseTo(-first.members[0]!.from.shear_N, 9);
    expect(second.members[0]!.to.moment_Nmm).toBeCloseTo(first.members[0]!.from.moment_Nmm, 6);
  });
});

describe('hinges', () => {
  const beam = (hinge_from: boolean, hinge_to: boolean): FrameModel => ({
    nodes: [
      { id: 'a', x_mm: 0, y_mm: 0 },
      { id: 'b', x_mm: 2000, y_mm: 0 },
    ],
    members: [{ id: 'm', from: 'a', to: 'b', ...steel, hinge_from, hinge_to }],
    supports: ['a', 'b'].map(node => ({ node, x: true, y: true, turn: true })),
  });
  const w = -0.5;

  test.each([
    [false, false, 2000 ** 2 / 12, -(2000 ** 2) / 12, 0.5],
    [true, false, 0, -(2000 ** 2) / 8, 3 / 8],
    [false, true, 2000 ** 2 / 8, 0, 5 / 8],
    [true, true, 0, 0, 0.5],
  ])(
    'a member held at both ends, hinged %j and %j, under its own load',
    async (from, to, near, far, share) => {
      const { members, reactions } = await solve(beam(from, to), [{ member: 'm', across_N_mm: w }]);
      expect(members[0]!.from.moment_Nmm).toBeCloseTo(-w * near, 6);
      expect(members[0]!.to.moment_Nmm).toBeCloseTo(-w * far, 6);
      expect(reactions[0]!.y_N).toBeCloseTo(-w * 2000 * share, 9);
      expect(reactions[1]!.moment_Nmm).toBeCloseTo(-w * far, 6);
    },
  );

  test.each([
    [false, false, 12],
    [true, false, 3],
    [false, true, 3],
    [true, true, 0],
  ])('an end sinks, hinged %j and %j: %d EI/L³', async (from, to, times) => {
    const { reactions } = await solve(beam(from, to), [], [{ node: 'b', y_mm: -10 }]);
    expect(reactions[1]!.y_N).toBeCloseTo((-10 * times * E * I) / 2000 ** 3, 9);
    expect(reactions[0]!.y_N).toBeCloseTo((10 * times * E * I) / 2000 ** 3, 9);
  });
});

describe('supports that give way', () => {
  test('a statically determinate frame only follows, without force', async () => {
    const model: FrameModel = {
      nodes: [
        { id: 'a', x_mm: 0, y_mm: 0 },
        { id: 'b', x_mm: 0, y_mm: 700 },
        { id: 'c', x_mm: 1200, y_mm: 700 },
        { id: 'd', x_mm: 1200, y_mm: 0 },
      ],
      members: ['ab', 'bc', 'cd'].map(([from, to]) => ({
        id: `${from}${to}`,
        from: from!,
        to: to!,
        ...steel,
      })),
      supports: [
        { node: 'a', x: true, y: true },
        { node: 'd', y: true },
      ],
    };
    const { nodes, reactions } = await solve(model, [], [{ node: 'd', y_mm: -12 }]);
    for (const { x_N, y_N } of reactions) expect(Math.hypot(x_N, y_N)).toBeLessThan(1e-9);
    expect(nodes[3]!.y_mm).toBe(-12);
    expect(nodes[2]!.turn_rad).toBeCloseTo(-0.01, 9);
    expect(nodes[1]!.x_mm).toBeCloseTo(7, 9);
  });

  test('only what a support holds is driven', async () => {
    const { nodes } = await solve(cantilever(0), [], [{ node: 'tip', y_mm: 5 }]);
    expect(nodes[1]!.y_mm).toBe(0);
  });
});

test('a movement of a support that is not there is refused', async () => {
  const frame = await prepareFrame(cantilever(0));
  if (!frame.ok) throw new Error(frame.fault.message);
  expect(frame.value.solve([], [{ node: 'roof', y_mm: 1 }])).toMatchObject({
    ok: false,
    fault: { field: 'supportMovements.0.node' },
  });
});

describe('one factorisation, many load cases', () => {
  test('the sum of two cases is the case of both', async () => {
    const frame = await prepareFrame(cantilever(20));
    if (!frame.ok) throw new Error(frame.fault.message);
    const down: FrameLoad = { node: 'tip', y_N: -700 };
    const across: FrameLoad = { member: 'm', across_N_mm: 0.3 };
    const [one, two, both] = [[down], [across], [down, across]].map(loads => {
      const solved = frame.value.solve(loads);
      if (!solved.ok) throw new Error(solved.fault.message);
      return solved.value.nodes[1]!;
    });
    expect(one!.x_mm + two!.x_mm).toBeCloseTo(both!.x_mm, 9);
    expect(one!.turn_rad + two!.turn_rad).toBeCloseTo(both!.turn_rad, 12);
  });

  test('no load, no movement: not even a trace', async () => {
    const { nodes, members } = await solve(cantilever(33), []);
    expect(nodes[1]).toEqual({ id: 'tip', x_mm: 0, y_mm: 0, turn_rad: 0 });
    expect(Math.abs(members[0]!.from.moment_Nmm)).toBe(0);
  });

  test('loads that balance at a node leave no false alarm', async () => {
    const { reactions } = await solve(
      {
        nodes: [0, 700, 1400].map(x_mm => ({ id: `${x_mm}`, x_mm, y_mm: 0 })),
        members: [
          { id: 'left', from: '0', to: '700', ...steel },
          { id: 'right', from: '700', to: '1400', ...steel },
        ],
        supports: ['0', '700', '1400'].map(node => ({ node, x: true, y: true, turn: node !== '700' })),
      },
      [
        { member: 'left', across_N_mm: -1.3 },
        { member: 'right', across_N_mm: -1.3 },
      ],
    );
    expect(reactions[1]!.y_N).toBeCloseTo(910, 9);
  });
});

describe('very stiff beside very soft', () => {
  const ratios = [1e4, 1e8, 1e12, 1e16, 1e20];

  test.each(ratios)('a link %d times as stiff as its neighbours is a rigid link, to 1e-6', async ratio => {
    // Cantilever of two arms of EI with a rigid piece between them: tip under P sags by what the arms alone bend.
    const [a, b, c] = [500, 300, 700];
    const P = 400;
    const at = [0, a, a + b, a + b + c];
    const skew = Math.PI / 7;
    const { nodes } = await solve(
      {
        nodes: at.map((along, k) => ({
          id: `${k}`,
          x_mm: along * Math.cos(skew),
          y_mm: along * Math.sin(skew),
        })),
        members: [0, 1, 2].map(k => ({
          id: `${k}`,
          from: `${k}`,
          to: `${k + 1}`,
          ...steel,
          E_MPa: k === 1 ? E * ratio : E,
        })),
        supports: [{ node: '0', x: true, y: true, turn: true }],
      },
      [{ node: '3', x_N: P * Math.sin(skew), y_N: -P * Math.cos(skew) }],
    );
    const whole = a + b + c;
    const soft = (P / (3 * E * I)) * (whole ** 3 - (b + c) ** 3 + c ** 3);
    const link = (P / (3 * E * ratio * I)) * ((b + c) ** 3 - c ** 3);
    const sag = Math.hypot(nodes[3]!.x_mm, nodes[3]!.y_mm);
    expect(sag / (soft + link)).toBeCloseTo(1, 9);
  });

  test.each(ratios)(
    'two springs side by side, one %d times the other, share by their stiffness',
    async ratio => {
      const spring = { E_MPa: E, inertia_mm4: I, hinge_from: true, hinge_to: true };
      const { members } = await solve(
        {
          nodes: [
            { id: 'top', x_mm: 0, y_mm: 0 },
            { id: 'left', x_mm: -1, y_mm: -400 },
            { id: 'foot', x_mm: 0, y_mm: -400 },
            { id: 'side', x_mm: -900, y_mm: 0 },
          ],
          members: [
            { id: 'stiff', from: 'foot', to: 'top', ...spring, area_mm2: AREA },
            { id: 'soft', from: 'foot', to: 'top', ...spring, area_mm2: AREA / ratio },
            { id: 'stay', from: 'side', to: 'top', ...spring, area_mm2: AREA },
          ],
          supports: ['left', 'foot', 'side'].map(node => ({ node, x: true, y: true })),
        },
        [{ node: 'top', y_N: -1000 }],
      );
      expect(members[0]!.from.axial_N).toBeCloseTo(1000 / (1 + 1 / ratio), 6);
      expect(members[1]!.from.axial_N * ratio).toBeCloseTo(1000 / (1 + 1 / ratio), 6);
    },
  );

  test('stiffnesses that no arithmetic holds together are refused, not guessed at', async () => {
    const frame = await prepareFrame({
      nodes: [0, 1, 2].map(k => ({ id: `${k}`, x_mm: 300 * k, y_mm: 100 * k * k })),
      members: [
        { id: 'soft', from: '0', to: '1', ...steel, E_MPa: 1e-40 },
        { id: 'stiff', from: '1', to: '2', ...steel, E_MPa: 1e40 },
      ],
      supports: [{ node: '0', x: true, y: true, turn: true }],
    });
    const solved = frame.ok ? frame.value.solve([{ node: '2', y_N: -1 }]) : frame;
    expect(solved.ok ? 'solved' : solved.fault.code).toBe('no-solution');
  });
});

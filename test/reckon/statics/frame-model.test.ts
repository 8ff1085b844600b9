import { describe, expect, test } from 'vitest';
import { topic } from '../../../src/commands/reckon/frame.ts';
import { prepareFrame } from '../../../src/reckon/statics/frame.ts';
import type { FrameLoad } from '../../../src/reckon/statics/frame-loads.ts';
import { type FrameMember, type FrameModel, MOST_NODES } from '../../../src/reckon/statics/frame-model.ts';

const steel = { E_MPa: 210_000, area_mm2: 421, inertia_mm4: 93_200 };

const CANTILEVER: FrameModel = {
  nodes: [
    { id: 'wall', x_mm: 0, y_mm: 0 },
    { id: 'tip', x_mm: 900, y_mm: 0 },
  ],
  members: [{ id: 'rail', from: 'wall', to: 'tip', ...steel }],
  supports: [{ node: 'wall', x: true, y: true, turn: true }],
};

const faultOf = async (change: Partial<FrameModel>, loads: readonly FrameLoad[] = []) => {
  const frame = await prepareFrame({ ...CANTILEVER, ...change });
  const solved = frame.ok ? frame.value.solve(loads) : frame;
  return solved.ok ? null : solved.fault;
};

const rail = (change: Partial<FrameMember>): Partial<FrameModel> => ({
  members: [{ id: 'rail', from: 'wall', to: 'tip', ...steel, ...change }],
});

describe('a model that contradicts itself is refused at the place', () => {
  test.each([
    ['a member from nowhere', rail({ from: 'floor' }), 'members.0.from', 'out-of-range', 'floor'],
    ['a member to nowhere', rail({ to: 'roof' }), 'members.0.to', 'out-of-range', 'roof'],
    ['a member without length', rail({ to: 'wall' }), 'members.0.to', 'out-of-range', 'no length'],
    ['a member of nothing', rail({ area_mm2: 0 }), 'members.0.area_mm2', 'out-of-range', 'area_mm2'],
    ['a member softer than air', rail({ E_MPa: -1 }), 'members.0.E_MPa', 'out-of-range', '-1'],
    [
      'a member that is no number',
      rail({ inertia_mm4: Number.NaN }),
      'members.0.inertia_mm4',
      'not-a-number',
      'inertia',
    ],
    ['no members', { members: [] }, 'members', 'missing-field', 'no members'],
    ['no nodes', { nodes: [] }, 'nodes', 'missing-field', 'no nodes'],
    [
      'a support in the air',
      { supports: [{ node: 'roof', x: true }] },
      'supports.0.node',
      'out-of-range',
      'roof',
    ],
    [
      'a node supported twice',
      {
        supports: [
          { node: 'wall', x: true },
          { node: 'wall', y: true },
        ],
      },
      'supports.1.node',
      'contradiction',
      'twice',
    ],
    [
      'two nodes of one name',
      { nodes: [...CANTILEVER.nodes, { id: 'tip', x_mm: 5, y_mm: 5 }] },
      'nodes.2.id',
      'contradiction',
      'tip',
    ],
    [
      'two members of one name',
      { members: [...CANTILEVER.members, ...CANTILEVER.members] },
      'members.1.id',
      'contradiction',
      'rail',
    ],
    [
      'a node past all distance',
      { nodes: [CANTILEVER.nodes[0]!, { id: 'tip', x_mm: 1e300, y_mm: 0 }] },
      'nodes.1.x_mm',
      'out-of-range',
      '1e+300',
    ],
    [
      'more nodes than are taken',
      { nodes: Array.from({ length: MOST_NODES + 1 }, (_, k) => ({ id: `${k}`, x_mm: k, y_mm: 0 })) },
      'nodes',
      'too-large',
      '401',
    ],
  ] as const)('%s', async (_, change, field, code, said) => {
    const fault = await faultOf(change);
    expect(fault).toMatchObject({ field, code });
    expect(fault!.message).toContain(said);
    expect(fault!.accepted).not.toBe('');
  });

  test('names that an object already has are good names', async () => {
    const fault = await faultOf({
      nodes: [
        { id: '__proto__', x_mm: 0, y_mm: 0 },
        { id: 'constructor', x_mm: 900, y_mm: 0 },
      ],
      members: [{ id: 'toString', from: '__proto__', to: 'constructor', ...steel }],
      supports: [{ node: '__proto__', x: true, y: true, turn: true }],
    });
    expect(fault).toBeNull();
  });
});

describe('loads', () => {
  test.each([
    ['on a node that is not there', { node: 'roof', y_N: 1 }, 'loads.1.node', 'out-of-range'],
    ['on a member that is not there', { member: 'post', across_N_mm: 1 }, 'loads.1.member', 'out-of-range'],
    ['of no number', { node: 'tip', x_N: Number.NaN }, 'loads.1.x_N', 'not-a-number'],
    ['past all numbers', { node: 'tip', y_N: 1e306 }, 'loads', 'out-of-range'],
  ] as const)('%s are refused', async (_, load, field, code) => {
    expect(await faultOf({}, [{ node: 'tip', y_N: -1 }, load])).toMatchObject({ field, code });
  });

  test('a moment where every end is hinged has nothing to go into', async () => {
    const fault = await faultOf(
      { ...rail({ hinge_to: true }), supports: [...CANTILEVER.supports, { node: 'tip', y: true }] },
      [{ node: 'tip', moment_Nmm: 5 }],
    );
    expect(fault).toMatchObject({ code: 'no-solution', field: 'loads.0.moment_Nm' });
  });

  test('several on one thing add', async () => {
    const frame = await prepareFrame(CANTILEVER);
    if (!frame.ok) throw new Error(frame.fault.message);
    const apart = frame.value.solve([
      { node: 'tip', y_N: -100 },
      { member: 'rail', across_N_mm: -1 },
      { node: 'tip', y_N: -50, moment_Nmm: 3000 },
      { member: 'rail', across_N_mm: -0.5 },
    ]);
    const together = frame.value.solve([
      { node: 'tip', y_N: -150, moment_Nmm: 3000 },
      { member: 'rail', across_N_mm: -1.5 },
    ]);
    expect(apart).toEqual(together);
  });
});

describe('the number command', () => {
  const input = { ...CANTILEVER, loads: [] as readonly unknown[] };

  test.each([
    ['nowhere', { x_N: 5 }, 'loads.0.node', 'missing-field'],
    ['on a node and a member at once', { node: 'tip', member: 'rail', x_N: 5 }, 'loads.0', 'contradiction'],
    ['of a node on a member', { member: 'rail', x_N: 5 }, 'loads.0', 'contradiction'],
    ['of a member on a node', { node: 'tip', across_N_mm: 5 }, 'loads.0', 'contradiction'],
    ['of nothing on a member', { member: 'rail' }, 'loads.0.across_N_mm', 'missing-field'],
  ] as const)('a load %s is refused', async (_, load, field, code) => {
    expect(await topic.run({ ...input, loads: [load] })).toMatchObject({ ok: false, fault: { field, code } });
  });

  test('moments go in and come out in newton metres', async () => {
    const answer = await topic.run({ ...input, loads: [{ node: 'tip', moment_Nm: 40 }] });
    if (!answer.ok) throw new Error(answer.fault.message);
    const [reaction] = answer.value.reactions as { moment_Nm: number }[];
    expect(reaction!.moment_Nm).toBeCloseTo(-40, 9);
    const [node] = (answer.value.nodes as { turn_rad: number }[]).slice(1);
    expect(node!.turn_rad).toBeCloseTo((40_000 * 900) / (steel.E_MPa * steel.inertia_mm4), 12);
    const [member] = answer.value.members as { to: { moment_Nm: number } }[];
    expect(member!.to.moment_Nm).toBeCloseTo(40, 9);
  });

  test('steel is taken where no modulus is given', async () => {
    const { E_MPa: _, ...plain } = CANTILEVER.members[0]!;
    const loads = [{ node: 'tip', y_N: -100 }];
    const given = await topic.run({ ...CANTILEVER, loads });
    expect(await topic.run({ ...CANTILEVER, members: [plain], loads })).toEqual(given);
  });

  test('a mechanism is told as one, at its node', async () => {
    expect(await topic.run({ ...input, supports: [{ node: 'wall', x: true, y: true }] })).toMatchObject({
      ok: false,
      fault: { code: 'mechanism', field: 'nodes.1', message: expect.stringContaining('"tip"') },
    });
  });
});

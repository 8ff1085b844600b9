// Plane frames with published answers. Each case of published/frames.json keeps its book and its mark: Logan, A First Course in
// the Finite Element Method, problem 5.30 [found]; Weaver & Gere, Matrix Analysis of Framed Structures, plane frame example;
// Kassimali, Matrix Analysis of Structures, examples 6.6 and 3.8; Kleinlogel, Rigid Frame Formulas [the last three memory].
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { topic } from '../../src/commands/reckon/frame.ts';
import { prepareFrame } from '../../src/reckon/statics/frame.ts';
import type { FrameLoad } from '../../src/reckon/statics/frame-loads.ts';
import type { FrameMember, FrameModel } from '../../src/reckon/statics/frame-model.ts';

type Point = { id: string; x: number; y: number };
type Published = {
  name: string;
  source: string;
  mark: string;
  model: {
    nodes: Point[];
    members: {
      id: string;
      i: string;
      j: string;
      E: number;
      A: number;
      I: number;
      rel_i: boolean;
      rel_j: boolean;
    }[];
    supports: { node: string; ux?: boolean; uy?: boolean; rz?: boolean }[];
    node_loads?: { node: string; fx?: number; fy?: number; mz?: number }[];
    member_loads?: {
      member: string;
      type: 'udl' | 'point';
      w?: number;
      P?: number;
      a?: number;
      dir: string;
    }[];
  };
  published: Record<string, number>;
  published_tolerance_rel: number;
};

const { cases } = JSON.parse(readFileSync(new URL('./published/frames.json', import.meta.url), 'utf8')) as {
  cases: Published[];
};

/** The book's model in ours; a load at a point of a member becomes a node there, so the member is two. Units are whatever the book's are. */
const modelOf = ({ model }: Published): { model: FrameModel; loads: FrameLoad[] } => {
  const nodes = model.nodes.map(({ id, x, y }) => ({ id, x_mm: x, y_mm: y }));
  const at = (id: string) => nodes.find(node => node.id === id)!;
  const loads: FrameLoad[] = (model.node_loads ?? []).map(({ node, fx, fy, mz }) => ({
    node,
    x_N: fx,
    y_N: fy,
    moment_Nmm: mz,
  }));
  const members: FrameMember[] = model.members.flatMap(({ id, i, j, E, A, I, rel_i, rel_j }) => {
    const whole: FrameMember = {
      id,
      from: i,
      to: j,
      E_MPa: E,
      area_mm2: A,
      inertia_mm4: I,
      hinge_from: rel_i,
      hinge_to: rel_j,
    };
    const point = model.member_loads?.find(load => load.member === id && load.type === 'point');
    if (point === undefined) return [whole];
    const [from, to] = [at(i), at(j)];
    const share = point.a! / Math.hypot(to.x_mm - from.x_mm, to.y_mm - from.y_mm);
    const middle = `${id} loaded`;
    nodes.push({
      id: middle,
      x_mm: from.x_mm + share * (to.x_mm - from.x_mm),
      y_mm: from.y_mm + share * (to.y_mm - from.y_mm),
    });
    expect(point.dir).toBe('globalY');
    loads.push({ node: middle, y_N: point.P });
    return [
      { ...whole, to: middle },
      { ...whole, id: `${id} beyond`, from: middle },
    ];
  });
  for (const { member, type, w, dir } of model.member_loads ?? []) {
    if (type !== 'udl') continue;
    expect(dir).toBe('localY');
    loads.push({ member, across_N_mm: w! });
  }
  return {
    model: {
      nodes,
      members,
      supports: model.supports.map(({ node, ux, uy, rz }) => ({ node, x: ux, y: uy, turn: rz })),
    },
    loads,
  };
};

describe('published frames', () => {
  test('the file has its six', () => expect(cases.map(({ name }) => name)).toHaveLength(6));

  test.each(cases)('$name: $source', async published => {
    const { model, loads } = modelOf(published);
    const frame = await prepareFrame(model);
    if (!frame.ok) throw new Error(frame.fault.message);
    const solved = frame.value.solve(loads);
    if (!solved.ok) throw new Error(solved.fault.message);
    const { nodes, reactions, members } = solved.value;
    const read = (key: string): number => {
      const [kind, id, part] = key.split('.') as [string, string, string];
      if (kind === 'disp') {
        const node = nodes.find(one => one.id === id)!;
        return { ux: node.x_mm, uy: node.y_mm, rz: node.turn_rad }[part]!;
      }
      if (kind === 'reac') {
        const reaction = reactions.find(one => one.node === id)!;
        return { fx: reaction.x_N, fy: reaction.y_N, mz: reaction.moment_Nmm }[part]!;
      }
      expect([kind, part]).toEqual(['mef', 'Mi']);
      return members.find(one => one.id === id)!.from.moment_Nmm;
    };
    for (const [key, value] of Object.entries(published.published)) {
      const got = read(key);
      const share = Math.abs(got - value) / Math.abs(value);
      expect(share, `${key}: ${got} for ${value}`).toBeLessThan(published.published_tolerance_rel);
    }
  });

  test('a problem in the units of the contract says the same in newtons and newton metres', async () => {
    // Logan 5.30 [found], in mm and N: 1 kip 4448.2216 N, 1 in 25.4 mm, 1 ksi 6.8947573 MPa.
    const logan = cases.find(({ name }) => name === 'logan_5_30_gable')!;
    const { model, loads } = modelOf(logan);
    const answer = await topic.run({
      nodes: model.nodes.map(({ id, x_mm, y_mm }) => ({ id, x_mm: x_mm * 25.4, y_mm: y_mm * 25.4 })),
      members: model.members.map(member => ({
        ...member,
        E_MPa: member.E_MPa * 6.8947573,
        area_mm2: member.area_mm2 * 25.4 ** 2,
        inertia_mm4: member.inertia_mm4 * 25.4 ** 4,
      })),
      supports: model.supports,
      loads: loads.map(load =>
        'node' in load ? { node: load.node, y_N: (load.y_N ?? 0) * 4448.2216 } : load,
      ),
    });
    if (!answer.ok) throw new Error(answer.fault.message);
    const reactions = answer.value.reactions as { x_N: number; y_N: number; moment_Nm: number }[];
    expect(reactions[0]!.x_N / 4448.2216).toBeCloseTo(11.6877, 3);
    expect(reactions[0]!.y_N / 4448.2216).toBeCloseTo(30, 6);
    expect(reactions[0]!.moment_Nm / 4.4482216 / 25.4).toBeCloseTo(-1810.0745, 2);
    const nodes = answer.value.nodes as { id: string; y_mm: number }[];
    expect(nodes.find(({ id }) => id === '3')!.y_mm / 25.4).toBeCloseTo(-6.666757, 5);
  });
});

describe('trusses and arches by statics', () => {
  const bar = (id: string, from: string, to: string): FrameMember => ({
    id,
    from,
    to,
    E_MPa: 210_000,
    area_mm2: 400,
    inertia_mm4: 90_000,
    hinge_from: true,
    hinge_to: true,
  });

  test('a square panel with both diagonals shares a side load between them (Timoshenko & Young, Theory of Structures, method of least work [memory])', async () => {
    // Unit load method [derived]: panel a × a held at both feet, bars of one area, P at one head along the top. Unknown X = force
    // in diagonal 2-4; the bar between the held feet takes nothing. With N0 and n of the other bars: X = −Σ N0·n·L / Σ n²·L.
    const a = 1000;
    const P = 8000;
    const root = Math.SQRT2;
    // Bars: left 1-4, top 4-3, right 2-3, diagonal 1-3; released diagonal 2-4. Load P at 4 toward 3 (x).
    const n0 = { left: 0, top: -P, right: -P, rising: P * root };
    const n = { left: -1 / root, top: -1 / root, right: -1 / root, rising: 1 };
    const over =
      n0.left * n.left * a + n0.top * n.top * a + n0.right * n.right * a + n0.rising * n.rising * root * a;
    const own = n.left ** 2 * a + n.top ** 2 * a + n.right ** 2 * a + n.rising ** 2 * root * a + root * a;
    const falling = -over / own;

    const frame = await prepareFrame({
      nodes: [
        { id: '1', x_mm: 0, y_mm: 0 },
        { id: '2', x_mm: a, y_mm: 0 },
        { id: '3', x_mm: a, y_mm: a },
        { id: '4', x_mm: 0, y_mm: a },
      ],
      members: [
        bar('left', '1', '4'),
        bar('top', '4', '3'),
        bar('right', '2', '3'),
        bar('rising', '1', '3'),
        bar('falling', '2', '4'),
        bar('foot', '1', '2'),
      ],
      supports: [
        { node: '1', x: true, y: true },
        { node: '2', x: true, y: true },
      ],
    });
    if (!frame.ok) throw new Error(frame.fault.message);
    const solved = frame.value.solve([{ node: '4', x_N: P }]);
    if (!solved.ok) throw new Error(solved.fault.message);
    // Tension is + at the far end.
    const force = (id: string) => solved.value.members.find(member => member.id === id)!.to.axial_N;
    expect(force('falling')).toBeCloseTo(falling, 6);
    expect(force('rising')).toBeCloseTo(P * root + falling, 6);
    expect(force('top')).toBeCloseTo(-P - falling / root, 6);
    expect(force('left')).toBeCloseTo(-falling / root, 6);
    expect(force('foot')).toBeCloseTo(0, 6);
  });

  test('a three-hinged arch pushes its feet apart by H = PL/4h (statics [derived])', async () => {
    const [span, rise, P] = [4000, 1500, 6000];
    const post = { E_MPa: 210_000, area_mm2: 1e7, inertia_mm4: 1e9 };
    const frame = await prepareFrame({
      nodes: [
        { id: 'left', x_mm: 0, y_mm: 0 },
        { id: 'left knee', x_mm: 500, y_mm: 900 },
        { id: 'crown', x_mm: span / 2, y_mm: rise },
        { id: 'right knee', x_mm: span - 500, y_mm: 900 },
        { id: 'right', x_mm: span, y_mm: 0 },
      ],
      members: [
        { id: '1', from: 'left', to: 'left knee', ...post },
        { id: '2', from: 'left knee', to: 'crown', ...post, hinge_to: true },
        { id: '3', from: 'crown', to: 'right knee', ...post, hinge_from: true },
        { id: '4', from: 'right knee', to: 'right', ...post },
      ],
      supports: [
        { node: 'left', x: true, y: true },
        { node: 'right', x: true, y: true },
      ],
    });
    if (!frame.ok) throw new Error(frame.fault.message);
    const solved = frame.value.solve([{ node: 'crown', y_N: -P }]);
    if (!solved.ok) throw new Error(solved.fault.message);
    const [left, right] = solved.value.reactions;
    expect(left!.x_N).toBeCloseTo((P * span) / 4 / rise, 6);
    expect(right!.x_N).toBeCloseTo((-P * span) / 4 / rise, 6);
    expect(left!.y_N).toBeCloseTo(P / 2, 6);
    // The half's left part turns about its knee by its foot's push alone; the moment there holds it.
    const knee = solved.value.members[0]!.to.moment_Nmm;
    expect(knee).toBeCloseTo(left!.y_N * 500 - left!.x_N * 900, 3);
    // The crown carries none, and every end there is hinged: it stands, and its turn is 0.
    expect(solved.value.members[1]!.to.moment_Nmm).toBe(0);
    expect(solved.value.nodes[2]!.turn_rad).toBe(0);
  });
});

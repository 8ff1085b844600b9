import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type FrameAnswer, prepareFrame } from '../../../src/reckon/statics/frame.ts';
import type { FrameLoad } from '../../../src/reckon/statics/frame-loads.ts';
import type { FrameModel } from '../../../src/reckon/statics/frame-model.ts';

const length = fc.double({ min: 50, max: 900, noNaN: true });
const stiffness = fc.double({ min: -3, max: 3, noNaN: true }).map(power => 10 ** power);

/** A random storeyed frame: bays side by side, welded, with some hinged ends and diagonals, on pins and a clamped foot. */
const frames = fc
  .record({
    bays: fc.array(
      fc.record({ wide: length, high: length, lean: fc.double({ min: -40, max: 40, noNaN: true }) }),
      {
        minLength: 2,
        maxLength: 5,
      },
    ),
    stiff: fc.array(stiffness, { minLength: 16, maxLength: 16 }),
    hinged: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
    braced: fc.array(fc.boolean(), { minLength: 5, maxLength: 5 }),
    forces: fc.array(fc.double({ min: -900, max: 900, noNaN: true }), { minLength: 18, maxLength: 18 }),
    across: fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: 5, maxLength: 5 }),
  })
  .map(({ bays, stiff, hinged, braced, forces, across }) => {
    let x = 0;
    const nodes = bays.flatMap(({ wide, high, lean }, k) => {
      if (k > 0) x += wide;
      return [
        { id: `foot ${k}`, x_mm: x, y_mm: lean },
        { id: `head ${k}`, x_mm: x + lean, y_mm: 200 + high },
      ];
    });
    const steel = (k: number) => ({
      E_MPa: 210_000 * stiff[k % stiff.length]!,
      area_mm2: 421,
      inertia_mm4: 93_200 * stiff[(k + 7) % stiff.length]!,
    });
    const members: FrameModel['members'] = bays.flatMap((_, k) => {
      const post = {
        id: `post ${k}`,
        from: `foot ${k}`,
        to: `head ${k}`,
        hinge_from: hinged[k],
        ...steel(k),
      };
      if (k === 0) return [post];
      const beam = { id: `beam ${k}`, from: `head ${k - 1}`, to: `head ${k}`, ...steel(k + 5) };
      const diagonal = {
        id: `diagonal ${k}`,
        from: `foot ${k - 1}`,
        to: `head ${k}`,
        hinge_from: true,
        hinge_to: true,
        ...steel(k + 9),
      };
      return braced[k] ? [post, beam, diagonal] : [post, beam];
    });
    const supports = bays.map((_, k) => ({ node: `foot ${k}`, x: true, y: true, turn: k === 0 }));
    const loads: FrameLoad[] = [
      ...bays.map((_, k) => ({
        node: `head ${k}`,
        x_N: forces[3 * k],
        y_N: forces[3 * k + 1],
        moment_Nmm: 100 * forces[3 * k + 2]!,
      })),
      ...bays.slice(1).map((_, k) => ({ member: `beam ${k + 1}`, across_N_mm: across[k]! })),
    ];
    return { model: { nodes, members, supports } satisfies FrameModel, loads };
  });

const solve = async (model: FrameModel, loads: readonly FrameLoad[]): Promise<FrameAnswer> => {
  const frame = await prepareFrame(model);
  if (!frame.ok) throw new Error(frame.fault.message);
  const solved = frame.value.solve(loads);
  if (!solved.ok) throw new Error(solved.fault.message);
  return solved.value;
};

const place = (model: FrameModel, id: string) => model.nodes.find(node => node.id === id)!;

/** Force and moment about the origin of all loads. */
const totalLoad = (model: FrameModel, loads: readonly FrameLoad[]) =>
  loads.reduce(
    (sum, load) => {
      if ('node' in load) {
        const { x_mm, y_mm } = place(model, load.node);
        const [x, y] = [load.x_N ?? 0, load.y_N ?? 0];
        return {
          x: sum.x + x,
          y: sum.y + y,
          moment: sum.moment + (load.moment_Nmm ?? 0) + x_mm * y - y_mm * x,
        };
      }
      const { from, to } = model.members.find(({ id }) => id === load.member)!;
      const [a, b] = [place(model, from), place(model, to)];
      const [dx, dy] = [b.x_mm - a.x_mm, b.y_mm - a.y_mm];
      // Left of from→to, times its length.
      const [x, y] = [-dy * load.across_N_mm, dx * load.across_N_mm];
      const [midX, midY] = [(a.x_mm + b.x_mm) / 2, (a.y_mm + b.y_mm) / 2];
      return { x: sum.x + x, y: sum.y + y, moment: sum.moment + midX * y - midY * x };
    },
    { x: 0, y: 0, moment: 0 },
  );

test('reactions balance every load, in x, in y and in turning', async () => {
  await fc.assert(
    fc.asyncProperty(frames, async ({ model, loads }) => {
      const { reactions } = await solve(model, loads);
      const load = totalLoad(model, loads);
      const back = reactions.reduce(
        (sum, { node, x_N, y_N, moment_Nmm }) => {
          const { x_mm, y_mm } = place(model, node);
          return {
            x: sum.x + x_N,
            y: sum.y + y_N,
            moment: sum.moment + moment_Nmm + x_mm * y_N - y_mm * x_N,
          };
        },
        { x: 0, y: 0, moment: 0 },
      );
      expect(back.x + load.x).toBeCloseTo(0, 5);
      expect(back.y + load.y).toBeCloseTo(0, 5);
      expect(back.moment + load.moment).toBeCloseTo(0, 2);
    }),
    { numRuns: 60 },
  );
});

test('every member is in balance by itself, and passes no moment at its hinges', async () => {
  await fc.assert(
    fc.asyncProperty(frames, async ({ model, loads }) => {
      const { members } = await solve(model, loads);
      for (const [k, { from, to }] of members.entries()) {
        const member = model.members[k]!;
        const [a, b] = [place(model, member.from), place(model, member.to)];
        const span = Math.hypot(b.x_mm - a.x_mm, b.y_mm - a.y_mm);
        const across = loads.reduce(
          (sum, load) => ('member' in load && load.member === member.id ? sum + load.across_N_mm : sum),
          0,
        );
        expect(from.axial_N + to.axial_N).toBeCloseTo(0, 6);
        expect(from.shear_N + to.shear_N + across * span).toBeCloseTo(0, 6);
        expect(from.moment_Nmm + to.moment_Nmm + to.shear_N * span + (across * span ** 2) / 2).toBeCloseTo(
          0,
          3,
        );
        if (member.hinge_from) expect(from.moment_Nmm).toBe(0);
        if (member.hinge_to) expect(to.moment_Nmm).toBe(0);
      }
    }),
    { numRuns: 40 },
  );
});

test('what A moves at B under a load, B moves at A (Maxwell), also a turn for a force', async () => {
  await fc.assert(
    fc.asyncProperty(frames, async ({ model }) => {
      const last = `head ${model.supports.length - 1}`;
      const answerAt = async (load: FrameLoad, id: string) =>
        (await solve(model, [load])).nodes.find(node => node.id === id)!;
      const there = (await answerAt({ node: 'head 0', x_N: 1000 }, last)).y_mm;
      const back = (await answerAt({ node: last, y_N: 1000 }, 'head 0')).x_mm;
      const turn = (await answerAt({ node: 'head 0', x_N: 1000 }, last)).turn_rad;
      const push = (await answerAt({ node: last, moment_Nmm: 1000 }, 'head 0')).x_mm;
      expect(Math.abs(there - back)).toBeLessThan(1e-9 * Math.max(1e-3, Math.abs(there)));
      expect(Math.abs(turn - push)).toBeLessThan(1e-9 * Math.max(1e-6, Math.abs(turn)));
    }),
    { numRuns: 30 },
  );
});

test('a frame turned with its loads gives the same, turned', async () => {
  await fc.assert(
    fc.asyncProperty(frames, fc.double({ min: -3, max: 3, noNaN: true }), async ({ model, loads }, angle) => {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      // Supports that hold both ways hold as well when turned.
      const turned: FrameModel = {
        ...model,
        nodes: model.nodes.map(({ id, x_mm, y_mm }) => ({
          id,
          x_mm: c * x_mm - s * y_mm,
          y_mm: s * x_mm + c * y_mm,
        })),
      };
      const turnedLoads = loads.map(load =>
        'node' in load
          ? {
              ...load,
              x_N: c * (load.x_N ?? 0) - s * (load.y_N ?? 0),
              y_N: s * (load.x_N ?? 0) + c * (load.y_N ?? 0),
            }
          : load,
      );
      const [before, after] = [await solve(model, loads), await solve(turned, turnedLoads)];
      const size = Math.max(...before.nodes.map(({ x_mm, y_mm }) => Math.hypot(x_mm, y_mm)));
      for (const [k, { x_mm, y_mm }] of before.nodes.entries()) {
        expect(Math.abs(after.nodes[k]!.x_mm - (c * x_mm - s * y_mm))).toBeLessThan(1e-7 * size);
        expect(Math.abs(after.nodes[k]!.y_mm - (s * x_mm + c * y_mm))).toBeLessThan(1e-7 * size);
      }
    }),
    { numRuns: 40 },
  );
});

test('a chain of arms from a wall ends where the unit load method says, whatever their stiffnesses', async () => {
  const power = fc.double({ min: -7, max: 7, noNaN: true });
  const arms = fc.array(
    fc.record({ size: length, turn: fc.double({ min: -2, max: 2, noNaN: true }), power, bend: power }),
    { minLength: 1, maxLength: 8 },
  );
  await fc.assert(
    fc.asyncProperty(arms, async chain => {
      const points = [{ x: 0, y: 0 }];
      let heading = 0.4;
      for (const { size, turn } of chain) {
        heading += turn;
        const last = points.at(-1)!;
        points.push({ x: last.x + size * Math.cos(heading), y: last.y + size * Math.sin(heading) });
      }
      const model: FrameModel = {
        nodes: points.map(({ x, y }, k) => ({ id: `${k}`, x_mm: x, y_mm: y })),
        members: chain.map((arm, k) => ({
          id: `${k}`,
          from: `${k}`,
          to: `${k + 1}`,
          E_MPa: 210_000,
          area_mm2: 400 * 10 ** arm.power,
          inertia_mm4: 90_000 * 10 ** arm.bend,
        })),
        supports: [{ node: '0', x: true, y: true, turn: true }],
      };
      const tip = points.at(-1)!;
      const P = -500;
      // Force P down the y at the tip: the sag there is Σ (N²L/EA + ∫M²/EI)/P, each moment straight along its arm.
      const sag = chain.reduce((sum, _, k) => {
        const [a, b] = [points[k]!, points[k + 1]!];
        const size = Math.hypot(b.x - a.x, b.y - a.y);
        const axial = (P * (b.y - a.y)) / size;
        const [near, far] = [P * (tip.x - a.x), P * (tip.x - b.x)];
        const { E_MPa, area_mm2, inertia_mm4 } = model.members[k]!;
        const bent = (size * (near ** 2 + near * far + far ** 2)) / 3 / E_MPa / inertia_mm4;
        return sum + (axial ** 2 * size) / E_MPa / area_mm2 / P + bent / P;
      }, 0);
      const { nodes, reactions } = await solve(model, [{ node: `${chain.length}`, y_N: P }]);
      expect(nodes.at(-1)!.y_mm / sag).toBeCloseTo(1, 9);
      expect(reactions[0]!.y_N).toBeCloseTo(-P, 6);
      expect(reactions[0]!.moment_Nmm).toBeCloseTo(-P * tip.x, 2);
    }),
    { numRuns: 60 },
  );
});

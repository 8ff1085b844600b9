// AISC Steel Construction Manual table 3-23, shears, moments and deflections of beams [memory; mechanics]. The frame solver against
// the closed forms, each to 1e-9 of the value where the form is exact, to its printed digits where it is not (propped, two-span).
import { describe, expect, test } from 'vitest';
import { prepareFrame } from '../../src/reckon/statics/frame.ts';
import type { FrameLoad } from '../../src/reckon/statics/frame-loads.ts';
import type { FrameSupport } from '../../src/reckon/statics/frame-model.ts';

const E = 210_000;
const AREA = 421;
const I = 93_200;
const L = 2400;
const P = 700;
const w = 0.9;

const held: Omit<FrameSupport, 'node'> = { x: true, y: true, turn: true };
const pin: Omit<FrameSupport, 'node'> = { x: true, y: true };
const roller: Omit<FrameSupport, 'node'> = { y: true };

type Node = { at: number; support?: Omit<FrameSupport, 'node'> };

/** A level beam through the given nodes, loads downward as the table has them. Moments are told as the table's: sagging +. */
const beam = async (nodes: Node[], loads: FrameLoad[]) => {
  const frame = await prepareFrame({
    nodes: nodes.map(({ at }) => ({ id: `${at}`, x_mm: at, y_mm: 0 })),
    members: nodes.slice(1).map(({ at }, k) => ({
      id: `${nodes[k]!.at}–${at}`,
      from: `${nodes[k]!.at}`,
      to: `${at}`,
      E_MPa: E,
      area_mm2: AREA,
      inertia_mm4: I,
    })),
    supports: nodes.flatMap(({ at, support }) =>
      support === undefined ? [] : [{ node: `${at}`, ...support }],
    ),
  });
  if (!frame.ok) throw new Error(frame.fault.message);
  const solved = frame.value.solve(loads);
  if (!solved.ok) throw new Error(solved.fault.message);
  const { nodes: moved, members, reactions } = solved.value;
  return {
    sag: (at: number) => -moved.find(({ id }) => id === `${at}`)!.y_mm,
    slope: (at: number) => moved.find(({ id }) => id === `${at}`)!.turn_rad,
    sagging: (at: number) =>
      members.find(({ id }) => id.endsWith(`–${at}`))?.to.moment_Nmm ??
      -members.find(({ id }) => id.startsWith(`${at}–`))!.from.moment_Nmm,
    reaction: (at: number) => reactions.find(({ node }) => node === `${at}`)!.y_N,
  };
};

const onAll = (nodes: Node[], load: number): FrameLoad[] =>
  nodes.slice(1).map(({ at }, k) => ({ member: `${nodes[k]!.at}–${at}`, across_N_mm: -load }));

const close = (got: number, wanted: number, share = 1e-9) =>
  expect(Math.abs(got - wanted), `${got} for ${wanted}`).toBeLessThan(share * Math.abs(wanted));

describe('simply supported', () => {
  const nodes = (at = L / 2): Node[] => [{ at: 0, support: pin }, { at }, { at: L, support: roller }];

  test('uniform load: wL²/8 and 5wL⁴/384EI', async () => {
    const { sag, sagging, reaction, slope } = await beam(nodes(), onAll(nodes(), w));
    close(sagging(L / 2), (w * L ** 2) / 8);
    close(sag(L / 2), (5 * w * L ** 4) / (384 * E * I));
    close(reaction(0), (w * L) / 2);
    close(slope(L), (w * L ** 3) / (24 * E * I));
  });

  test('load at the middle: PL/4 and PL³/48EI', async () => {
    const { sag, sagging } = await beam(nodes(), [{ node: `${L / 2}`, y_N: -P }]);
    close(sagging(L / 2), (P * L) / 4);
    close(sag(L / 2), (P * L ** 3) / (48 * E * I));
  });

  test('load anywhere: Pab/L, and the greatest sag where the table has it', async () => {
    const a = 1500;
    const b = L - a;
    const lowest = Math.sqrt((a * (a + 2 * b)) / 3);
    const spread: Node[] = [{ at: 0, support: pin }, { at: lowest }, { at: a }, { at: L, support: roller }];
    const { sag, sagging, slope } = await beam(spread, [{ node: `${a}`, y_N: -P }]);
    close(sagging(a), (P * a * b) / L);
    close(sag(lowest), (P * a * b * (a + 2 * b) * Math.sqrt(3 * a * (a + 2 * b))) / (27 * E * I * L));
    close(sag(a), (P * a ** 2 * b ** 2) / (3 * E * I * L));
    expect(Math.abs(slope(lowest))).toBeLessThan(1e-12);
  });

  test('two equal loads: Pa and Pa(3L² − 4a²)/24EI', async () => {
    const a = 700;
    const four: Node[] = [
      { at: 0, support: pin },
      { at: a },
      { at: L / 2 },
      { at: L - a },
      { at: L, support: roller },
    ];
    const { sag, sagging } = await beam(four, [
      { node: `${a}`, y_N: -P },
      { node: `${L - a}`, y_N: -P },
    ]);
    close(sagging(L / 2), P * a);
    close(sag(L / 2), (P * a * (3 * L ** 2 - 4 * a ** 2)) / (24 * E * I));
  });

  test('overhang with a load at its tip: Pa and Pa²(L + a)/3EI', async () => {
    const a = 600;
    const out: Node[] = [{ at: 0, support: pin }, { at: L, support: roller }, { at: L + a }];
    const { sag, sagging, reaction } = await beam(out, [{ node: `${L + a}`, y_N: -P }]);
    close(sagging(L), -P * a);
    close(sag(L + a), (P * a ** 2 * (L + a)) / (3 * E * I));
    close(reaction(0), (-P * a) / L);
  });
});

describe('fixed at both ends', () => {
  const nodes: Node[] = [{ at: 0, support: held }, { at: L / 2 }, { at: L, support: held }];

  test('uniform load: wL²/12 at the ends, wL²/24 and wL⁴/384EI at the middle', async () => {
    const { sag, sagging } = await beam(nodes, onAll(nodes, w));
    close(sagging(0), (-w * L ** 2) / 12);
    close(sagging(L), (-w * L ** 2) / 12);
    close(sagging(L / 2), (w * L ** 2) / 24);
    close(sag(L / 2), (w * L ** 4) / (384 * E * I));
  });

  test('load at the middle: PL/8 and PL³/192EI', async () => {
    const { sag, sagging } = await beam(nodes, [{ node: `${L / 2}`, y_N: -P }]);
    close(sagging(0), (-P * L) / 8);
    close(sagging(L / 2), (P * L) / 8);
    close(sag(L / 2), (P * L ** 3) / (192 * E * I));
  });
});

describe('propped', () => {
  test('uniform load: wL²/8 at the wall, wL⁴/185EI at 0.4215 L', async () => {
    const lowest = 0.4215 * L;
    const nodes: Node[] = [{ at: 0, support: roller }, { at: lowest }, { at: L, support: held }];
    const { sag, sagging, reaction } = await beam(nodes, onAll(nodes, w));
    close(sagging(L), (-w * L ** 2) / 8);
    close(reaction(0), (3 * w * L) / 8);
    close(sag(lowest), (w * L ** 4) / (185 * E * I), 0.002);
  });

  test('load at the middle: 3PL/16 at the wall, 0.009317 PL³/EI at 0.4472 L', async () => {
    const lowest = L / Math.sqrt(5);
    const nodes: Node[] = [
      { at: 0, support: roller },
      { at: lowest },
      { at: L / 2 },
      { at: L, support: held },
    ];
    const { sag, sagging } = await beam(nodes, [{ node: `${L / 2}`, y_N: -P }]);
    close(sagging(L), (-3 * P * L) / 16);
    close(sag(lowest), (0.009317 * P * L ** 3) / (E * I), 1e-4);
  });
});

describe('cantilever', () => {
  const nodes: Node[] = [{ at: 0, support: held }, { at: L }];

  test('load at the tip: PL and PL³/3EI', async () => {
    const { sag, sagging } = await beam(nodes, [{ node: `${L}`, y_N: -P }]);
    close(sagging(0), -P * L);
    close(sag(L), (P * L ** 3) / (3 * E * I));
  });

  test('uniform load: wL²/2 and wL⁴/8EI', async () => {
    const { sag, sagging } = await beam(nodes, onAll(nodes, w));
    close(sagging(0), (-w * L ** 2) / 2);
    close(sag(L), (w * L ** 4) / (8 * E * I));
  });
});

test('two spans under a uniform load: wL²/8 over the middle support, 0.0054 wL⁴/EI at 0.421 L', async () => {
  const lowest = 0.421 * L;
  const nodes: Node[] = [
    { at: 0, support: pin },
    { at: lowest },
    { at: L, support: roller },
    { at: 2 * L, support: roller },
  ];
  const { sag, sagging, reaction } = await beam(nodes, onAll(nodes, w));
  close(sagging(L), (-w * L ** 2) / 8);
  close(reaction(L), 1.25 * w * L);
  close(sag(lowest), (0.0054 * w * L ** 4) / (E * I), 0.005);
});

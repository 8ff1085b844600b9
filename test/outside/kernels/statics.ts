import { aiscColumn, type BucklingCurve, enColumn } from '../../../src/reckon/statics/column.ts';
import type { ForcedRail } from '../../../src/reckon/statics/forced-rail.ts';
import { prepareFrame } from '../../../src/reckon/statics/frame.ts';
import { springBack } from '../../../src/reckon/statics/spring-back.ts';
import { type Compared, INCH, type KernelCase, KIP, KSI, kept } from '../kernel-case.ts';
import frames from '../published/frames.json' with { type: 'json' };

const E = 210_000;
const SPAN = 2400;
const RAIL = { area_mm2: 420.8, inertia_mm4: 93_240, depth_mm: 40 };

/** Logan's gable, in his kips and inches. */
const gable = async (): Promise<Compared> => {
  const book = frames.cases.find(({ name }) => name === 'logan_5_30_gable');
  if (book === undefined) throw new Error('the gable is gone from frames.json');
  const { model, published } = book;
  const frame = kept(
    await prepareFrame({
      nodes: model.nodes.map(({ id, x, y }) => ({ id, x_mm: x, y_mm: y })),
      members: model.members.map(m => ({
        id: m.id,
        from: m.i,
        to: m.j,
        E_MPa: m.E,
        area_mm2: m.A,
        inertia_mm4: m.I,
      })),
      supports: model.supports.map(({ node }) => ({ node, x: true, y: true, turn: true })),
    }),
  );
  const loads = (model.node_loads ?? []).map(load => ({ node: load.node, y_N: 'fy' in load ? load.fy : 0 }));
  const { nodes, reactions } = kept(frame.solve(loads));
  return Object.entries(published).map(([key, value]) => {
    const [kind, id, part] = key.split('.');
    const moved = nodes.find(one => one.id === id);
    const foot = reactions.find(one => one.node === id);
    const ours =
      kind === 'disp'
        ? { ux: moved?.x_mm, uy: moved?.y_mm, rz: moved?.turn_rad }[part ?? '']
        : { fx: foot?.x_N, fy: foot?.y_N, mz: foot?.moment_Nmm }[part ?? ''];
    return [ours ?? Number.NaN, value];
  });
};

/** A propped beam under a load at its middle, and a tip load on a cantilever: moments and sags of the table. */
const beams = async (): Promise<Compared> => {
  const [P, I] = [700, 93_200];
  const level = async (places: readonly number[], propped: boolean) => {
    const frame = kept(
      await prepareFrame({
        nodes: places.map(x => ({ id: `${x}`, x_mm: x, y_mm: 0 })),
        members: places.slice(1).map((x, k) => ({
          id: `${x}`,
          from: `${places[k]}`,
          to: `${x}`,
          E_MPa: E,
          area_mm2: 421,
          inertia_mm4: I,
        })),
        supports: [
          { node: '0', x: true, y: true, turn: true },
          ...(propped ? [{ node: `${SPAN}`, y: true }] : []),
        ],
      }),
    );
    const { nodes, reactions } = kept(frame.solve([{ node: `${propped ? SPAN / 2 : SPAN}`, y_N: -P }]));
    return {
      wall: Math.abs(reactions.find(({ node }) => node === '0')?.moment_Nmm ?? Number.NaN),
      sag: (x: number) => -(nodes.find(({ id }) => id === `${x}`)?.y_mm ?? Number.NaN),
    };
  };
  const lowest = SPAN * (1 - 1 / Math.sqrt(5));
  const propped = await level(
    [0, SPAN / 2, lowest, SPAN].sort((a, b) => a - b),
    true,
  );
  const free = await level([0, SPAN], false);
  return [
    [propped.wall, (3 * P * SPAN) / 16],
    [propped.sag(lowest), (0.009317 * P * SPAN ** 3) / (E * I)],
    [free.wall, P * SPAN],
    [free.sag(SPAN), (P * SPAN ** 3) / (3 * E * I)],
  ];
};

const aisc = (yieldKsi: number, area: number, gyration: number, length: number, k = 1) =>
  kept(
    aiscColumn({
      yield_MPa: yieldKsi * KSI,
      E_MPa: 29_000 * KSI,
      area_mm2: area * INCH ** 2,
      gyration_mm: gyration * INCH,
      length_mm: length * INCH,
      k,
    }),
  );

const atOne = (curve: BucklingCurve) =>
  kept(
    enColumn(
      {
        yield_MPa: 235,
        E_MPa: E,
        area_mm2: 100,
        gyration_mm: 10,
        length_mm: 10 * Math.PI * Math.sqrt(E / 235),
        k: 1,
      },
      curve,
    ),
  ).reduction;

/** Forced 6 and 3 mm at its thirds, and nothing that holds it there. */
const forced: ForcedRail = {
  line: [
    { x: 0, y: 400 },
    { x: SPAN, y: 400 },
  ],
  rail: RAIL,
  clamps: [0, 6, 3, 0].map((forced_mm, k) => ({ at_mm: (k * SPAN) / 3, forced_mm })),
  base: { from: { x: 0, y: 0 }, to: { x: SPAN, y: 0 }, section: RAIL, heldAt_mm: [] },
  toeJoined: false,
  uprights: [],
  diagonals: [],
  stations_mm: [0, SPAN / 3, (2 * SPAN) / 3, SPAN],
};

/** Frames, struts and forced rails. The sources in full stand in frames, beams, columns and spring-back.test.ts. */
export const STATICS: readonly KernelCase[] = [
  {
    kernel: 'statics/frame',
    source: 'Logan, First Course in FEM, 5.30 [found]',
    about: 'gable frame: reactions and movements',
    unit: '%',
    tolerance: 0.01,
    compared: gable,
  },
  {
    kernel: 'statics/frame',
    source: 'AISC Manual table 3-23 [memory]',
    about: 'propped beam, cantilever: moments, sags',
    unit: '%',
    tolerance: 0.01,
    compared: beams,
  },
  {
    kernel: 'statics/column',
    source: 'AISC Design Examples v14, E.9 [found]',
    about: 'HSS12×10×3/8, 20 ft: 518 kips',
    unit: '%',
    tolerance: 0.1,
    compared: () => [[aisc(46, 14.6, 4.01, 240, 0.8).design_N / KIP, 518]],
  },
  {
    kernel: 'statics/column',
    source: 'AISC Manual tables 4-4 and 4-22 [memory]',
    about: 'HSS16×16×1/2 at 18 ft; KL/r of 200',
    unit: '%',
    tolerance: 0.4,
    compared: () => [
      [aisc(46, 28.3, 6.31, 216).design_N / KIP, 1080],
      [aisc(46, 28.3, 6.31, 216).allowable_N / KIP, 720],
      [aisc(50, 1, 1, 200).design_N / KIP, 5.65],
      [aisc(50, 1, 1, 200).allowable_N / KIP, 3.76],
    ],
  },
  {
    kernel: 'statics/column',
    source: 'EN 1993-1-1 6.3.1, table of values [memory]',
    about: 'χ of the five curves at slenderness 1',
    unit: '',
    tolerance: 0.0006,
    compared: () => [
      [atOne('a0'), 0.725],
      [atOne('a'), 0.666],
      [atOne('b'), 0.597],
      [atOne('c'), 0.54],
      [atOne('d'), 0.467],
    ],
  },
  {
    kernel: 'statics/spring-back',
    source: 'stiffness at the thirds, by hand [derived]',
    about: 'clamps forced 6 and 3 mm: 1239, −826 N',
    unit: 'N',
    tolerance: 1,
    compared: async () => {
      const { clamps } = kept(await springBack(forced));
      return [
        [clamps[1]?.force_N ?? Number.NaN, 1239],
        [clamps[2]?.force_N ?? Number.NaN, -826],
      ];
    },
  },
];

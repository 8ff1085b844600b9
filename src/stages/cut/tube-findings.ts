import { READINGS } from '../../build/reading-names.ts';
import type { RailName } from '../../ramp/design.ts';
import { sideTolerance, wallTolerance } from '../../reckon/steel/size-tolerance.ts';
import type { Fill, Finding } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { nominalTube } from './nominal-tube.ts';
import { RAIL_LIMIT } from './rail-run.ts';

const thickness = (v: number): Fill => ({ v, as: 'thickness' });

/** Depths that differ by more than this are felt as a step between the rails, mm (D ± 0.5 mm is 1.3 % of the bend; derived). */
const DEPTHS_DIFFER = 0.5;

/** One rail's tube that is not what was bought. */
const offFinding = (s: Situation, rail: RailName): readonly Finding[] => {
  const read = s.measured.tubes.get(rail);
  const nominal = nominalTube(s);
  if (read === undefined) return [];
  const thin = (read.wall_mm ?? nominal.wall_mm) - nominal.wall_mm;
  const side = (read.depth_mm ?? nominal.depth_mm) - nominal.depth_mm;
  const wallOff = Math.abs(thin) > wallTolerance(nominal.wall_mm) + 1e-9;
  const sideOff = Math.abs(side) > sideTolerance(nominal.depth_mm) + 1e-9;
  if (!wallOff && !sideOff) return [];
  const plan = s.ramp.plans.get(rail);
  const fills = {
    rail,
    read: thickness(wallOff ? (read.wall_mm ?? 0) : (read.depth_mm ?? 0)),
    bought: thickness(wallOff ? nominal.wall_mm : nominal.depth_mm),
    within: thickness(wallOff ? wallTolerance(nominal.wall_mm) : sideTolerance(nominal.depth_mm)),
    count: plan?.slits.length ?? 0,
  };
  return [
    {
      key: `tube-off@${rail}`,
      stage: 'cut',
      severity: wallOff && thin < 0 ? 'fix' : 'watch',
      words: wallOff ? 'tube-wall-off' : 'tube-side-off',
      fills,
      tall: { v: wallOff ? thin : side, as: 'thickness', sign: true },
      worst_mm: Math.abs(wallOff ? thin : side),
      offers: [
        { remedy: 'tube-read-again', fills, minutes: 5, plan: { step: READINGS.tube(rail) } },
        { remedy: 'tube-replan', fills, minutes: 1, plan: { rail, ...read } },
        { remedy: 'tube-return', fills, minutes: 90, plan: { rail } },
        { remedy: 'leave-tube', fills, minutes: 0, plan: { rail } },
      ],
    },
  ];
};

/** Rails of different depth stand with their decks at different heights, whatever line their bottom faces lie on. */
const differFinding = (s: Situation): readonly Finding[] => {
  const depths = s.ramp.rails.flatMap(rail => {
    const depth_mm = s.measured.tubes.get(rail)?.depth_mm;
    return depth_mm === undefined ? [] : [{ rail, depth_mm }];
  });
  if (depths.length < 2) return [];
  const deep = depths.reduce((a, b) => (b.depth_mm > a.depth_mm ? b : a));
  const flat = depths.reduce((a, b) => (b.depth_mm < a.depth_mm ? b : a));
  const differ = deep.depth_mm - flat.depth_mm;
  if (differ <= DEPTHS_DIFFER) return [];
  const limit = RAIL_LIMIT[s.ramp.design.tolerance];
  const fills = { deep: deep.rail, flat: flat.rail, differ: thickness(differ) };
  const after = (v: number) => ({ v, as: 'length', within: v <= limit }) as const;
  return [
    {
      key: 'tubes-differ',
      stage: 'cut',
      severity: differ > limit ? 'fix' : 'watch',
      words: 'tubes-differ',
      fills,
      tall: { v: differ, as: 'thickness' },
      worst_mm: differ,
      limit: { v: limit, as: 'length' },
      offers: [
        ...(differ <= limit
          ? [{ remedy: 'leave-tubes', fills, minutes: 0, plan: {}, after: after(differ) }]
          : []),
        { remedy: 'tubes-one-bar', fills, minutes: 15, plan: { rails: s.ramp.rails }, after: after(0.1) },
        {
          remedy: 'tubes-pack',
          fills,
          minutes: 25,
          plan: { rail: flat.rail, pack_mm: differ },
          after: after(0.5),
        },
        ...(differ > limit
          ? [{ remedy: 'leave-tubes', fills, minutes: 0, plan: {}, after: after(differ) }]
          : []),
      ],
    },
  ];
};

/** What the caliper says about the steel that came. */
export const tubeFindings = (s: Situation): readonly Finding[] => [
  ...s.ramp.rails.flatMap(rail => offFinding(s, rail)),
  ...differFinding(s),
];

import type { RailName } from '../../ramp/design.ts';
import { planRail, type RailPlan } from '../../ramp/rail-plan.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { MATTERS } from './matters.ts';

/** Two-sided 95 % of a normal belief. */
const NINETY_FIVE = 1.96;

/** What one slit's weld adds as it cools, rad: 95 % of what is believed of it, likely value between. */
export const pullBand = (plan: RailPlan): { low: number; likely: number; high: number } => {
  const by = Math.exp(NINETY_FIVE * plan.pull.spread);
  return { low: plan.pull.rad / by, likely: plan.pull.rad, high: plan.pull.rad * by };
};

/** Slits the rail would take with the weld pull at the low and at the high end of what is believed. */
export const slitCountBand = (
  s: Situation,
  plan: RailPlan,
): { low: number; likely: number; high: number } => {
  const band = pullBand(plan);
  const count = (rad: number): number =>
    planRail(s.ramp.design, plan.rail, s.measured, { ...plan.pull, rad }).slits.length;
  const ends = [count(band.low), count(band.high)];
  return {
    low: Math.min(...ends, plan.slits.length),
    likely: plan.slits.length,
    high: Math.max(...ends, plan.slits.length),
  };
};

/** The numbers of one rail's plan; the slit figures only where there are slits. */
export const railFigures = (s: Situation, rail: RailName): readonly Figure[] => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined) return [];
  const bottom = { face: 'rail bottom face', rail } as const;
  const back = { face: 'hinge line', rail } as const;
  const figures: Figure[] = [
    {
      id: `rail-length@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: back,
      value: { is: 'exact', v: plan.cut_mm },
      matters: MATTERS.length,
    },
    {
      id: `rail-bend@${rail}`,
      kind: 'size',
      as: 'angle',
      value: { is: 'exact', v: plan.turn_rad },
      matters: MATTERS.angle,
    },
    {
      id: `finished-radius@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: bottom,
      value: { is: 'exact', v: plan.finished.radius_mm },
      matters: 1,
    },
  ];
  if (plan.slits.length === 0) return figures;
  const open = plan.slits.find(slit => slit.marked === null) ?? plan.slits.at(-1);
  const count = slitCountBand(s, plan);
  return [
    ...figures,
    {
      id: `tack-radius@${rail}`,
      kind: 'dimension',
      as: 'length',
      line: bottom,
      value: { is: 'exact', v: plan.tack.radius_mm },
      matters: 1,
    },
    {
      id: `slit-count@${rail}`,
      kind: 'size',
      as: 'count',
      value: { is: 'exact', v: plan.slits.length },
      matters: 0.5,
    },
    {
      id: `slit-count-band@${rail}`,
      kind: 'size',
      as: 'count',
      value: { is: 'band', ...count },
      matters: 0.5,
    },
    {
      id: `pitch@${rail}`,
      kind: 'dimension',
      as: 'slit',
      line: back,
      value: { is: 'exact', v: plan.pitch_mm },
      matters: 0.3,
    },
    {
      id: `close@${rail}`,
      kind: 'size',
      as: 'angle',
      value: { is: 'exact', v: open?.close_rad ?? 0 },
      matters: MATTERS.angle,
    },
    {
      id: `gap@${rail}`,
      kind: 'size',
      as: 'thickness',
      value: { is: 'exact', v: open?.gap_mm ?? 0 },
      matters: 0.05,
    },
    {
      id: `kerf@${rail}`,
      kind: 'size',
      as: 'thickness',
      value: { is: 'exact', v: plan.kerf_mm },
      matters: 0.05,
    },
    {
      id: `pull@${rail}`,
      kind: 'size',
      as: 'angle',
      value: { is: 'band', ...pullBand(plan) },
      matters: MATTERS.angle,
    },
  ];
};

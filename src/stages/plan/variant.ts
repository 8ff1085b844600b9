import { spotAtSlope } from '../../ramp/curve.ts';
import type { Answered, Tube } from '../../ramp/design.ts';
import { entryLength } from '../../ramp/members.ts';
import { type Problem, problemsOf } from '../../ramp/problems.ts';
import { curveOf, planRail, type RailPlan } from '../../ramp/rail-plan.ts';
import { type Design, settle } from '../../ramp/settle.ts';
import { believedPull } from '../../ramp/weld-pull.ts';
import type { Situation } from '../situation.ts';

/** The same ramp with some answers changed, as far as its first rail and its entry go. */
export type Variant = Readonly<{
  design: Design;
  plan: RailPlan;
  problems: readonly Problem[];
  entryShare: number;
}>;

/**
 * What the ramp would be with other answers: laid out afresh, with nothing marked. A tube or kerf that is changed counts as
 * changed in steel too, so what was measured of it is left out.
 * @returns null where the answers fix no curve, or where the change brings a new reason not to build
 */
export const variant = (s: Situation, change: Answered): Variant | null => {
  const measured = s.ramp.design.tube;
  const keepTube: Partial<Tube> = change.tube === undefined ? measured : {};
  const settled = settle(s.build.name, s.build.system, { ...s.build.answers, ...change }, keepTube);
  const rail = s.ramp.rails[0];
  if (!settled.ok || rail === undefined) return null;
  const d = settled.value;
  const m = {
    ...s.measured,
    marks: new Map(),
    ...(change.cutter === undefined ? {} : { kerf_mm: null }),
    ...(change.tube === undefined ? {} : { tubes: new Map() }),
  };
  const plan = planRail(d, rail, m, believedPull(d, m, rail));
  const problems = problemsOf(d, plan);
  const had = new Set(s.ramp.problems.map(p => p.code));
  if (problems.some(p => p.severity === 'refuse' && !had.has(p.code))) return null;
  const c = curveOf(d);
  return {
    design: d,
    plan,
    problems,
    entryShare: entryLength(d) / spotAtSlope(c, 0, c.exit_rad, c.straight_mm).x,
  };
};

export const hasProblem = (v: Variant, code: string): boolean => v.problems.some(p => p.code === code);

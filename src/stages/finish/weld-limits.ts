import { THROAT_OF_LEG, usualLeg } from '../../reckon/strength/joint-weld.ts';
import type { Figure } from '../sheet.ts';
import type { Situation } from '../situation.ts';

const INCH = 25.4;

/**
 * AWS D1.1, visual limits (table 6.1 to 2015, table 8.1 from 2020), mm. Undersize and convexity found; undercut across a
 * changing pull and pores along a fillet that is loaded again and again from memory. On walls of 3 mm and less the smaller
 * undercut counts whatever the pull (common practice).
 */
const AWS = {
  undercut_mm: INCH / 100,
  pore_mm: (3 / 32) * INCH,
  convex_mm: INCH / 16,
  short_share: 0.1,
} as const;

/** ISO 5817, level C, mm and shares of the wall or throat; all from memory. Thin: walls of 0.5 to 3 mm. */
const ISO = {
  thin_mm: 3,
  undercut: { share: 0.1, most_mm: 0.5 },
  pore: { share: 0.2, most_mm: 2 },
  short: { thin_mm: 0.2, thick_mm: 0.3, share: 0.1, most_mm: 1 },
  step: { thin_mm: 0.2, share: 0.15, most_mm: 4 },
} as const;

export type WeldLimits = Readonly<{
  /** Groove along the edge of a bead. */
  undercut_mm: number;
  /** Across one pore at the surface. */
  pore_mm: number;
  /** Leg of a fillet, all along. */
  leg_mm: number;
  /** What the throat may lack, over a tenth of the length at most. */
  short_mm: number;
  short_share: number;
  /** How far a bead may stand proud of flat. */
  proud_mm: number;
  /** Between the two faces of a slit. */
  step_mm: number;
}>;

/**
 * What a weld may show and pass, for a wall: the tighter of the two standards where both say something. A crack, a bead that did
 * not melt in, a crater not filled: none, at any size, in both.
 * @param wall_mm the thinner of the two walls that meet
 */
export const weldLimits = (wall_mm: number): WeldLimits => {
  const leg_mm = usualLeg(wall_mm);
  const throat = THROAT_OF_LEG * leg_mm;
  const thin = wall_mm <= ISO.thin_mm;
  return {
    undercut_mm: Math.min(AWS.undercut_mm, ISO.undercut.share * wall_mm, ISO.undercut.most_mm),
    pore_mm: Math.min(AWS.pore_mm, ISO.pore.share * throat, ISO.pore.most_mm),
    leg_mm,
    short_mm: thin
      ? ISO.short.thin_mm
      : Math.min(ISO.short.thick_mm + ISO.short.share * throat, ISO.short.most_mm),
    short_share: AWS.short_share,
    proud_mm: AWS.convex_mm,
    step_mm: Math.min(ISO.step.share * wall_mm + (thin ? ISO.step.thin_mm : 0), ISO.step.most_mm),
  };
};

/** The thinner wall of this build's joints, mm. */
export const thinnerWall = (s: Situation): number =>
  Math.min(s.ramp.design.tube.wall_mm, s.ramp.design.post.wall_mm);

/** A caliper tells so much, mm: less is no other limit. */
const MATTERS = 0.05;

export const weldLimitFigures = (s: Situation): readonly Figure[] => {
  const limits = weldLimits(thinnerWall(s));
  const slit = weldLimits(s.ramp.design.tube.wall_mm);
  const size = (id: string, v: number): Figure => ({
    id,
    kind: 'size',
    as: 'thickness',
    value: { is: 'exact', v },
    matters: MATTERS,
  });
  return [
    size('weld-groove', limits.undercut_mm),
    size('weld-pore', limits.pore_mm),
    size('weld-leg', limits.leg_mm),
    size('weld-short', limits.short_mm),
    size('weld-proud', limits.proud_mm),
    size('slit-step', slit.step_mm),
  ];
};

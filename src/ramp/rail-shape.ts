import { faceOffset, type Spot, spotAlong } from './curve.ts';
import type { MeasuredCurve } from './measured.ts';
import { curveOf, type RailPlan } from './rail-plan.ts';
import type { Design } from './settle.ts';

/** The bottom face of one rail as it stands: nominal, or bent by what was measured. */
export type RailShape = Readonly<{
  rail: string;
  /** Survey it stands on; null for the rail as drawn. */
  survey: string | null;
  /** The bottom face at a back-wall distance from the entry end, mm; slope in rad. */
  bottomAt: (along_mm: number) => Spot;
  /** How far it lies off its finished line there, + toward the centre, mm. */
  offsetAt: (along_mm: number) => number;
}>;

/** Straight line between stations, level past the ends. */
const between = (xs: readonly number[], ys: readonly number[], x: number): number => {
  const last = xs.length - 1;
  if (last < 0) return 0;
  if (x <= (xs[0] ?? 0)) return ys[0] ?? 0;
  for (let i = 1; i <= last; i++) {
    const x1 = xs[i] ?? 0;
    if (x <= x1) {
      const x0 = xs[i - 1] ?? 0;
      const t = x1 > x0 ? (x - x0) / (x1 - x0) : 0;
      return (ys[i - 1] ?? 0) * (1 - t) + (ys[i] ?? 0) * t;
    }
  }
  return ys[last] ?? 0;
};

/** Slope of the offsets at x by a least-squares line through the three nearest stations: one reading's rounding must not tilt a saw cut. */
const tilt = (xs: readonly number[], ys: readonly number[], x: number): number => {
  const count = xs.length;
  if (count < 2) return 0;
  // Stations rise, so the three nearest stand side by side: a window is moved on while its far end is nearer than its near one.
  let from = 0;
  while (from + 3 < count && Math.abs((xs[from + 3] ?? 0) - x) < Math.abs((xs[from] ?? 0) - x)) from++;
  const to = Math.min(count, from + 3);
  let meanS = 0;
  let meanO = 0;
  for (let i = from; i < to; i++) {
    meanS += (xs[i] ?? 0) / (to - from);
    meanO += (ys[i] ?? 0) / (to - from);
  }
  let top = 0;
  let under = 0;
  for (let i = from; i < to; i++) {
    const s = (xs[i] ?? 0) - meanS;
    top += s * ((ys[i] ?? 0) - meanO);
    under += s * s;
  }
  return under > 0 ? top / under : 0;
};

/** The rail as drawn. */
export const nominalShape = (d: Design, plan: RailPlan): RailShape =>
  shaped(
    d,
    plan,
    null,
    () => 0,
    () => 0,
  );

const shaped = (
  d: Design,
  plan: RailPlan,
  survey: string | null,
  offsetAt: (s: number) => number,
  tiltAt: (s: number) => number,
): RailShape => {
  // Its own tube: a deeper rail under the same deck lies lower.
  const c = curveOf({ ...d, tube: plan.tube });
  const o = faceOffset(c, 'rail bottom face');
  const hinge = c.radius_mm + faceOffset(c, 'hinge line');
  const stretch = (c.radius_mm + o) / hinge;
  return {
    rail: plan.rail,
    survey,
    offsetAt,
    bottomAt: along_mm => {
      const onFace =
        along_mm <= plan.bend_mm ? along_mm * stretch : plan.bend_mm * stretch + along_mm - plan.bend_mm;
      const spot = spotAlong(c, o, plan.start_rad, onFace);
      const off = offsetAt(along_mm);
      return {
        x: spot.x - off * Math.sin(spot.slope),
        y: spot.y + off * Math.cos(spot.slope),
        slope: spot.slope + tiltAt(along_mm),
      };
    },
  };
};

/** Offset of the tack line from the finished line at a back-wall distance, + toward the centre: less curl before the welds pull. */
export const tackLineOffset = (plan: RailPlan, along_mm: number): number => {
  // Exact difference of two circles that leave the entry end together, seen square to the finished one.
  const { radius_mm: R, turn_rad } = plan.finished;
  const r = plan.tack.radius_mm;
  const s = Math.min(along_mm, plan.bend_mm);
  const a = (turn_rad * s) / plan.bend_mm;
  const b = (plan.tack.turn_rad * s) / plan.bend_mm;
  const dx = r * Math.sin(b) - R * Math.sin(a);
  const dy = 2 * r * Math.sin(b / 2) ** 2 - 2 * R * Math.sin(a / 2) ** 2;
  const beyond = along_mm - s;
  const straight = beyond > 0 ? beyond * Math.sin(b - a) : 0;
  return -dx * Math.sin(a) + dy * Math.cos(a) + straight;
};

/** The rail as its counting survey found it; the offsets are along the line they were read to, stations along the bottom face. */
export const measuredShape = (d: Design, plan: RailPlan, curve: MeasuredCurve): RailShape => {
  const toHinge = plan.bend_mm / (plan.finished.radius_mm * plan.turn_rad);
  const xs = curve.stations_mm.map(s => s * toHinge);
  // What is still to be pulled in by welds is not there yet: a tacked rail is read to the tack line and is expected to come in.
  const ys = curve.offsets_mm;
  return shaped(
    d,
    plan,
    curve.survey,
    s => between(xs, ys, s),
    s => tilt(xs, ys, s),
  );
};

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { type Tube, tubeSection } from '../steel/section.ts';

/** Walls sold as 2 mm measure to this within the mill's ±10 % (EN 10219-2 [found]); a hand-held arc goes through most of them. */
const THIN_WALL_MM = 2.2;

/** Share of the wall that a closed slit's weld is counted to reach from outside, without and with a V [practice]. */
const CLOSED_SHARE = 0.5;
const OPENED_SHARE = 0.7;

/** Share of a slit's strength counted until the slit test piece of this welder passes [practice]. */
export const SLIT_DERATE = 0.5;

/**
 * Largest range of stress at a slit under repeated riding, MPa [practice]: a butt weld from one side with a root nobody
 * sees, category 36 of EN 1993-1-9 table 8.3 [memory], divided by 1.35.
 */
export const SLIT_RANGE_MPA = 80;

const CATEGORY_MPA = 36;
const FATIGUE_SAFETY = 1.35;
const CATEGORY_PASSES = 2e6;

/** Axles over the ramp in a keen family's summer: 100 jumps on 60 days, two axles each [practice]. */
export const PASSES_A_SUMMER = 12_000;

/** Axle passes that a slit bears at a range of stress in MPa: N = 2·10⁶ (36/1.35/Δσ)³, EN 1993-1-9 7.1 [memory]. */
export const passesAt = (range_MPa: number): number =>
  CATEGORY_PASSES * (CATEGORY_MPA / FATIGUE_SAFETY / Math.max(range_MPa, 1)) ** 3;

/**
 * Share of the wall that counts as weld at a closed slit: 0.5, 0.7 with a V opened along it after tacking, or in
 * walls of about 2 mm and less, which get no V [practice].
 * @param wall_mm the wall the strength is reckoned with
 * @param opened whether a V is opened along the closed slit
 */
export const throatShare = (wall_mm: number, opened: boolean): number =>
  opened || wall_mm <= THIN_WALL_MM ? OPENED_SHARE : CLOSED_SHARE;

/** A rail where a slit was closed and welded: three walls of weld, the back wall whole. Of the bare tube's own in `of_tube`. */
export type SlitSection = Readonly<{
  throat_mm: number;
  area_mm2: number;
  /** Middle of bending above the outside of the back wall. */
  axis_mm: number;
  inertia_mm4: number;
  /** To the top of the weld on the slit face, and to the back wall. */
  top_mm3: number;
  back_mm3: number;
  of_tube: Readonly<{ area: number; top: number; back: number }>;
}>;

/** A piece of the wall: area, height of its centre above the back, and second moment about its own centre. */
type Part = Readonly<{ area: number; y: number; own: number }>;

const rectangle = (width: number, height: number, y: number): Part => ({
  area: width * height,
  y,
  own: (width * height ** 3) / 12,
});

/** A quarter of a ring round a centre at height `y`, its body above (+1) or below (−1) it [plane geometry]. */
const corner = (outside: number, inside: number, y: number, side: 1 | -1): Part => {
  const area = (Math.PI / 4) * (outside ** 2 - inside ** 2);
  const centre = (4 / (3 * Math.PI)) * ((outside ** 3 - inside ** 3) / (outside ** 2 - inside ** 2));
  const aboutCentre = (Math.PI / 16) * (outside ** 4 - inside ** 4);
  return { area, y: y + side * centre, own: aboutCentre - area * centre ** 2 };
};

/**
 * The section of a rail at a closed, welded slit, bent in the plane of the curve. The weld stands in the middle of the
 * wall and is `throatShare` of it thick; the slit ends where the flat of the side turns into the back corner, so the back
 * wall and its corners are whole [derived from practice; gives the trade's shares of 40×40×3].
 * Refuses what `tubeSection` refuses.
 * @param tube depth in the plane of the curve
 * @param opened whether a V is opened along the closed slit
 */
export const slitSection = (tube: Tube, opened: boolean): Outcome<SlitSection> => {
  const whole = tubeSection(tube);
  if (!whole.ok) return whole;
  const { designWall_mm: wall, outsideRadius_mm: round } = whole.value;
  const depth = tube.depth_mm;
  const width = tube.width_mm ?? depth;
  const throat = throatShare(wall, opened) * wall;
  const flat = width - 2 * round;
  const middle = round - wall / 2;
  const parts = [
    rectangle(flat, wall, wall / 2),
    corner(round, round - wall, round, -1),
    corner(round, round - wall, round, -1),
    rectangle(2 * throat, depth - 2 * round, depth / 2),
    corner(middle + throat / 2, middle - throat / 2, depth - round, 1),
    corner(middle + throat / 2, middle - throat / 2, depth - round, 1),
    rectangle(flat, throat, depth - wall / 2),
  ];
  const total = (of: (part: Part) => number) => parts.reduce((sum, part) => sum + of(part), 0);
  const area_mm2 = total(part => part.area);
  const axis_mm = total(part => part.area * part.y) / area_mm2;
  const inertia_mm4 = total(part => part.own + part.area * (part.y - axis_mm) ** 2);
  const top_mm3 = inertia_mm4 / (depth - wall / 2 + throat / 2 - axis_mm);
  const back_mm3 = inertia_mm4 / axis_mm;
  if (!(top_mm3 > 0 && Number.isFinite(back_mm3)))
    return refuse('no-solution', 'wall_mm', 'A slit leaves nothing of this tube.', 'a tube of ordinary size');
  const tubeModulus = whole.value.elastic_mm3;
  return good({
    throat_mm: throat,
    area_mm2,
    axis_mm,
    inertia_mm4,
    top_mm3,
    back_mm3,
    of_tube: {
      area: area_mm2 / whole.value.area_mm2,
      top: top_mm3 / tubeModulus,
      back: back_mm3 / tubeModulus,
    },
  });
};

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { saidNumber } from '../numeric/said-number.ts';
import { wholeUp } from '../numeric/whole-up.ts';
import { amountFault } from './amount-fault.ts';
import { tubeFault } from './lines.ts';

export type SlitInput = Readonly<{
  /** Radius of the hinge line, the middle of the uncut back wall. */
  hingeRadius_mm: number;
  /** Bend the slits have to make. */
  turn_rad: number;
  depth_mm: number;
  wall_mm: number;
  /** Width of a slit as cut. */
  kerf_mm: number;
  /** Least gap left at a slit's mouth. */
  gap_mm: number;
  /** Bend that one slit adds as its weld cools. */
  pull_rad: number;
  /** A number of slits chosen by hand, at least as many as are needed. */
  count?: number;
}>;

export type SlitPlan = Readonly<{
  count: number;
  /** From slit to slit along the hinge line; the end flats are half of it. */
  pitch_mm: number;
  /** Bend asked of each slit before it is welded. */
  close_rad: number;
  /** Gap left at the slit face when it is bent so far, before welding. */
  faceGap_mm: number;
  /** How far a flat stands off the arc at its worst. */
  facetSag_mm: number;
  /** Length of the arc along the hinge line alone. */
  cutLength_mm: number;
  /** Middle of each slit along the hinge line from the start of the arc. */
  marks_mm: readonly number[];
}>;

/** More slits than any rail has; a kerf of nearly nothing would ask for millions. */
const MOST_SLITS = 10_000;

/**
 * The lever of a slit, in mm: from the hinge line to the slit's face, h = D − t/2 [derived]. The one formula for it:
 * a slit is cut just to the inside of the back wall, which bends about its own middle.
 */
export const slitLever = (depth_mm: number, wall_mm: number): number => depth_mm - wall_mm / 2;

/** The bend of one slit, in rad, that leaves `gap_mm` at its face: α = (k − g)/h, closed at g = 0 [derived]. */
export const slitClose = (kerf_mm: number, gap_mm: number, depth_mm: number, wall_mm: number): number =>
  (kerf_mm - gap_mm) / slitLever(depth_mm, wall_mm);

/** How far a flat of length `pitch_mm` stands off an arc of `radius_mm`, in mm: p²/8R [derived]. */
export const facetSag = (pitch_mm: number, radius_mm: number): number =>
  (pitch_mm / radius_mm) * (pitch_mm / 8);

/**
 * Where to slit a rail so that closing the slits bends it round: the fewest that close to no less than `gap_mm`, or
 * `count` when that is as many or more. Lengths in mm, angles in rad; `pull_rad` is positive when welding bends
 * the rail further.
 *
 * Refused: an amount not above 0 (out-of-range); a tube that is none, a gap as wide as the slit, a radius inside the tube (contradiction); a pull that bends
 * the rail further than wanted with nothing closed, slits that would run into each other (no-solution); a count
 * that is too small or too great (out-of-range); more than 10 000 slits (too-large).
 *
 * Each slit bends by turn/count, of which the weld adds the pull: close = turn/count − pull ≤ (k − g)/h [derived].
 */
export const slitPlan = (input: SlitInput): Outcome<SlitPlan> => {
  const { hingeRadius_mm, turn_rad, depth_mm, wall_mm, kerf_mm, gap_mm, pull_rad } = input;
  const fault =
    amountFault({ hingeRadius_mm, turn_rad, depth_mm, wall_mm, kerf_mm }) ??
    tubeFault(depth_mm, wall_mm) ??
    mouthFault(input);
  if (fault !== undefined) return fault;

  const mostClose = slitClose(kerf_mm, gap_mm, depth_mm, wall_mm);
  const fewest = fewestSlits(turn_rad, mostClose + pull_rad, pull_rad);
  if (!fewest.ok) return fewest;
  const count = input.count ?? fewest.value;
  const miscounted = countFault(count, fewest.value, turn_rad, pull_rad);
  if (miscounted !== undefined) return miscounted;

  const cutLength_mm = hingeRadius_mm * turn_rad;
  const pitch_mm = cutLength_mm / count;
  if (pitch_mm <= kerf_mm)
    return refuse(
      'no-solution',
      null,
      `${count} slits of ${saidNumber(kerf_mm)} mm do not fit into ${saidNumber(cutLength_mm)} mm of rail.`,
      'a greater radius, a shallower tube, a smaller gap, or fewer slits where the count was chosen by hand',
    );
  const close_rad = turn_rad / count - pull_rad;
  return good({
    count,
    pitch_mm,
    close_rad,
    // Where the slits come out whole, rounding must not leave less than the gap that was asked for.
    faceGap_mm: Math.max(gap_mm, kerf_mm - slitLever(depth_mm, wall_mm) * close_rad),
    facetSag_mm: facetSag(pitch_mm, hingeRadius_mm),
    cutLength_mm,
    marks_mm: Array.from({ length: count }, (_, slit) => (slit + 0.5) * pitch_mm),
  });
};

type Refusal = ReturnType<typeof refuse>;

const mouthFault = ({
  kerf_mm,
  gap_mm,
  hingeRadius_mm,
  depth_mm,
  wall_mm,
}: SlitInput): Refusal | undefined => {
  if (gap_mm >= kerf_mm)
    return refuse(
      'contradiction',
      'gap_mm',
      `A slit of ${saidNumber(kerf_mm)} mm cannot close and keep a gap of ${saidNumber(gap_mm)} mm.`,
      `a gap below ${saidNumber(kerf_mm)} mm, or a kerf above ${saidNumber(gap_mm)} mm`,
    );
  const lever_mm = slitLever(depth_mm, wall_mm);
  if (hingeRadius_mm <= lever_mm)
    return refuse(
      'contradiction',
      'hingeRadius_mm',
      `A hinge line of radius ${saidNumber(hingeRadius_mm)} mm puts the centre inside a tube ${saidNumber(depth_mm)} mm deep.`,
      `a hinge radius above ${saidNumber(lever_mm)} mm; it is the radius of the outer, uncut wall`,
    );
  return undefined;
};

/** The fewest slits, each bending by at most `share_rad` with its weld's pull in it. */
const fewestSlits = (turn_rad: number, share_rad: number, pull_rad: number): Outcome<number> => {
  if (share_rad <= 0)
    return refuse(
      'no-solution',
      'pull_rad',
      `Welds that open each slit by ${saidNumber(degrees(-pull_rad))}° take back all that a slit can close.`,
      `a pull above ${saidNumber(degrees(pull_rad - share_rad), 'up')}°, a wider kerf, or a smaller gap`,
    );
  const needed = turn_rad / share_rad;
  if (needed > MOST_SLITS)
    return refuse(
      'too-large',
      null,
      `This bend would take ${saidNumber(Math.ceil(needed))} slits.`,
      `a wider kerf, a smaller gap or a smaller bend: at most ${MOST_SLITS} slits`,
    );
  const count = Math.max(1, wholeUp(needed));
  if (turn_rad / count - pull_rad <= 0)
    return refuse(
      'no-solution',
      'pull_rad',
      `${count === 1 ? 'One weld' : `${count} welds`} would pull the rail past a bend of ${saidNumber(degrees(turn_rad))}° with nothing closed.`,
      `a pull below ${saidNumber(degrees(turn_rad / count), 'down')}° for each slit, or a greater bend`,
    );
  return good(count);
};

const countFault = (
  count: number,
  fewest: number,
  turn_rad: number,
  pull_rad: number,
): Refusal | undefined => {
  if (count < fewest)
    return refuse(
      'out-of-range',
      'count',
      `A count of ${count} is too small: each slit would have to close further than it can. ${fewest} are needed.`,
      `a whole number from ${fewest}`,
    );
  if (count > MOST_SLITS)
    return refuse(
      'too-large',
      'count',
      `A count of ${count} is more than any rail has.`,
      `at most ${MOST_SLITS} slits`,
    );
  if (turn_rad / count - pull_rad > 0) return undefined;
  const most = Math.ceil(turn_rad / pull_rad) - 1;
  return refuse(
    'out-of-range',
    'count',
    `A count of ${count} is too great: its welds would pull the rail past its bend with nothing closed.`,
    `a whole number from ${fewest} to ${most}`,
  );
};

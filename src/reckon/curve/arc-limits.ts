import { refuse } from '../../quantity/outcome.ts';
import { saidNumber } from '../numeric/said-number.ts';
import { riseShare, runLoss } from './arc-inverse.ts';

/** What the first of two values may be as a share of the second, for an arc of at most 120°. */
type Limit = Readonly<{ most: number; least?: number; why: string }>;

/** The largest exit angle an arc may have; past it a ramp curls back over itself. */
export const MOST_EXIT_rad = (2 * Math.PI) / 3;

/** Rounding, as a share, that may carry a value past its limit without being more. */
export const LIMIT_NOISE = 1e-12;

/** Every limit is the share that the pair has at 120°, but for run ≤ radius, which 90° reaches [derived]. */
const LIMITS: Readonly<Record<string, Limit>> = {
  'height_mm run_mm': { most: Math.tan(MOST_EXIT_rad / 2), why: 'the arc would have to turn past 120°' },
  'height_mm radius_mm': {
    most: 2 * Math.sin(MOST_EXIT_rad / 2) ** 2,
    why: 'an arc of 120° rises one and a half radii',
  },
  'height_mm arc_mm': {
    most: riseShare(MOST_EXIT_rad),
    why: 'an arc that starts level cannot rise so steeply',
  },
  'run_mm radius_mm': { most: 1, why: 'an arc that starts level runs one radius at most, at 90°' },
  'run_mm arc_mm': {
    most: 1,
    least: 1 - runLoss(MOST_EXIT_rad),
    why: 'an arc is longer than its run, and up to 120° not much more than twice as long',
  },
  'arc_mm radius_mm': { most: MOST_EXIT_rad, why: 'the arc would turn past 120°' },
  'sagitta_mm chord_mm': { most: Math.tan(MOST_EXIT_rad / 4) / 2, why: 'the arc would turn past 120°' },
};

const wordOf = (part: string): string => part.replace('_mm', '').replace('exit_rad', 'exit angle');

/** Why no arc of at most 120° has both values, with what either would have to be; undefined when one has. */
export const pairFault = (
  first: string,
  a: number,
  second: string,
  b: number,
): ReturnType<typeof refuse> | undefined => {
  const straight = LIMITS[`${first} ${second}`];
  const turned = LIMITS[`${second} ${first}`];
  if (straight !== undefined) return shareFault(straight, first, a, second, b);
  if (turned !== undefined) return shareFault(turned, second, b, first, a);
  return undefined;
};

const shareFault = (
  { most, least, why }: Limit,
  first: string,
  a: number,
  second: string,
  b: number,
): ReturnType<typeof refuse> | undefined => {
  const message = `No arc has a ${wordOf(first)} of ${saidNumber(a)} mm with ${article(second)} of ${saidNumber(b)} mm: ${why}.`;
  if (least !== undefined) {
    // The whole of the arc's length is run only on a straight line, which is no arc.
    if (a < most * b && a >= least * b * (1 - LIMIT_NOISE)) return undefined;
    const accepted =
      `${article(first)} from ${saidNumber(least * b, 'up')} to just below ${saidNumber(b)} mm, ` +
      `or ${article(second)} above ${saidNumber(a)} and at most ${saidNumber(a / least, 'down')} mm`;
    return refuse('no-solution', null, message, accepted);
  }
  if (a <= most * b * (1 + (most === 1 ? 0 : LIMIT_NOISE))) return undefined;
  return refuse(
    'no-solution',
    null,
    message,
    `${article(first)} of at most ${saidNumber(most * b, 'down')} mm, or ${article(second)} of at least ${saidNumber(a / most, 'up')} mm`,
  );
};

const article = (part: string): string => `${part === 'arc_mm' ? 'an' : 'a'} ${wordOf(part)}`;

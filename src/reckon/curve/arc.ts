import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { asinGuarded } from '../numeric/guarded-trig.ts';
import { exitOfRiseShare, exitOfRunLoss } from './arc-inverse.ts';
import { LIMIT_NOISE, MOST_EXIT_rad, pairFault } from './arc-limits.ts';

/**
 * A circular arc that leaves the ground level: height of its end above the start, run to the end measured along the
 * ground, radius, exit angle, arc length, and the chord from start to end with the sagitta on it.
 */
export type Arc = Readonly<{
  height_mm: number;
  run_mm: number;
  radius_mm: number;
  exit_rad: number;
  arc_mm: number;
  chord_mm: number;
  sagitta_mm: number;
}>;

export type ArcPart = keyof Arc;
export type ArcKnown = Readonly<Partial<Arc>>;

const FIVE: readonly ArcPart[] = ['height_mm', 'run_mm', 'radius_mm', 'exit_rad', 'arc_mm'];
const ON_A_CHORD: readonly ArcPart[] = ['chord_mm', 'sagitta_mm'];

const TAKEN = 'exactly two of height, run, radius, exit angle and arc, or a chord together with its sagitta';

type Solution = Readonly<{ radius_mm: number; exit_rad: number }>;
type Solve = (first: number, second: number) => Solution;

/**
 * Every pair, by its names in the order of `FIVE` [derived, textbook]. Half angles stand where a cosine would lose
 * its digits on a flat arc: 1 − cos θ = 2 sin²(θ/2).
 */
const SOLVE: Readonly<Record<string, Solve>> = {
  'height_mm run_mm': (height, run) => ({
    radius_mm: (Math.hypot(height, run) / (2 * height)) * Math.hypot(height, run),
    exit_rad: 2 * Math.atan2(height, run),
  }),
  'height_mm radius_mm': (height, radius) => ({
    radius_mm: radius,
    exit_rad: 2 * asinGuarded(Math.sqrt(height / (2 * radius))),
  }),
  'height_mm exit_rad': (height, exit) => ({
    radius_mm: height / (2 * Math.sin(exit / 2) ** 2),
    exit_rad: exit,
  }),
  'height_mm arc_mm': (height, arc) => fromArc(arc, exitOfRiseShare(height / arc, MOST_EXIT_rad)),
  // atan2 keeps its digits near 90°, where asin(run / radius) has none to spare.
  'run_mm radius_mm': (run, radius) => ({
    radius_mm: radius,
    exit_rad: Math.atan2(run, Math.sqrt((radius - run) * (radius + run))),
  }),
  'run_mm exit_rad': (run, exit) => ({ radius_mm: run / Math.sin(exit), exit_rad: exit }),
  // arc − run is exact where the two are close, which run / arc is not: the difference carries the whole answer.
  'run_mm arc_mm': (run, arc) => fromArc(arc, exitOfRunLoss((arc - run) / arc, MOST_EXIT_rad)),
  'radius_mm exit_rad': (radius, exit) => ({ radius_mm: radius, exit_rad: exit }),
  'radius_mm arc_mm': (radius, arc) => ({ radius_mm: radius, exit_rad: arc / radius }),
  'exit_rad arc_mm': (exit, arc) => ({ radius_mm: arc / exit, exit_rad: exit }),
  'chord_mm sagitta_mm': (chord, sagitta) => ({
    radius_mm: chord * (chord / (8 * sagitta)) + sagitta / 2,
    exit_rad: 4 * Math.atan2(2 * sagitta, chord),
  }),
};

const fromArc = (arc_mm: number, exit_rad: number): Solution => ({ radius_mm: arc_mm / exit_rad, exit_rad });

const whole = (radius_mm: number, exit_rad: number): Arc => ({
  height_mm: 2 * radius_mm * Math.sin(exit_rad / 2) ** 2,
  run_mm: radius_mm * Math.sin(exit_rad),
  radius_mm,
  exit_rad,
  arc_mm: radius_mm * exit_rad,
  chord_mm: 2 * radius_mm * Math.sin(exit_rad / 2),
  sagitta_mm: 2 * radius_mm * Math.sin(exit_rad / 4) ** 2,
});

/**
 * The whole arc from any two of its height, run, radius, exit angle and arc length, or from a chord and its sagitta:
 * lengths in mm, exit angle in rad, 0 < exit ≤ 120°. What was given comes back unchanged.
 * Where run and radius fit a second arc within 120°, the flatter one is given and the steeper stands under `other`.
 *
 * Refused: fewer than two values (missing-field), more (too-many-values), a value that is no length or angle
 * (out-of-range), two values that no such arc has (no-solution; the fault says which to change, and to what).
 *
 * H = R(1 − cos θ), L = R sin θ, s = Rθ, c = 2R sin(θ/2), m = R(1 − cos(θ/2)) [derived, textbook].
 */
export const arcFrom = (known: ArcKnown): Outcome<Arc & Readonly<{ other?: Arc }>> => {
  const given = (Object.keys(known) as ArcPart[]).filter(part => known[part] !== undefined);
  const pair = pairOf(given);
  if (!pair.ok) return pair;
  const [first, second] = pair.value;
  const a = known[first] as number;
  const b = known[second] as number;
  for (const part of given) {
    const fault = valueFault(part, known[part] as number);
    if (fault !== undefined) return fault;
  }
  const apart = pairFault(first, a, second, b);
  if (apart !== undefined) return apart;

  const solved = (SOLVE[`${first} ${second}`] as Solve)(a, b);
  // Values a last bit past their limit were let through: the limit itself is meant.
  const exit_rad = Math.min(solved.exit_rad, MOST_EXIT_rad);
  const arc = { ...whole(solved.radius_mm, exit_rad), [first]: a, [second]: b };
  if (!Object.values(arc).every(value => Number.isFinite(value) && value > 0))
    return refuse(
      'no-solution',
      null,
      'These two values are too far apart in size to be reckoned with.',
      'two values that belong to one arc, neither of them as good as nothing beside the other',
    );
  const other = otherArc(first, second, arc);
  return good(other === undefined ? arc : { ...arc, other });
};

/** Run and radius fit two arcs, one each side of 90°. Run and arc do not: sin θ / θ only falls below 180°. */
const otherArc = (first: ArcPart, second: ArcPart, arc: Arc): Arc | undefined => {
  if (first !== 'run_mm' || second !== 'radius_mm') return undefined;
  const exit_rad = Math.PI - arc.exit_rad;
  if (exit_rad <= arc.exit_rad || exit_rad > MOST_EXIT_rad * (1 + LIMIT_NOISE)) return undefined;
  return { ...whole(arc.radius_mm, Math.min(exit_rad, MOST_EXIT_rad)), run_mm: arc.run_mm };
};

/** The two names in the order of the table, or what is wrong with the choice of values. */
const pairOf = (given: readonly ArcPart[]): Outcome<readonly [ArcPart, ArcPart]> => {
  const third = given[2];
  if (third !== undefined)
    return refuse(
      'too-many-values',
      third,
      `Two values make an arc, and ${given.length} were given.`,
      `${TAKEN}; leave the others out`,
    );
  const lone = given.find(part => ON_A_CHORD.includes(part));
  const chord = ON_A_CHORD.every(part => given.includes(part));
  if (lone !== undefined && !chord) {
    const missing = lone === 'chord_mm' ? 'sagitta' : 'chord';
    return refuse(
      'missing-field',
      `${missing}_mm`,
      `A ${lone === 'chord_mm' ? 'chord' : 'sagitta'} is only taken together with its ${missing}.`,
      TAKEN,
    );
  }
  if (given.length < 2)
    return refuse(
      'missing-field',
      null,
      given.length === 0 ? 'An arc needs two of its numbers.' : 'An arc needs one more of its numbers.',
      TAKEN,
    );
  const order = chord ? ON_A_CHORD : FIVE;
  const [first, second] = order.filter(part => given.includes(part));
  return good([first as ArcPart, second as ArcPart]);
};

const valueFault = (part: ArcPart, value: number): ReturnType<typeof refuse> | undefined => {
  if (part === 'exit_rad') {
    if (value > 0 && value <= MOST_EXIT_rad * (1 + LIMIT_NOISE)) return undefined;
    return refuse(
      'out-of-range',
      part,
      `An exit angle of ${degrees(value)}° is not one a ramp can have.`,
      'an exit angle above 0° and at most 120°',
    );
  }
  if (value > 0 && Number.isFinite(value)) return undefined;
  return refuse('out-of-range', part, `A length of ${value} mm makes no arc.`, 'a length above 0 mm');
};

/**
 * How far the radius moves, in mm, for each mm the run is read too long when run and arc length are what is known:
 * 1/(sin θ − θ cos θ) [derived]. 6.6 at 45° and far more on a flat arc, so that pair is better not relied on.
 */
export const radiusPerRun = (exit_rad: number): number =>
  1 / (Math.sin(exit_rad) - exit_rad * Math.cos(exit_rad));

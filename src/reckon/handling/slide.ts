import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** Friction of what a frame is slid on, from the slipperiest to the grippiest of its kind. */
export type Ground =
  | 'concrete'
  | 'boards'
  | 'dry grass'
  | 'wet grass'
  | 'firm soil'
  | 'gravel'
  | 'feet dug in'
  | 'snow'
  | 'wheels on grass';

/** Ranges of steel skids and feet, and of a dolly [practice]. A pull measured on the spot replaces them. */
export const FRICTION: Readonly<Record<Ground, Readonly<{ low: number; high: number }>>> = {
  concrete: { low: 0.4, high: 0.6 },
  boards: { low: 0.25, high: 0.4 },
  'dry grass': { low: 0.3, high: 0.5 },
  'wet grass': { low: 0.2, high: 0.35 },
  'firm soil': { low: 0.4, high: 0.6 },
  gravel: { low: 0.5, high: 0.7 },
  'feet dug in': { low: 0.8, high: 1.2 },
  snow: { low: 0.05, high: 0.15 },
  'wheels on grass': { low: 0.08, high: 0.15 },
};

/** A start takes this much more than keeping it going [practice]. */
const STARTING = { low: 1.2, high: 1.3 } as const;

/** What one person may push or pull to start a load, N: HSE, 20 kg for a man, 15 for a woman [found]. */
export const START_PULL_N = { man: 20 * GRAVITY_m_s2, woman: 15 * GRAVITY_m_s2 } as const;

export type SlideInput = Readonly<{
  mass_kg: number;
  /** Up the slope +, down it −. */
  slope_rad: number;
  friction: Readonly<{ low: number; high: number }>;
  /** Of the rope above the slope; along it when left out. */
  rope_rad?: number | undefined;
}>;

export type Pull = Readonly<{ low: number; high: number }>;

export type Slide = Readonly<{
  keep_going_N: Pull;
  start_N: Pull;
  /** To keep it from going down the same slope faster than wanted: least on the grippiest ground; 0 where it stays by itself. */
  hold_N: Pull;
  /** It may go by itself: hold it back, nobody below. */
  runs_away: boolean;
  /** The rope's best angle above the slope, for the grippier ground. */
  best_rope_rad: number;
}>;

/**
 * The pull that slides a frame: W(sinα + μ cosα)/(cosβ + μ sinβ), best at β = atan μ, a page on pulled sleds [found]. Held back
 * down the slope by a rope along it: W(sinα − μ cosα) [derived].
 * Refuses out-of-range for a mass, slope, friction or rope angle that is none.
 */
export const slide = ({ mass_kg, slope_rad, friction, rope_rad = 0 }: SlideInput): Outcome<Slide> => {
  if (!(mass_kg > 0 && mass_kg <= 5000))
    return refuse('out-of-range', 'mass_kg', `No frame weighs ${mass_kg} kg.`, 'above 0, at most 5000 kg');
  if (!(Math.abs(slope_rad) <= Math.PI / 4))
    return refuse(
      'out-of-range',
      'slope_deg',
      'Nothing is slid on such a slope.',
      'at least -45, at most 45°',
    );
  if (!(friction.low >= 0 && friction.high >= friction.low && friction.high <= 2))
    return refuse(
      'out-of-range',
      'friction',
      'That is no band of friction.',
      'from 0 up to 2, the lower first',
    );
  if (!(rope_rad >= 0 && rope_rad <= Math.PI / 3))
    return refuse(
      'out-of-range',
      'rope_deg',
      'A rope so steep lifts rather than pulls.',
      'at least 0, at most 60°',
    );

  const weight_N = mass_kg * GRAVITY_m_s2;
  const pull = (mu: number): number =>
    Math.max(
      0,
      (weight_N * (Math.sin(slope_rad) + mu * Math.cos(slope_rad))) /
        (Math.cos(rope_rad) + mu * Math.sin(rope_rad)),
    );
  const hold = (mu: number): number =>
    Math.max(0, weight_N * (Math.sin(Math.abs(slope_rad)) - mu * Math.cos(slope_rad)));
  const keep_going_N = { low: pull(friction.low), high: pull(friction.high) };
  return good({
    keep_going_N,
    start_N: { low: keep_going_N.low * STARTING.low, high: keep_going_N.high * STARTING.high },
    hold_N: { low: hold(friction.high), high: hold(friction.low) },
    runs_away: Math.abs(Math.tan(slope_rad)) > friction.low,
    best_rope_rad: Math.atan(friction.high),
  });
};

import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { wholeUp } from '../numeric/whole-up.ts';

/** Where the hands are, by the zones of HSE's lifting filter. */
export type Zone =
  | 'above the shoulder'
  | 'shoulder to elbow'
  | 'elbow to knuckle'
  | 'knuckle to mid-leg'
  | 'below mid-leg';

type Pair = Readonly<{ close: number; arm_out: number }>;

const pair = (close: number, arm_out: number): Pair => ({ close, arm_out });

/**
 * Loads, kg, under which HSE looks no closer, for a man and for a woman: HSE INDG143 [memory; the method of zones
 * found]. "Not safe limits", says HSE itself.
 */
export const LIFTING_FILTER_kg: Readonly<Record<'man' | 'woman', Readonly<Record<Zone, Pair>>>> = {
  man: {
    'above the shoulder': pair(10, 5),
    'shoulder to elbow': pair(20, 10),
    'elbow to knuckle': pair(25, 15),
    'knuckle to mid-leg': pair(20, 10),
    'below mid-leg': pair(10, 5),
  },
  woman: {
    'above the shoulder': pair(7, 3),
    'shoulder to elbow': pair(13, 7),
    'elbow to knuckle': pair(16, 10),
    'knuckle to mid-leg': pair(13, 7),
    'below mid-leg': pair(7, 3),
  },
};

/** What of one person's load each can take when several lift together: HSE L23 for two [memory]. */
const SHARED = 2 / 3;
/** From so many people the load goes on a trolley or a sled [practice]. */
const TROLLEY_FROM = 4;

export type TeamInput = Readonly<{
  mass_kg: number;
  /** The load one of them may take alone; a man's, at the waist, when left out. */
  alone_kg?: number | undefined;
}>;

export type Team = Readonly<{
  people: number;
  each_kg: number;
  /** Rather than lifted by so many, it is rolled. */
  trolley: boolean;
}>;

/**
 * How many people carry a frame: mass ÷ (⅔ of what one may take alone), never fewer than two: bench rule [practice]. A
 * part that one may take alone still gets two, for its length.
 * Refuses out-of-range for a mass or load that is none.
 */
export const team = ({
  mass_kg,
  alone_kg = LIFTING_FILTER_kg.man['elbow to knuckle'].close,
}: TeamInput): Outcome<Team> => {
  if (!(mass_kg > 0 && mass_kg <= 5000))
    return refuse('out-of-range', 'mass_kg', `Nobody carries ${mass_kg} kg.`, 'above 0, at most 5000 kg');
  if (!(alone_kg >= 1 && alone_kg <= 25))
    return refuse(
      'out-of-range',
      'alone_kg',
      `${alone_kg} kg is no load for one person here.`,
      'at least 1, at most 25 kg',
    );
  const people = Math.max(2, wholeUp(mass_kg / (SHARED * alone_kg)));
  return good({ people, each_kg: mass_kg / people, trolley: people >= TROLLEY_FROM });
};

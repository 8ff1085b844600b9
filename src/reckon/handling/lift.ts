import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { degrees } from '../numeric/angle.ts';
import { frequencyMultiplier } from './frequency.ts';

/** How hands hold: Applications Manual, coupling. A tube frame without handles is poor. */
export type Grip = 'good' | 'fair' | 'poor';

export const GRIPS: readonly Grip[] = ['good', 'fair', 'poor'];

/** What is taken; past the equation's own limits a multiplier is 0, which is an answer. Judgement. */
export const LIFT_LIMITS = {
  load_kg: { above: 0, atMost: 1000 },
  hands_from_body_mm: { above: 0, atMost: 3000 },
  hands_height_mm: { atLeast: 0, atMost: 3000 },
  raise_mm: { atLeast: -3000, atMost: 3000 },
  twist_deg: { atLeast: 0, atMost: 180 },
  lifts_per_min: { atLeast: 0, atMost: 60 },
  hours: { above: 0, atMost: 8 },
} as const;

export type LiftInput = Readonly<{
  load_kg: number;
  /** Middle of the hands ahead of the ankles. */
  hands_from_body_mm: number;
  /** Hands above the floor at the start. */
  hands_height_mm: number;
  /** How far the hands go up, − down. */
  raise_mm: number;
  /** Of the body out of straight ahead. */
  twist_rad: number;
  lifts_per_min: number;
  /** Of such lifting in a day. */
  hours: number;
  grip: Grip;
}>;

export type Lift = Readonly<{
  horizontal: number;
  vertical: number;
  distance: number;
  twist: number;
  frequency: number;
  coupling: number;
  /** Recommended weight limit. */
  limit_kg: number;
  /** Load ÷ limit: 1 is the aim, past 3 most people are at risk. null where no load is within the limit. */
  index: number | null;
}>;

/** Load constant, kg. */
const LOAD_kg = 23;

/** Coupling multiplier: hands below 75 cm, and from there up. Fair found, the rest memory (94-110, Table 7). */
const COUPLING: Readonly<Record<Grip, readonly [low: number, high: number]>> = {
  good: [1, 1],
  fair: [0.95, 1],
  poor: [0.9, 0.9],
};

/**
 * The revised lifting equation of NIOSH, metric form: DHHS (NIOSH) 94-110, in a public transcription (rev. 9/2021)
 * [found]. For one person, two hands, standing free; not for team lifts, carrying, kneeling or slippery floors: a guide
 * there at most [memory]. Nothing is rounded.
 * Refuses out-of-range for each value past its limit, or hands that would end below the floor.
 */
export const lift = (input: LiftInput): Outcome<Lift> => {
  const wrong = firstWrong(input);
  if (wrong !== undefined) return wrong;

  const { load_kg, hands_from_body_mm, hands_height_mm, raise_mm, lifts_per_min, hours, grip } = input;
  const away_cm = hands_from_body_mm / 10;
  const height_cm = hands_height_mm / 10;
  const way_cm = Math.max(25, Math.abs(raise_mm) / 10);
  const twist_deg = degrees(input.twist_rad);

  const horizontal = away_cm > 63 ? 0 : 25 / Math.max(25, away_cm);
  const vertical = height_cm > 175 ? 0 : 1 - 0.003 * Math.abs(height_cm - 75);
  const distance = way_cm > 175 ? 0 : 0.82 + 4.5 / way_cm;
  const twist = twist_deg > 135 + NOISE ? 0 : 1 - 0.0032 * twist_deg;
  const frequency = frequencyMultiplier(lifts_per_min, hours, hands_height_mm);
  const coupling = COUPLING[grip][height_cm < 75 ? 0 : 1];
  const limit_kg = LOAD_kg * horizontal * vertical * distance * twist * frequency * coupling;
  return good({
    horizontal,
    vertical,
    distance,
    twist,
    frequency,
    coupling,
    limit_kg,
    index: limit_kg === 0 ? null : load_kg / limit_kg,
  });
};

/** A twist comes in radians and may miss its limit by a last bit. */
const NOISE = 1e-9;

const firstWrong = (input: LiftInput): ReturnType<typeof refuse> | undefined => {
  const values = { ...input, twist_deg: degrees(input.twist_rad) };
  for (const [field, limit] of Object.entries(LIFT_LIMITS) as [keyof typeof LIFT_LIMITS, Limit][]) {
    const value = values[field];
    const low = limit.above !== undefined ? value > limit.above : value >= (limit.atLeast ?? 0) - NOISE;
    if (low && value <= limit.atMost + NOISE) continue;
    const from = limit.above !== undefined ? `above ${limit.above}` : `at least ${limit.atLeast}`;
    return refuse(
      'out-of-range',
      field,
      `No lift has ${field} ${value}.`,
      `${from}, at most ${limit.atMost}`,
    );
  }
  return input.hands_height_mm + input.raise_mm < 0
    ? refuse(
        'out-of-range',
        'raise_mm',
        'The hands would end below the floor.',
        `at least ${-input.hands_height_mm} mm from this height`,
      )
    : undefined;
};

type Limit = Readonly<{ above?: number; atLeast?: number; atMost: number }>;

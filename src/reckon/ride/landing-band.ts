import { good, type Outcome } from '../../quantity/outcome.ts';
import { type Drag, dragPerMetre } from './air.ts';
import { flight } from './flight.ts';
import { flightPath } from './flight-path.ts';
import { fallHeight, type Ground, landingOf } from './landing.ts';
import { wheelLag } from './wheel-lag.ts';

/**
 * Speed across the lip that riders add by springing (+) or soaking up (−) the take-off, m/s: McNeil, "Modelling the
 * pop in winter terrain park jumps" (2011), abstract [found]. Skiers; nothing as good is known for wheels.
 */
export const RIDER_SPRING_m_s = { least: -2.48, most: 1.12 } as const;

/** How far off a telephone or a cheap bike computer reads, m/s: 2 km/h [practice]. */
export const SPEED_READ_m_s = 2 / 3.6;

export type LandingBandInput = Ground &
  Drag &
  Readonly<{
    /** Along the lip as the rider leaves it. */
    speed_m_s: number;
    exit_rad: number;
    /** Of the line the tyres follow. */
    radius_m: number;
    /** Between the axles, or the trucks of a board. */
    wheelbase_m: number;
    /** Straight last part of the lip; 0 when the curve goes on to the lip. */
    straight_m?: number | undefined;
    /** Of the speed at the lip, either way; a reading of 2 km/h when left out. */
    speed_error_m_s?: number | undefined;
    spring_m_s?: Readonly<{ least: number; most: number }> | undefined;
  }>;

/** Nearest and farthest landing, m ahead of the lip. */
export type Reach = Readonly<{ near_m: number; far_m: number }>;

export type LandingBand = Readonly<{
  /** What plain ballistics says: inside the band, and never to be shown alone. */
  plain_m: number;
  /** How far below the lip's own angle the launch may be. */
  lag_rad: number;
  /** Each cause alone. */
  by_angle: Reach;
  by_spring: Reach;
  by_speed: Reach;
  /** All at once. */
  all: Reach;
  /** The hardest landing in the band; of the landings that are reached. */
  worst_fall_m: number;
  /** Some of the band comes down before the knuckle, or never up to the landing. */
  may_fall_short: boolean;
}>;

/** Steps across each cause. The ends alone would miss the farthest landing, which past 45° lies between them. */
const STEPS = 6;

/**
 * Where a rider may land: between the lip's angle and half the lag of two wheels on a curve, with what riders add at
 * the lip, and with the speed as well as it is known.
 * Refuses what flight refuses, and out-of-range for a wheelbase that does not fit the curve.
 * A spring p square to the lip gives vx = v cosθ − p sinθ, vy = v sinθ + p cosθ [derived].
 */
export const landingBand = (input: LandingBandInput): Outcome<LandingBand> => {
  const { speed_m_s, exit_rad, spring_m_s = RIDER_SPRING_m_s, speed_error_m_s = SPEED_READ_m_s } = input;
  const plain = flight(input);
  if (!plain.ok) return plain;
  const lag = wheelLag(input.wheelbase_m, input.radius_m, input.straight_m ?? 0);
  if (!lag.ok) return lag;

  const angles = spread(exit_rad - lag.value, exit_rad);
  const springs = spread(spring_m_s.least, spring_m_s.most);
  const speeds = spread(Math.max(0, speed_m_s - speed_error_m_s), speed_m_s + speed_error_m_s);
  const from = (speed: number, angle: number, spring: number) => landed(input, speed, angle, spring);

  const all = speeds.flatMap(speed =>
    angles.flatMap(angle => springs.map(spring => from(speed, angle, spring))),
  );
  return good({
    plain_m: plain.value.distance_m,
    lag_rad: lag.value,
    by_angle: reach(angles.map(angle => from(speed_m_s, angle, 0))),
    by_spring: reach(springs.map(spring => from(speed_m_s, exit_rad, spring))),
    by_speed: reach(speeds.map(speed => from(speed, exit_rad, 0))),
    all: reach(all),
    worst_fall_m: Math.max(...all.map(one => one.fall_m)),
    may_fall_short: all.some(one => one.short),
  });
};

const spread = (least: number, most: number): readonly number[] =>
  Array.from({ length: STEPS + 1 }, (_, n) => least + ((most - least) * n) / STEPS);

type Landed = Readonly<{ distance_m: number; fall_m: number; short: boolean }>;

const NOWHERE: Landed = { distance_m: 0, fall_m: 0, short: true };

const landed = (input: LandingBandInput, speed: number, angle: number, spring: number): Landed => {
  const forward = speed * Math.cos(angle) - spring * Math.sin(angle);
  const up = speed * Math.sin(angle) + spring * Math.cos(angle);
  // A spring stronger than the speed would throw the rider back onto the ramp.
  if (forward <= 0) return NOWHERE;
  const landing = landingOf(flightPath(forward, up, dragPerMetre(input)), input);
  return landing.ends === 'below'
    ? NOWHERE
    : {
        distance_m: landing.at.x_m,
        fall_m: fallHeight(landing.at, landing.slope_rad),
        short: landing.ends === 'short',
      };
};

const reach = (landings: readonly Landed[]): Reach => ({
  near_m: Math.min(...landings.map(one => one.distance_m)),
  far_m: Math.max(...landings.map(one => one.distance_m)),
});

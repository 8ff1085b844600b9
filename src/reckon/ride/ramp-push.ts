import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { climb, loadFactor } from './climb.ts';

export type RampPushInput = Readonly<{
  rider_kg: number;
  speed_m_s: number;
  radius_m: number;
  exit_rad: number;
  ramp_kg: number;
  /** Between the ramp's feet and the ground. */
  friction: number;
  /** From the entry edge to the foot under the lip. */
  base_m: number;
  /** The lip above the ground. */
  lip_m: number;
  /** The ramp's centre of mass before the foot under the lip. */
  centre_m: number;
}>;

/** A rider's push on the ramp at one place: forward and down +. */
export type Push = Readonly<{ normal_N: number; forward_N: number; down_N: number }>;

export type RampPush = Readonly<{
  start: Push;
  lip: Push;
  /** Friction that alone would hold the ramp with the rider at the lip. */
  friction_needed: number;
  /** What anchors must hold beyond friction against sliding; 0 when it holds itself. */
  slide_short_N: number;
  /** What anchors must hold down at the entry edge, which lifts as the rider loads the lip; 0 when it stays. */
  hold_down_N: number;
}>;

/**
 * What a rider does to a ramp that stands on its own: it slides forward and its entry edge lifts. Static, which is on
 * the safe side of a push of a tenth of a second; before any factor.
 * Refuses what climb refuses, and out-of-range for a mass, friction or length that is none.
 * N = mg(cosφ + v²/gR) without losses, across the curve [textbook]; statics about the foot under the lip [derived].
 */
export const rampPush = (input: RampPushInput): Outcome<RampPush> => {
  const { rider_kg, speed_m_s, radius_m, exit_rad, ramp_kg, friction, base_m, lip_m, centre_m } = input;
  const climbed = climb({ speed_m_s, radius_m, exit_rad });
  if (!climbed.ok) return climbed;
  for (const [field, value, least, most] of [
    ['rider_kg', rider_kg, 1, 1000],
    ['ramp_kg', ramp_kg, 1, 10_000],
    ['friction', friction, 0, 5],
    ['base_m', base_m, 0.1, 100],
    ['lip_m', lip_m, 0, 100],
    ['centre_m', centre_m, 0, 100],
  ] as const)
    if (!(value >= least && value <= most))
      return refuse('out-of-range', field, `${value} is no such number of a ramp.`, `${least} to ${most}`);

  const weight_N = rider_kg * GRAVITY_m_s2;
  const pushAt = (square: number, turned: number): Push => {
    const normal_N = weight_N * loadFactor(square, radius_m, turned);
    return { normal_N, forward_N: normal_N * Math.sin(turned), down_N: normal_N * Math.cos(turned) };
  };
  const start = pushAt(speed_m_s ** 2, 0);
  const lip = pushAt(climbed.value.exit_speed_m_s ** 2, exit_rad);
  const ramp_N = ramp_kg * GRAVITY_m_s2;
  return good({
    start,
    lip,
    friction_needed: lip.forward_N / (ramp_N + lip.down_N),
    slide_short_N: Math.max(0, lip.forward_N - friction * (ramp_N + lip.down_N)),
    hold_down_N: Math.max(0, (lip.forward_N * lip_m - ramp_N * centre_m) / base_m),
  });
};

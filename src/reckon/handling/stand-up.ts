import { GRAVITY_m_s2 } from '../../quantity/gravity.ts';
import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

export type StandUpInput = Readonly<{
  mass_kg: number;
  /** Centre of mass from the edge it turns about, along the frame as it lies. */
  along_mm: number;
  /** The same above the ground as it lies. */
  above_mm: number;
  /** Hands from that edge, along the frame. */
  hands_mm: number;
}>;

/** A force of the hands, square to the frame, at an angle it has been raised to. */
export type Hold = Readonly<{ raised_rad: number; force_N: number }>;

export type StandUp = Readonly<{
  /** Every five degrees from lying to the balance, then the balance itself. */
  holds: readonly Hold[];
  /** To get it off the ground: the heaviest moment. */
  start_N: number;
  /** Past this it falls over to the other side by itself: a line or a helper stands there. */
  balance_rad: number;
  /** Least friction under the edge that keeps it from sliding away on the way up; else chock it. */
  friction_needed: number;
}>;

const STEP_rad = Math.PI / 36;

/**
 * What standing a frame up about one edge asks of the hands: F(θ) = W(x cosθ − z sinθ)/L, square to the lever; balance
 * at atan(x/z); the edge holds while F sinθ ≤ μ(W − F cosθ) [derived].
 * Refuses out-of-range for a mass or length that is none.
 */
export const standUp = ({ mass_kg, along_mm, above_mm, hands_mm }: StandUpInput): Outcome<StandUp> => {
  if (!(mass_kg > 0 && mass_kg <= 2000))
    return refuse('out-of-range', 'mass_kg', `No frame weighs ${mass_kg} kg.`, 'above 0, at most 2000 kg');
  for (const [field, value, least] of [
    ['along_mm', along_mm, 1],
    ['above_mm', above_mm, 0],
    ['hands_mm', hands_mm, 1],
  ] as const)
    if (!(value >= least && value <= 20_000))
      return refuse(
        'out-of-range',
        field,
        `No frame has ${field} ${value}.`,
        `at least ${least}, at most 20000 mm`,
      );
  if (hands_mm < along_mm)
    return refuse(
      'out-of-range',
      'hands_mm',
      'Hands between the edge and the centre of mass carry more than the frame.',
      `at least ${along_mm} mm, the centre of mass or beyond`,
    );

  const weight_N = mass_kg * GRAVITY_m_s2;
  const balance_rad = Math.atan2(along_mm, above_mm);
  const forceAt = (raised: number): number =>
    (weight_N * (along_mm * Math.cos(raised) - above_mm * Math.sin(raised))) / hands_mm;
  const angles = Array.from({ length: Math.ceil(balance_rad / STEP_rad - 1e-9) }, (_, n) => n * STEP_rad);
  const holds = angles.map(raised_rad => ({ raised_rad, force_N: forceAt(raised_rad) }));
  const friction = FINE.map(share => {
    const raised = balance_rad * share;
    const force = forceAt(raised);
    // With the hands at the centre of mass all of the weight is in them at first, and the edge presses on nothing.
    const pressed = weight_N - force * Math.cos(raised);
    return raised === 0 || pressed <= 0 ? 0 : (force * Math.sin(raised)) / pressed;
  });
  return good({
    holds: [...holds, { raised_rad: balance_rad, force_N: 0 }],
    start_N: forceAt(0),
    balance_rad,
    friction_needed: Math.max(...friction),
  });
};

/** Shares of the way up at which the edge is looked at. */
const FINE: readonly number[] = Array.from({ length: 501 }, (_, n) => n / 500);

export type Standing = Readonly<{
  /** Push that tips it. */
  push_N: number;
  /** How far it leans before it falls by itself. */
  tips_at_rad: number;
}>;

/**
 * What tips a frame that stands on its own: P = W·b/h; it falls by itself once leant past atan(b/centre) [derived].
 * Refuses out-of-range for a mass or length that is none.
 * @param half_base_mm centre of mass to the edge it would tip over
 * @param push_mm height of the push
 * @param centre_mm height of the centre of mass
 */
export const standing = (
  mass_kg: number,
  half_base_mm: number,
  push_mm: number,
  centre_mm: number,
): Outcome<Standing> => {
  if (!(mass_kg > 0 && mass_kg <= 2000))
    return refuse('out-of-range', 'mass_kg', `No frame weighs ${mass_kg} kg.`, 'above 0, at most 2000 kg');
  for (const [field, value] of Object.entries({ half_base_mm, push_mm, centre_mm }))
    if (!(value >= 1 && value <= 20_000))
      return refuse('out-of-range', field, `No frame has ${field} ${value}.`, 'at least 1, at most 20000 mm');
  return good({
    push_N: (mass_kg * GRAVITY_m_s2 * half_base_mm) / push_mm,
    tips_at_rad: Math.atan2(half_base_mm, centre_mm),
  });
};

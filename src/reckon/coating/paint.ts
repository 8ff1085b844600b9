import { good, type Outcome, refuse } from '../../quantity/outcome.ts';

/** What is taken. Wide: from a lacquer to a filler. Judgement. */
export const PAINT_LIMITS = {
  area_m2: { above: 0, atMost: 10_000 },
  solids_pct: { above: 0, atMost: 100 },
  film_um: { atLeast: 1, atMost: 5000 },
  coats: { atLeast: 1, atMost: 20, whole: true },
  loss_pct: { atLeast: 0, below: 100 },
} as const;

export type PaintInput = Readonly<{
  area_m2: number;
  /** Of the paint's volume, what stays as film. */
  solids_pct: number;
  /** Of one coat, dry. */
  film_um: number;
  coats: number;
  /** What does not end on the steel: brush and roller 5 to 10, aerosol on tube 50 to 65 [practice]. */
  loss_pct: number;
}>;

export type Paint = Readonly<{
  litres: number;
  /** One coat, losses taken off. */
  m2_per_litre: number;
}>;

/**
 * Paint for a surface: m²/l = 10 · solids % ÷ film µm · (1 − loss), a coating guide's coverage formula [found].
 * Refuses out-of-range for each value past its limit.
 */
export const paint = ({ area_m2, solids_pct, film_um, coats, loss_pct }: PaintInput): Outcome<Paint> => {
  const limits = PAINT_LIMITS;
  if (!(area_m2 > limits.area_m2.above && area_m2 <= limits.area_m2.atMost))
    return refuse(
      'out-of-range',
      'area_m2',
      `There is no surface of ${area_m2} m².`,
      'above 0, at most 10000 m²',
    );
  if (!(solids_pct > limits.solids_pct.above && solids_pct <= limits.solids_pct.atMost))
    return refuse(
      'out-of-range',
      'solids_pct',
      `No paint has ${solids_pct} % of solids.`,
      'above 0, at most 100 %',
    );
  if (!(film_um >= limits.film_um.atLeast && film_um <= limits.film_um.atMost))
    return refuse(
      'out-of-range',
      'film_um',
      `No coat is ${film_um} µm thick.`,
      'at least 1, at most 5000 µm',
    );
  if (!(Number.isInteger(coats) && coats >= limits.coats.atLeast && coats <= limits.coats.atMost))
    return refuse('out-of-range', 'coats', `${coats} is no count of coats.`, 'a whole number, 1 to 20');
  if (!(loss_pct >= limits.loss_pct.atLeast && loss_pct < limits.loss_pct.below))
    return refuse(
      'out-of-range',
      'loss_pct',
      `${loss_pct} % of paint cannot be lost.`,
      'at least 0, below 100 %',
    );
  const m2_per_litre = ((10 * solids_pct) / film_um) * (1 - loss_pct / 100);
  const litres = (area_m2 * coats) / m2_per_litre;
  return Number.isFinite(litres)
    ? good({ litres, m2_per_litre })
    : refuse(
        'out-of-range',
        'solids_pct',
        'So thin a paint never makes this film.',
        'more solids, or less loss',
      );
};

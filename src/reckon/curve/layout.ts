import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { saidNumber } from '../numeric/said-number.ts';
import { amountFault } from './amount-fault.ts';

/** A mark on the floor: its place along the base line and its ordinate square to it, in mm. */
export type LayoutPoint = Readonly<{ x_mm: number; y_mm: number }>;

type Layout = Readonly<{
  radius_mm: number;
  exit_rad: number;
  /** The base line: the chord, x from its middle; or the tangent at the start, x from the point where it touches. */
  from: 'chord' | 'tangent';
  at_mm: readonly number[];
}>;

/** Rounding, as a share of the reach, that may carry a mark past the end of the base line. */
const NOISE = 1e-9;

/** How high an arc of `radius_mm` stands above its tangent at `x_mm` from the touching point; |x| ≤ radius. */
export const tangentOrdinate = (radius_mm: number, x_mm: number): number =>
  // R − √(R² − x²) loses its digits on a flat arc; this is the same number without a difference.
  (x_mm * x_mm) / (radius_mm + Math.sqrt((radius_mm - x_mm) * (radius_mm + x_mm)));

/** How far an arc stands off its chord at `x_mm` from mid-chord: radius in mm, turn of the whole arc in rad. */
export const chordOrdinate = (radius_mm: number, exit_rad: number, x_mm: number): number => {
  const half = radius_mm * Math.sin(exit_rad / 2);
  const span = Math.sqrt((radius_mm - x_mm) * (radius_mm + x_mm)) + radius_mm * Math.cos(exit_rad / 2);
  return ((half - x_mm) * (half + x_mm)) / span;
};

/**
 * Exact ordinates of an arc at the marks asked for: radius in mm, exit angle in rad (up to 120°), marks in mm.
 * From a tangent the first crossing is meant where an arc past 90° comes back over its own marks.
 * Refused: a radius or exit angle not above 0, a mark the arc does not reach (out-of-range, `at_mm.N` counted from 0).
 * y = R − √(R² − x²) from the tangent, y = √(R² − x²) − (R − m) from the chord [derived, textbook].
 */
export const layoutOf = ({ radius_mm, exit_rad, from, at_mm }: Layout): Outcome<readonly LayoutPoint[]> => {
  const fault = amountFault({ radius_mm, exit_rad });
  if (fault !== undefined) return fault;
  const half = radius_mm * Math.sin(exit_rad / 2);
  const low = from === 'chord' ? -half : 0;
  const high = from === 'chord' ? half : radius_mm * Math.sin(Math.min(exit_rad, Math.PI / 2));
  const outside = at_mm.findIndex(x => !(x >= low - NOISE * high && x <= high * (1 + NOISE)));
  if (outside >= 0)
    return refuse(
      'out-of-range',
      `at_mm.${outside}`,
      `The arc does not reach a mark at ${saidNumber(at_mm[outside] as number)} mm.`,
      from === 'chord'
        ? `marks from ${saidNumber(-high, 'up')} to ${saidNumber(high, 'down')} mm, measured from mid-chord`
        : `marks from 0 to ${saidNumber(high, 'down')} mm, measured from the tangent point`,
    );
  return good(
    at_mm.map(x_mm => {
      const x = Math.min(high, Math.max(low, x_mm));
      return {
        x_mm,
        y_mm: from === 'chord' ? chordOrdinate(radius_mm, exit_rad, x) : tangentOrdinate(radius_mm, x),
      };
    }),
  );
};

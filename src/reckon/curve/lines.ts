import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { saidNumber } from '../numeric/said-number.ts';
import { amountFault } from './amount-fault.ts';

export type LineName = 'deck top' | 'rail top face' | 'hinge line' | 'rail bottom face';

/**
 * One line of the ramp, concentric with the deck top. `offset_mm` is how far it lies outside the deck top, away from
 * the centre, so its radius is the deck's plus the offset. The lip's place is measured from where the deck-top arc
 * touches the ground.
 */
export type CurveLine = Readonly<{
  name: LineName;
  offset_mm: number;
  radius_mm: number;
  arc_mm: number;
  lip_x_mm: number;
  lip_y_mm: number;
}>;

type Section = Readonly<{ deck_mm: number; depth_mm: number; wall_mm: number }>;

/**
 * How far each line lies outside the deck top, in mm: deck thickness, tube depth and wall in mm. The hinge line is the
 * middle of the bottom wall, half a wall inside the bottom face.
 */
export const lineOffsets = ({ deck_mm, depth_mm, wall_mm }: Section): Readonly<Record<LineName, number>> => ({
  'deck top': 0,
  'rail top face': deck_mm,
  'hinge line': deck_mm + depth_mm - wall_mm / 2,
  'rail bottom face': deck_mm + depth_mm,
});

/**
 * The four lines of a curved rail under a deck: deck-top radius and exit angle (rad), deck thickness, tube depth and
 * wall in mm. All turn through the same angle; each has its own radius, length and lip.
 * Refused: an amount that is not above 0 (out-of-range), a wall as thick as half the tube (contradiction).
 * R(o) = R + o, s(o) = s + oθ, lip shifted by (o sin θ, −o cos θ) [derived].
 */
export const linesOf = (
  curve: Readonly<{ radius_mm: number; exit_rad: number }> & Section,
): Outcome<readonly CurveLine[]> => {
  const { radius_mm, exit_rad, depth_mm, wall_mm } = curve;
  const fault = amountFault({ radius_mm, exit_rad, depth_mm, wall_mm }) ?? tubeFault(depth_mm, wall_mm);
  if (fault !== undefined) return fault;
  const height_mm = 2 * radius_mm * Math.sin(exit_rad / 2) ** 2;
  return good(
    Object.entries(lineOffsets(curve)).map(([name, offset_mm]) => ({
      name: name as LineName,
      offset_mm,
      radius_mm: radius_mm + offset_mm,
      arc_mm: (radius_mm + offset_mm) * exit_rad,
      lip_x_mm: (radius_mm + offset_mm) * Math.sin(exit_rad),
      lip_y_mm: height_mm - offset_mm * Math.cos(exit_rad),
    })),
  );
};

/** What is wrong with a tube's depth and wall (mm) taken together; undefined when they make a tube. */
export const tubeFault = (depth_mm: number, wall_mm: number): ReturnType<typeof refuse> | undefined =>
  2 * wall_mm < depth_mm
    ? undefined
    : refuse(
        'contradiction',
        'wall_mm',
        `A tube ${saidNumber(depth_mm)} mm deep has no room for walls of ${saidNumber(wall_mm)} mm.`,
        `a wall below ${saidNumber(depth_mm / 2)} mm, or a depth above ${saidNumber(2 * wall_mm)} mm`,
      );

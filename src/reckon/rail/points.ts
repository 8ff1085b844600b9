import { good, type Outcome } from '../../quantity/outcome.ts';
import { type Circle, fitCircle } from './circle.ts';
import { arcLength, lineLength, type RailPlan } from './rail-plan.ts';

/**
 * What points were measured from: the base line (x along it from the entry mark, y square up from it toward the centre), or a
 * string from the entry end to the lip end of the line (x along it from the entry, y the rise of the rail away from it).
 */
export type PointFrame = 'base line' | 'string';

export type PointRead = Readonly<{ x_mm: number; y_mm: number }>;

/** Points of a rail as offsets from its line, by station, and the circle through them. */
export type PointsRead = Readonly<{
  stations_mm: readonly number[];
  offsets_mm: readonly number[];
  circle: Circle;
}>;

/** A place on the line from the base line, mm. */
const placeOn = (line: RailPlan, along_mm: number): readonly [number, number] => {
  const arc = arcLength(line);
  const phi = Math.min(along_mm, arc) / line.radius_mm;
  const beyond = Math.max(0, along_mm - arc);
  return [
    line.radius_mm * Math.sin(phi) + beyond * Math.cos(phi),
    2 * line.radius_mm * Math.sin(phi / 2) ** 2 + beyond * Math.sin(phi),
  ];
};

/** The same point from the base line. */
const onBase = (line: RailPlan, frame: PointFrame, p: PointRead): readonly [number, number] => {
  if (frame === 'base line') return [p.x_mm, p.y_mm];
  const [x, y] = placeOn(line, lineLength(line));
  const long = Math.hypot(x, y);
  const [c, s] = [x / long, y / long];
  // The rail lies on the far side of its string from the centre.
  return [p.x_mm * c + p.y_mm * s, p.x_mm * s - p.y_mm * c];
};

/** Where a point stands beside the line: along it, and off it (+ toward the centre), mm. [plane geometry] */
const beside = (line: RailPlan, [x, y]: readonly [number, number]): { at: number; off: number } => {
  const { radius_mm: r, bend_rad: bend } = line;
  if (x <= 0) return { at: x, off: y };
  const phi = Math.atan2(x, r - y);
  if (phi <= bend) return { at: r * phi, off: r - Math.hypot(x, r - y) };
  const [ex, ey] = placeOn(line, arcLength(line));
  const [c, s] = [Math.cos(bend), Math.sin(bend)];
  return { at: arcLength(line) + (x - ex) * c + (y - ey) * s, off: (y - ey) * c - (x - ex) * s };
};

/**
 * Points measured as x and y, or as rises from a string, as a survey has them.
 * @param points three or more, in any order, mm
 * @returns stations rising along the line with their offsets (+ toward the centre), and the geometric circle with the standard
 *   error of its radius; `no-solution` for points on a straight line
 */
export function readPoints(
  line: RailPlan,
  frame: PointFrame,
  points: readonly PointRead[],
): Outcome<PointsRead> {
  const placed = points.map(p => onBase(line, frame, p));
  const circle = fitCircle(placed);
  if (!circle.ok) return circle;
  const read = placed.map(p => beside(line, p)).sort((a, b) => a.at - b.at);
  return good({
    stations_mm: read.map(p => Math.max(0, p.at)),
    offsets_mm: read.map(p => p.off),
    circle: circle.value,
  });
}

/** A point of the drawing plane, mm. */
export type Point = Readonly<{ x: number; y: number }>;

/** A place on a polyline: where, and the unit normal to the left of its run, toward the centre of a rising rail's curve. */
export type LinePlace = Readonly<{ at: number; x: number; y: number; left: Point }>;

/** Places nearer to each other than this (mm along the line) are one. */
const SAME_PLACE = 1e-3;

/** Length of a polyline, mm. */
export const lineLength = (line: readonly Point[]): number =>
  line.slice(1).reduce((sum, point, k) => sum + distance(line[k]!, point), 0);

export const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/**
 * The corners of a polyline and the given places along it (mm from its start), in order, each once.
 * At a corner the normal halves the angle.
 */
export const placesAlong = (line: readonly Point[], wanted: readonly number[]): LinePlace[] => {
  let run = 0;
  const corners = line.map((_, k) => {
    if (k > 0) run += distance(line[k - 1]!, line[k]!);
    return run;
  });
  const all = [
    ...corners,
    ...wanted.filter(at => corners.every(corner => Math.abs(corner - at) > SAME_PLACE)),
  ];
  const ordered = all
    .sort((a, b) => a - b)
    .filter((at, k, list) => k === 0 || at - list[k - 1]! > SAME_PLACE);
  return ordered.map(at => placeAt(line, corners, at));
};

/** The place of a list that stands at `at`. */
export const placeNearest = (places: readonly LinePlace[], at: number): number =>
  places.reduce(
    (best, place, k) => (Math.abs(place.at - at) < Math.abs(places[best]!.at - at) ? k : best),
    0,
  );

const placeAt = (line: readonly Point[], corners: readonly number[], at: number): LinePlace => {
  const next = Math.max(
    1,
    corners.findIndex(corner => corner >= at - SAME_PLACE),
  );
  const [a, b] = [line[next - 1]!, line[next]!];
  const along = direction(a, b);
  const gone = at - corners[next - 1]!;
  const after = line[next + 1];
  const turns = Math.abs(corners[next]! - at) <= SAME_PLACE && after !== undefined;
  const beyond = turns ? direction(b, after) : along;
  const size = Math.hypot(along.x + beyond.x, along.y + beyond.y);
  const left = { x: -(along.y + beyond.y) / size, y: (along.x + beyond.x) / size };
  return { at, x: a.x + along.x * gone, y: a.y + along.y * gone, left };
};

const direction = (a: Point, b: Point): Point => {
  const length = distance(a, b);
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
};

/**
 * What is left of offsets (+ to the left) after the rail is laid to its line as well as it can be: moved across at the
 * first place and turned about it, least squares. A slide along the line is not allowed for: it changes no offset of an arc.
 */
export const layToLine = (places: readonly LinePlace[], offsets: readonly number[]): number[] => {
  const first = places[0]!;
  const across = places.map(({ left }) => left.x * first.left.x + left.y * first.left.y);
  const turned = places.map(({ x, y, left }) => (x - first.x) * left.y - (y - first.y) * left.x);
  const afterMove = without(offsets, across);
  const turnAlone = without(turned, across);
  return without(afterMove, turnAlone);
};

/** Takes the share of `pattern` out of `values`. */
const without = (values: readonly number[], pattern: readonly number[]): number[] => {
  const whole = dot(pattern, pattern);
  const share = whole > 0 ? dot(values, pattern) / whole : 0;
  return values.map((value, k) => value - share * pattern[k]!);
};

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, k) => sum + value * b[k]!, 0);

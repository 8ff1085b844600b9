import { arcLength, type RailPlan, type Rigid, UNMOVED } from './rail-plan.ts';

/**
 * The exact shape of a slit rail: straight flats joined at the slits, each slit closed by what was planned and an error of
 * its own. No small-angle shortcut: 6 mrad on each of 25 slits is 8.6° and bends the answer itself. [derived;
 * tested against a rail walked flat by flat]
 */

/** A point in the plane of the line, mm. */
export type Point = Readonly<{ x: number; y: number }>;

/** A station of the line: its point, and the way along it (dx, dy). Toward the centre is (−dy, dx). */
type Station = Readonly<{ x: number; y: number; dx: number; dy: number }>;

function stationOf(plan: RailPlan, at_mm: number): Station {
  const phi = Math.min(at_mm / plan.radius_mm, plan.bend_rad);
  const beyond = Math.max(0, at_mm - arcLength(plan));
  const dx = Math.cos(phi);
  const dy = Math.sin(phi);
  // 1 − cos by the half angle: near the start the plain difference loses half its digits.
  const rise = 2 * plan.radius_mm * Math.sin(phi / 2) ** 2;
  return { x: plan.radius_mm * dy + beyond * dx, y: rise + beyond * dy, dx, dy };
}

/** How far a flat's end stands outside a circle that it touches `half` mm (along the circle) away, mm. */
const standOff = (radius: number, half: number): number => radius * (1 / Math.cos(half / radius) - 1);

/**
 * The vertices of the rail as planned: the start, each slit, the end of the line. Flats touch the line at their middles, so
 * a slit stands outside the line by the sag of the flats beside it; where the two differ (uneven slits), by their mean.
 */
function plannedShape(plan: RailPlan): Point[] {
  const { radius_mm: radius, slits_mm: slits } = plan;
  const arc = arcLength(plan);
  const halves = [
    slits[0] ?? arc,
    ...slits.slice(1).map((s, i) => (s - slits[i]!) / 2),
    arc - (slits.at(-1) ?? 0),
  ];
  const at = slits.map((s, i) => {
    const outside = (standOff(radius, halves[i]!) + standOff(radius, halves[i + 1]!)) / 2;
    const phi = s / radius;
    return {
      x: (radius + outside) * Math.sin(phi),
      y: 2 * radius * Math.sin(phi / 2) ** 2 - outside * Math.cos(phi),
    };
  });
  return [{ x: 0, y: 0 }, ...at, stationOf(plan, arc + (plan.straight_mm ?? 0))].map(({ x, y }) => ({
    x,
    y,
  }));
}

function shapeFrom(planned: readonly Point[], errors_rad: readonly number[], rigid: Rigid): Point[] {
  const shape: Point[] = [{ x: 0, y: rigid.y_mm }];
  let turned = rigid.turn_rad;
  for (let i = 1; i < planned.length; i++) {
    const from = planned[i - 1]!;
    const to = planned[i]!;
    const c = Math.cos(turned);
    const s = Math.sin(turned);
    const last = shape[i - 1]!;
    const lx = to.x - from.x;
    const ly = to.y - from.y;
    shape.push({ x: last.x + c * lx - s * ly, y: last.y + s * lx + c * ly });
    turned += errors_rad[i - 1] ?? 0;
  }
  return shape;
}

/**
 * The vertices of a rail that lies beside its line: start, every slit, end of the line's length; mm, in the plane of the
 * line (origin at its start, x along it, y toward the centre).
 *
 * @param plan the rail and its line
 * @param errors_rad what each slit is closed more (+) or less (−) than planned, rad
 * @param rigid how the rail lies
 */
export function railShape(plan: RailPlan, errors_rad: readonly number[], rigid: Rigid = UNMOVED): Point[] {
  return shapeFrom(plannedShape(plan), errors_rad, rigid);
}

/**
 * What the flats' own sag adds to an offset read at a station, mm: a flat touches the line at its middle and stands outside
 * it (−) at its slits; the end flats touch at the start and at the end of the arc. A rail without slits is rolled: it has no flats.
 */
export function flatSag(plan: RailPlan, station_mm: number): number {
  const { radius_mm: radius, slits_mm: slits } = plan;
  const arc = arcLength(plan);
  if (station_mm >= arc || slits.length === 0) return 0;
  let next = 0;
  while (next < slits.length && slits[next]! <= station_mm) next++;
  const middle =
    next === 0 ? 0 : next === slits.length ? arc : ((slits[next - 1] ?? 0) + (slits[next] ?? arc)) / 2;
  return -standOff(radius, Math.abs(station_mm - middle));
}

const LEAST_FACING = 0.05;

/** Where the normal of a station crosses the rail: on which flat, where, and how far toward the centre. */
type Crossing = { flat: number; x: number; y: number; offset: number };

function crossingOf(shape: readonly Point[], at: Station, guess: number): Crossing {
  const along = (p: Point) => (p.x - at.x) * at.dx + (p.y - at.y) * at.dy;
  const flats = shape.length - 1;
  let flat = Math.min(Math.max(guess, 0), flats - 1);
  while (flat < flats - 1 && along(shape[flat + 1]!) < 0) flat++;
  while (flat > 0 && along(shape[flat]!) > 0) flat--;
  const from = shape[flat]!;
  const to = shape[flat + 1]!;
  const before = along(from);
  // Never quite square to the line: a rail curled by 87° is no rail, but a search may try one.
  const run = Math.max(along(to) - before, LEAST_FACING * Math.hypot(to.x - from.x, to.y - from.y));
  const share = -before / run; // beyond 0..1 on an end flat: rails are cut longer than their line
  const x = from.x + share * (to.x - from.x);
  const y = from.y + share * (to.y - from.y);
  return { flat, x, y, offset: -(x - at.x) * at.dy + (y - at.y) * at.dx };
}

/** A plan and its stations, made ready for many shapes: the fit asks for hundreds. */
export type Bench = Readonly<{
  plan: RailPlan;
  stations_mm: readonly number[];
  planned: readonly Point[];
  stations: readonly Station[];
  /** The flat each station lies on when nothing is wrong. */
  flats: readonly number[];
  /** Own sag read at each station, less what the planned polygon itself shows there (0 for even slits), mm. */
  datum: readonly number[];
  sag_mm: readonly number[];
}>;

export function bench(plan: RailPlan, stations_mm: readonly number[]): Bench {
  const planned = plannedShape(plan);
  const stations = stations_mm.map(s => stationOf(plan, s));
  const sag_mm = stations_mm.map(s => flatSag(plan, s));
  const flats = stations_mm.map(s => plan.slits_mm.filter(at => at < s).length);
  const datum = stations.map((at, j) => sag_mm[j]! - crossingOf(planned, at, flats[j]!).offset);
  return { plan, stations_mm, planned, stations, flats, datum, sag_mm };
}

/** Offsets, and how each grows with each slit's error and with the way the rail lies. Rows are stations. */
export type Slopes = Readonly<{
  offsets: Float64Array;
  /** mm per rad, station after station: slits × stations, `bySlit[i * stations + j]`. */
  bySlit: Float64Array;
  /** mm per mm of shift across the line at the start. */
  byShift: Float64Array;
  /** mm per rad of turn about the start. */
  byTurn: Float64Array;
}>;

/** The offsets read at every station, own sag included, mm. Same meaning as {@link offsetsAt}. */
export function offsetsOn(on: Bench, errors_rad: readonly number[], rigid: Rigid): Float64Array {
  const shape = shapeFrom(on.planned, errors_rad, rigid);
  return Float64Array.from(on.stations, (at, j) => on.datum[j]! + crossingOf(shape, at, on.flats[j]!).offset);
}

/** The offsets with their exact slopes at a shape. [derived: a crossing slides along its normal as its flat turns] */
export function slopesOn(on: Bench, errors_rad: readonly number[], rigid: Rigid): Slopes {
  const shape = shapeFrom(on.planned, errors_rad, rigid);
  const n = on.stations.length;
  const slits = on.plan.slits_mm.length;
  const offsets = new Float64Array(n);
  const bySlit = new Float64Array(n * slits);
  const byShift = new Float64Array(n);
  const byTurn = new Float64Array(n);
  on.stations.forEach((at, j) => {
    const hit = crossingOf(shape, at, on.flats[j]!);
    offsets[j] = on.datum[j]! + hit.offset;
    const from = shape[hit.flat]!;
    const to = shape[hit.flat + 1]!;
    const long = Math.hypot(to.x - from.x, to.y - from.y);
    const dx = (to.x - from.x) / long;
    const dy = (to.y - from.y) / long;
    const facing = Math.max(at.dx * dx + at.dy * dy, LEAST_FACING); // cosine between the flat and the line
    byShift[j] = dx / facing;
    byTurn[j] = (hit.x * dx + (hit.y - rigid.y_mm) * dy) / facing;
    for (let i = 0; i < hit.flat; i++) {
      const slit = shape[i + 1]!;
      bySlit[i * n + j] = ((hit.x - slit.x) * dx + (hit.y - slit.y) * dy) / facing;
    }
  });
  return { offsets, bySlit, byShift, byTurn };
}

/**
 * The offsets a person would read from a rail, mm, + toward the centre: at each station along the normal of the line, the
 * flats' own sag included.
 *
 * @param plan the rail and its line
 * @param errors_rad what each slit is closed more (+) or less (−) than planned, rad
 * @param rigid how the rail lies
 * @param stations_mm along the line, mm
 */
export function offsetsAt(
  plan: RailPlan,
  errors_rad: readonly number[],
  rigid: Rigid,
  stations_mm: readonly number[],
): number[] {
  return [...offsetsOn(bench(plan, stations_mm), errors_rad, rigid)];
}

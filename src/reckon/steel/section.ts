import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { massPerMetre_kg } from './steel.ts';

/** Which book the corners and the wall come from. */
export type TubeRule = 'EN10219' | 'AISC';

export type Tube = Readonly<{
  shape: 'square' | 'rect';
  /** Side in the plane of bending. */
  depth_mm: number;
  /** Side across the plane of bending. A square tube needs none. */
  width_mm?: number | undefined;
  /** The wall sold (AISC), or the wall itself, by the list or by a caliper (EN 10219). */
  wall_mm: number;
  rule: TubeRule;
}>;

export type TubeSection = Readonly<{
  area_mm2: number;
  massPerM_kg: number;
  /** About the axis across the depth, as all that follow. For the other axis give the sides the other way round. */
  inertia_mm4: number;
  elastic_mm3: number;
  plastic_mm3: number;
  gyration_mm: number;
  /** The wall the strength is reckoned with. */
  designWall_mm: number;
  outsideRadius_mm: number;
  /** Round the outside, for paint. */
  perimeter_mm: number;
}>;

/** AISC 360 B4.2: design wall of A500 tube over its nominal wall [memory; gives the table's walls, found]. */
const AISC_DESIGN_WALL = 0.93;

// Centre and second moment of the spandrel a quarter circle leaves in its square, over r and r⁴ (plain geometry).
const SPANDREL_CENTRE = (10 - 3 * Math.PI) / (12 - 3 * Math.PI);
const SPANDREL_INERTIA = 1 / 3 - Math.PI / 16 - 1 / (3 * (12 - 3 * Math.PI));
const SPANDREL_AREA = 1 - Math.PI / 4;

/** What a caliper and a mill have between them; below it a wall is lost in the rounding of the sides. */
const ANY_SIZE = '0.01 to 1 000 000 mm';

/** Up to which wall which ratio of outside and of inside radius to it holds, mm. */
type Corners = readonly Readonly<{ upTo: number; outside: number; inside: number }>[];

/** EN 10219-2 Annex B by thickness [outside found, inside memory]; AISC's table is reproduced by 2 and 1 on the design wall [calc]. */
const CORNERS: Readonly<Record<TubeRule, Corners>> = {
  EN10219: [
    { upTo: 6, outside: 2, inside: 1 },
    { upTo: 10, outside: 2.5, inside: 1.5 },
    { upTo: Infinity, outside: 3, inside: 2 },
  ],
  AISC: [{ upTo: Infinity, outside: 2, inside: 1 }],
};

/** The thickest wall whose corners still fit a side. */
const thickestWall = (side: number, rule: TubeRule): number =>
  CORNERS[rule].reduce((most, { upTo, outside }, k) => {
    const fits = Math.min(upTo, side / 2 / outside);
    const from = k === 0 ? 0 : CORNERS[rule][k - 1]!.upTo;
    return fits > from ? fits : most;
  }, 0);

/**
 * Area, mass and bending figures of a square or rectangular tube of any size, about the axis across its depth.
 * AISC: strength from 0.93 of the wall, mass from the wall as sold.
 * Refuses a wall that fills the tube, or one whose corner radius does not fit the side.
 * Source: EN 10219-2 Annex B [memory; reproduces 26 published rows], AISC 360 B4.2.
 */
export const tubeSection = (tube: Tube): Outcome<TubeSection> => {
  const { shape, depth_mm: depth, wall_mm: wall, rule } = tube;
  if (tube.width_mm === undefined && shape === 'rect') {
    return refuse(
      'missing-field',
      'width_mm',
      'A rectangular tube has two sides.',
      `the side across the bend, ${ANY_SIZE}`,
    );
  }
  const width = tube.width_mm ?? depth;
  for (const [field, size] of [
    ['depth_mm', depth],
    ['width_mm', width],
    ['wall_mm', wall],
  ] as const) {
    if (!Number.isFinite(size)) return refuse('not-a-number', field, `${field} is no number.`, ANY_SIZE);
    if (size < 0.01 || size > 1e6) return refuse('out-of-range', field, `${field} is ${size}.`, ANY_SIZE);
  }
  if (shape === 'square' && width !== depth) {
    return refuse(
      'contradiction',
      'width_mm',
      `A square tube of ${depth} mm is not ${width} mm wide.`,
      `${depth}, or shape rect`,
    );
  }
  const side = Math.min(depth, width);
  const thickest = `at most ${thickestWall(side, rule)} mm for this side`;
  if (wall >= side / 2)
    return refuse('out-of-range', 'wall_mm', `A wall of ${wall} mm fills the tube.`, thickest);
  const { outside, inside } = CORNERS[rule].find(({ upTo }) => wall <= upTo)!;
  if (outside * wall > side / 2) {
    const message = `A wall of ${wall} mm has corners of ${outside * wall} mm outside: they do not fit a side of ${side} mm.`;
    return refuse('out-of-range', 'wall_mm', message, thickest);
  }
  const sold = { depth, width, wall, outside: outside * wall, inside: inside * wall };
  const ratio = rule === 'AISC' ? AISC_DESIGN_WALL : 1;
  const design = { ...sold, wall: wall * ratio, outside: sold.outside * ratio, inside: sold.inside * ratio };
  const area = areaOf(design);
  const inertia = inertiaOf(design);
  return good({
    area_mm2: area,
    massPerM_kg: massPerMetre_kg(areaOf(sold)),
    inertia_mm4: inertia,
    elastic_mm3: (2 * inertia) / depth,
    plastic_mm3: plasticOf(design),
    gyration_mm: Math.sqrt(inertia / area),
    designWall_mm: design.wall,
    outsideRadius_mm: design.outside,
    perimeter_mm: 2 * (depth + width) - (8 - 2 * Math.PI) * sold.outside,
  });
};

/** A wall with its corners, all in mm. */
type Outline = Readonly<{ depth: number; width: number; wall: number; outside: number; inside: number }>;

const areaOf = ({ depth, width, wall, outside, inside }: Outline): number =>
  2 * wall * (width + depth - 2 * wall) - 4 * SPANDREL_AREA * (outside ** 2 - inside ** 2);

/** From the neutral axis to the centre of a corner's spandrel, outside and inside. */
const levers = ({ depth, wall, outside, inside }: Outline): readonly [outer: number, inner: number] => [
  depth / 2 - SPANDREL_CENTRE * outside,
  depth / 2 - wall - SPANDREL_CENTRE * inside,
];

const inertiaOf = (outline: Outline): number => {
  const { depth, width, wall, outside, inside } = outline;
  const [outer, inner] = levers(outline);
  const spandrel = (radius: number, lever: number) =>
    SPANDREL_INERTIA * radius ** 4 + SPANDREL_AREA * radius ** 2 * lever ** 2;
  const sharp = (width * depth ** 3 - (width - 2 * wall) * (depth - 2 * wall) ** 3) / 12;
  return sharp - 4 * spandrel(outside, outer) + 4 * spandrel(inside, inner);
};

const plasticOf = (outline: Outline): number => {
  const { depth, width, wall, outside, inside } = outline;
  const [outer, inner] = levers(outline);
  const sharp = (width * depth ** 2 - (width - 2 * wall) * (depth - 2 * wall) ** 2) / 4;
  return sharp - 4 * SPANDREL_AREA * (outside ** 2 * outer - inside ** 2 * inner);
};

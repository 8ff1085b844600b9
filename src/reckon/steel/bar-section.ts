import { good, type Outcome, refuse } from '../../quantity/outcome.ts';
import { massPerMetre_kg } from './steel.ts';

/** What a cutting list and a strut need of an open bar. */
export type BarSection = Readonly<{
  area_mm2: number;
  massPerM_kg: number;
  /** About the axis through the centre, across the first leg or the depth. */
  inertia_mm4: number;
  elastic_mm3: number;
  plastic_mm3: number;
  gyration_mm: number;
  /** About whichever axis through the centre is weakest: the one a free strut bends about. */
  leastInertia_mm4: number;
  leastGyration_mm: number;
}>;

export type Angle = Readonly<{
  /** The leg in the plane of bending. */
  leg_mm: number;
  otherLeg_mm: number;
  thickness_mm: number;
  /** Fillet between the legs; 0 for a sharp corner, as small merchant bar is listed. */
  root_mm?: number;
  /** Rounding of both toes. */
  toe_mm?: number;
}>;

const checked = (sizes: Readonly<Record<string, number>>): Outcome<true> => {
  for (const [field, size] of Object.entries(sizes)) {
    if (!Number.isFinite(size))
      return refuse('not-a-number', field, `${field} is no number.`, '0.01 to 1 000 000 mm');
    if (size < 0.01 || size > 1e6)
      return refuse('out-of-range', field, `${field} is ${size}.`, '0.01 to 1 000 000 mm');
  }
  return good(true);
};

const barSection = (
  area: number,
  inertia: number,
  farthest: number,
  plastic: number,
  least: number,
): BarSection => ({
  area_mm2: area,
  massPerM_kg: massPerMetre_kg(area),
  inertia_mm4: inertia,
  elastic_mm3: inertia / farthest,
  plastic_mm3: plastic,
  gyration_mm: Math.sqrt(inertia / area),
  leastInertia_mm4: least,
  leastGyration_mm: Math.sqrt(least / area),
});

/** A flat of the given depth (in the plane of bending) and width, mm. A = bd, I = bd³/12, Z = bd²/4 [derived]. */
export const flatSection = (depth_mm: number, width_mm: number): Outcome<BarSection> => {
  const sizes = checked({ depth_mm, width_mm });
  if (!sizes.ok) return sizes;
  const area = depth_mm * width_mm;
  const inertia = (area * depth_mm ** 2) / 12;
  const least = (area * Math.min(depth_mm, width_mm) ** 2) / 12;
  return good(barSection(area, inertia, depth_mm / 2, (area * depth_mm) / 4, least));
};

/** A rectangle or a spandrel of an angle: area (− where taken away), its centre, and its own second moments. */
type Part = Readonly<{ area: number; x: number; y: number; xx: number; yy: number; xy: number }>;

const rectangle = (width: number, height: number, x: number, y: number): Part => {
  const area = width * height;
  return { area, x, y, xx: (area * height ** 2) / 12, yy: (area * width ** 2) / 12, xy: 0 };
};

/** The spandrel of a quarter circle; its corner at (x, y), its body toward `toX`, `toY` (±1). Plain geometry [derived]. */
const spandrel = (radius: number, x: number, y: number, toX: 1 | -1, toY: 1 | -1, sign: 1 | -1): Part => {
  const centre = ((10 - 3 * Math.PI) / (12 - 3 * Math.PI)) * radius;
  const area = (1 - Math.PI / 4) * radius ** 2;
  const own = (1 / 3 - Math.PI / 16 - 1 / (3 * (12 - 3 * Math.PI))) * radius ** 4;
  // ∬xy about its corner is (19/24 − π/4) r⁴, by integration.
  const product = (19 / 24 - Math.PI / 4) * radius ** 4 - area * centre ** 2;
  return {
    area: sign * area,
    x: x + toX * centre,
    y: y + toY * centre,
    xx: sign * own,
    yy: sign * own,
    xy: sign * toX * toY * product,
  };
};

/** Strips that each leg of an angle is cut into: the plastic modulus is then good to a part in ten thousand. */
const STRIPS = 1000;

/** How far a quarter circle of a radius leaves its corner free, `from` along the side that it touches. */
const cornerAt = (radius: number, from: number): number =>
  from >= radius ? 0 : radius - Math.sqrt(Math.max(0, radius ** 2 - (radius - from) ** 2));

/**
 * Plastic modulus of an angle: its metal in strips across the first leg, each times its distance from the axis with half of the metal
 * on either side [derived].
 */
const anglePlastic = (leg: number, other: number, thick: number, root: number, toe: number): number => {
  const widthAt = (y: number): number =>
    y < thick ? other - cornerAt(toe, thick - y) : thick + cornerAt(root, y - thick) - cornerAt(toe, leg - y);
  const strips = [
    [0, thick],
    [thick, leg],
  ].flatMap(([from = 0, to = 0]) => {
    const high = (to - from) / STRIPS;
    return Array.from({ length: STRIPS }, (_, i) => {
      const y = from + (i + 0.5) * high;
      return { y, high, area: widthAt(y) * high };
    });
  });
  let below = strips.reduce((sum, strip) => sum + strip.area, 0) / 2;
  const at = strips.find(strip => {
    below -= strip.area;
    return below <= 0;
  });
  const axis = at === undefined ? leg : at.y + at.high / 2 + (below / at.area) * at.high;
  return strips.reduce((sum, strip) => sum + strip.area * Math.abs(strip.y - axis), 0);
};

/**
 * An angle, legs along y (`leg_mm`) and x, bent in the plane of its first leg. Two legs, a root fillet added, the toes taken off;
 * least second moment from the product of inertia [derived]. Refuses a thickness that fills a leg.
 */
export const angleSection = (angle: Angle): Outcome<BarSection> => {
  const { leg_mm: leg, otherLeg_mm: other, thickness_mm: thick, root_mm: root = 0, toe_mm: toe = 0 } = angle;
  const sizes = checked({ leg_mm: leg, otherLeg_mm: other, thickness_mm: thick });
  if (!sizes.ok) return sizes;
  const shorter = Math.min(leg, other);
  if (thick >= shorter) {
    return refuse(
      'out-of-range',
      'thickness_mm',
      `A thickness of ${thick} mm fills the leg.`,
      `less than ${shorter} mm, the shorter leg`,
    );
  }
  if (!(root >= 0 && toe >= 0 && toe <= thick && root + toe <= shorter - thick)) {
    return refuse(
      'out-of-range',
      'root_mm',
      'The fillets do not fit the legs.',
      'a toe within the thickness, a root within the leg',
    );
  }
  const parts = [
    rectangle(thick, leg, thick / 2, leg / 2),
    rectangle(other - thick, thick, (other + thick) / 2, thick / 2),
    spandrel(root, thick, thick, 1, 1, 1),
    spandrel(toe, thick, leg, -1, -1, -1),
    spandrel(toe, other, thick, -1, -1, -1),
  ];
  const total = (of: (part: Part) => number) => parts.reduce((sum, part) => sum + of(part), 0);
  const area = total(part => part.area);
  const x = total(part => part.area * part.x) / area;
  const y = total(part => part.area * part.y) / area;
  const xx = total(part => part.xx + part.area * (part.y - y) ** 2);
  const yy = total(part => part.yy + part.area * (part.x - x) ** 2);
  const xy = total(part => part.xy + part.area * (part.x - x) * (part.y - y));
  const least = (xx + yy) / 2 - Math.hypot((xx - yy) / 2, xy);
  const plastic = anglePlastic(leg, other, thick, root, toe);
  return good(barSection(area, xx, Math.max(y, leg - y), plastic, least));
};

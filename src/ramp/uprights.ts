import type { RailName } from './design.ts';
import { CLEAR_OF_SLIT, type Member } from './member.ts';
import type { RailPlan } from './rail-plan.ts';
import { nominalShape, type RailShape } from './rail-shape.ts';
import type { Design } from './settle.ts';

/** Least height of an upright worth cutting, mm (common practice). */
const LEAST_UPRIGHT = 70;

/** A place along a rail, and the flat it is the middle of, if it is one. */
export type Stand = Readonly<{ along_mm: number; flat?: number }>;

/** Clear distance from what stands at a place to the nearest slit, mm. */
const clearOf = (plan: RailPlan, along_mm: number, half_mm: number): number =>
  Math.min(Number.MAX_VALUE, ...plan.slits.map(s => Math.abs(s.at_mm - along_mm))) - half_mm;

/**
 * The first of some places that is clear of all slits, else the middle of a flat; where the flats are too short for that as well, the
 * first place after all, and the page of bracing says how near the slit is.
 */
export const clearStand = (
  plan: RailPlan,
  half_mm: number,
  places: readonly number[],
  flat: number,
): Stand => {
  const clear = (along_mm: number): boolean => clearOf(plan, along_mm, half_mm) >= CLEAR_OF_SLIT - 1e-6;
  const found = places.find(clear);
  if (found !== undefined) return { along_mm: found };
  const middle = plan.flats_mm[flat];
  if (middle !== undefined && clear(middle)) return { along_mm: middle, flat };
  return { along_mm: places[0] ?? 0 };
};

/** Where the lip upright stands: its rear edge under the lip mark, or on the last whole flat where the last slit comes too near. */
export const lipStand = (d: Design, plan: RailPlan): Stand => {
  const half = d.post.depth_mm / 2 / Math.cos(d.arc.exit_rad);
  const lip = plan.toLip_mm - half;
  const stand = clearStand(plan, half, [lip], plan.flats_mm.length - 2);
  // On a very low ramp nothing but the lip itself is high enough to stand under.
  const high = nominalShape(d, plan).bottomAt(stand.along_mm).y - d.tube.depth_mm >= LEAST_UPRIGHT;
  return high ? stand : { along_mm: lip };
};

/** Flats (numbers) that carry uprights, from the lip down, a whole number of pitches apart. */
export const uprightFlats = (d: Design, plan: RailPlan, shape: RailShape): readonly number[] => {
  const lip = lipStand(d, plan);
  const below = lip.flat ?? plan.flats_mm.length - 1;
  const base = d.tube.depth_mm;
  const chosen: number[] = [];
  let from = lip.flat === undefined ? plan.toLip_mm : lip.along_mm;
  let pick = -1;
  for (let k = below - 1; k >= 1; k--) {
    const at = plan.flats_mm[k] ?? 0;
    const spot = shape.bottomAt(at);
    if (spot.y - base < LEAST_UPRIGHT) {
      if (pick > 0) chosen.push(pick);
      return chosen;
    }
    if (pick > 0 && from - at > d.spacing) {
      chosen.push(pick);
      from = plan.flats_mm[pick] ?? from;
    }
    pick = k;
  }
  if (pick > 0) chosen.push(pick);
  return chosen;
};

/** An upright under a rail at a place of it; the lip upright goes by no flat's number. */
export const upright = (
  d: Design,
  rail: RailName,
  spot: { x: number; y: number; slope: number },
  name: string,
  along: number,
  flat?: number,
): Member => {
  const b = d.post.depth_mm;
  const centre = spot.y - d.tube.depth_mm;
  const lean = (b / 2) * Math.tan(spot.slope);
  return {
    need: `${flat === undefined ? 'lip upright' : 'upright'}@${rail}${flat === undefined ? '' : `:${name}`}`,
    kind: flat === undefined ? 'lip upright' : 'upright',
    rail,
    ...(flat === undefined ? {} : { flat }),
    tube: d.post,
    long_mm: centre + lean,
    short_mm: centre - lean,
    ends: { first_rad: 0, second_rad: spot.slope },
    line: { face: 'rail bottom face', rail },
    when: 'later',
    x_mm: spot.x,
    along_mm: along,
    vents: 1,
    drains: 0,
    joints: 2,
  };
};

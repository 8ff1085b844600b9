import { arcLength, type RailPlan, type Rigid } from './rail-plan.ts';

/**
 * The rail laid anew, without bending it: the shift and turn that bring given offsets nearest to the line.
 *
 * Trap [derived]: a turn about the centre of the curve changes no offset, so the three ways of moving a rail in its plane
 * have rank two. With three columns a fit takes a real direction of the rail away. Two columns are used: cos φ (shift across the
 * line at its start) and R sin φ (turn about the start).
 */
export type RigidColumns = Readonly<{ shift: readonly number[]; turn: readonly number[] }>;

/** The two columns at stations along the line: mm per mm of shift, mm per rad of turn. */
export function rigidColumns(plan: RailPlan, stations_mm: readonly number[]): RigidColumns {
  const { radius_mm, bend_rad } = plan;
  const arc = arcLength(plan);
  const phi = stations_mm.map(s => Math.min(s / radius_mm, bend_rad));
  return {
    shift: phi.map(Math.cos),
    // On a straight last part the turn's lever goes on growing along the tangent.
    turn: phi.map((p, j) => radius_mm * Math.sin(p) + Math.max(0, stations_mm[j]! - arc)),
  };
}

export type RigidFit = Readonly<{
  /** How the rail lies, by the fit. */
  rigid: Rigid;
  /** What is left of the offsets when the rail is laid at its best, mm. */
  left_mm: readonly number[];
  /** The greatest size of what is left, mm. */
  worst_mm: number;
}>;

const worst = (values: readonly number[]): number =>
  values.reduce((most, v) => Math.max(most, Math.abs(v)), 0);

/**
 * Least-squares fit of shift and turn to offsets.
 *
 * @param columns from {@link rigidColumns}
 * @param offsets_mm own sag taken off, mm, + toward the centre
 * @param entry_mm when the entry mark is held: the offset there, mm, which is then the whole shift; only the turn is free
 */
export function fitRigid(columns: RigidColumns, offsets_mm: readonly number[], entry_mm?: number): RigidFit {
  const { shift, turn } = columns;
  let ss = 0;
  let st = 0;
  let tt = 0;
  let so = 0;
  let to = 0;
  offsets_mm.forEach((o, j) => {
    const s = shift[j]!;
    const t = turn[j]!;
    ss += s * s;
    st += s * t;
    tt += t * t;
    so += s * o;
    to += t * o;
  });
  let y = entry_mm ?? 0;
  let turned = 0;
  const det = ss * tt - st * st;
  if (entry_mm !== undefined) turned = tt > 0 ? (to - st * y) / tt : 0;
  else if (det > 1e-12 * ss * tt) {
    y = (tt * so - st * to) / det;
    turned = (ss * to - st * so) / det;
  } else if (ss > 0) y = so / ss;
  const left_mm = offsets_mm.map((o, j) => o - shift[j]! * y - turn[j]! * turned);
  return { rigid: { y_mm: y, turn_rad: turned }, left_mm, worst_mm: worst(left_mm) };
}

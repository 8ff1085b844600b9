import { solveSmall } from './dense.ts';
import { hotSteel } from './hot-steel.ts';
import { backWallMoment, type SlitTube, weightPerLength } from './own-weight.ts';

/** What a rail's own weight does to one slit while it is hot. */
export type HotSlit = Readonly<{
  at_mm: number;
  /** Moment of the own weight there, N·mm, + sagging. */
  moment_Nmm: number;
  /** True when that moment closes the slit. */
  closes: boolean;
  /** Share of what the slit can hold. */
  index: number;
  advice: 'go' | 'move a support' | 'do not weld here';
}>;

/** Above these shares: put a support under the flat; do not weld there. [derived thresholds, practice] */
export const MOVE_FROM = 0.3;
export const STOP_FROM = 0.7;

/**
 * Moments of a uniform rail's own weight over supports, N·mm, + sagging: three-moment equation between, overhangs as they hang.
 * [textbook] A rail on one support hangs both ways from it.
 *
 * @param load_N_mm weight per length
 * @param length_mm of the rail
 * @param supports_mm along it, rising, one or more
 */
export function momentAt(
  load_N_mm: number,
  length_mm: number,
  supports_mm: readonly number[],
): (at_mm: number) => number {
  const first = supports_mm[0]!;
  const last = supports_mm.at(-1)!;
  const over = supportMoments(load_N_mm, length_mm, supports_mm);
  return at => {
    if (at <= first) return (-load_N_mm * at ** 2) / 2;
    if (at >= last) return (-load_N_mm * (length_mm - at) ** 2) / 2;
    const next = supports_mm.findIndex(s => s >= at);
    const from = supports_mm[next - 1]!;
    const span = supports_mm[next]! - from;
    const x = at - from;
    const ends = over[next - 1]! + ((over[next]! - over[next - 1]!) * x) / span;
    return ends + (load_N_mm * x * (span - x)) / 2;
  };
}

function supportMoments(load: number, length: number, supports: readonly number[]): number[] {
  const ends = [(-load * supports[0]! ** 2) / 2, (-load * (length - supports.at(-1)!) ** 2) / 2];
  if (supports.length === 1) return [Math.min(...ends)];
  const spans = supports.slice(1).map((s, i) => s - supports[i]!);
  const m = supports.length - 2;
  if (m === 0) return ends;
  const a = new Float64Array(m * m);
  const b = new Float64Array(m);
  for (let i = 0; i < m; i++) {
    const [left, right] = [spans[i]!, spans[i + 1]!];
    a[i * m + i] = 2 * (left + right);
    if (i > 0) a[i * m + i - 1] = left;
    if (i + 1 < m) a[i * m + i + 1] = right;
    b[i] = (-load * (left ** 3 + right ** 3)) / 4;
    if (i === 0) b[i]! -= ends[0]! * left;
    if (i + 1 === m) b[i]! -= ends[1]! * right;
  }
  return [ends[0]!, ...(solveSmall(a, b) ?? new Float64Array(m)), ends[1]!];
}

/**
 * How near each slit is to giving way while it is welded: I = M / (k_y M_res). A moment that closes a slit is held by the faces
 * in contact, B t f_y h; one that opens it by the back wall and what tacks there are. [derived]
 *
 * @param tube the rail's section
 * @param length_mm of the rail, slits_mm and supports_mm along it
 * @param hot_C temperature at the slit
 * @param slits_up true when the slits face up: sagging closes them, hogging opens them
 * @param tacks_mm2 area of the tacks on one slit's face
 */
export function hotSlits(
  tube: SlitTube,
  length_mm: number,
  slits_mm: readonly number[],
  supports_mm: readonly number[],
  hot_C: number,
  slits_up: boolean,
  tacks_mm2 = 0,
): HotSlit[] {
  const lever = tube.depth_mm - tube.wall_mm / 2;
  const left = Math.max(hotSteel(hot_C).yield, 1e-6);
  const shut = tube.width_mm * tube.wall_mm * tube.yield_MPa * lever;
  const open = backWallMoment(tube) + tacks_mm2 * tube.yield_MPa * lever;
  const moment = momentAt(weightPerLength(tube), length_mm, supports_mm);
  return slits_mm.map(at_mm => {
    const moment_Nmm = moment(at_mm);
    const closes = moment_Nmm >= 0 === slits_up;
    const index = Math.abs(moment_Nmm) / (left * (closes ? shut : open));
    const advice = index < MOVE_FROM ? 'go' : index <= STOP_FROM ? 'move a support' : 'do not weld here';
    return { at_mm, moment_Nmm, closes, index, advice };
  });
}

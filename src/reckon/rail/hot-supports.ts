import { type HotSlit, MOVE_FROM, momentAt, STOP_FROM } from './hot-sag.ts';
import { hotSteel } from './hot-steel.ts';
import { backWallMoment, type SlitTube, weightPerLength } from './own-weight.ts';

/** What a row of supports does to the slits of a rail while each is hot in turn. */
export type HotRow = Readonly<{
  supports_mm: readonly number[];
  /** Overhang beyond the first and the last, mm. */
  over_mm: number;
  /** From one support to the next, mm; 0 with one. */
  apart_mm: number;
  slits: readonly HotSlit[];
  /** Index in `slits` of the one nearest to giving way. */
  worst: number;
}>;

/** Overhangs that are tried, as shares of the length: from nearly at the ends to past the quarter points. */
const LEAST = 0.01;
const MOST = 0.3;
const STEPS = 58;

/** Supports evenly apart, as far in from either end as told; one stands in the middle. */
export function supportRow(length_mm: number, count: number, over_mm: number): readonly number[] {
  if (count === 1) return [length_mm / 2];
  const apart = (length_mm - 2 * over_mm) / (count - 1);
  return Array.from({ length: count }, (_, k) => over_mm + k * apart);
}

export type HotRail = Readonly<{
  tube: SlitTube;
  length_mm: number;
  /** Along the rail, mm. */
  slits_mm: readonly number[];
  /** Temperature at the slit that is welded, °C. */
  hot_C: number;
  slits_up: boolean;
}>;

/**
 * What the rail's own weight does at every slit over an even row of supports, while that slit is hot: its back wall alone is
 * counted, either way. The tack melts, faces set on a gap do not touch, and a slit creeps shut while its weld is liquid.
 * [derived, from the moments of a uniform bar]
 */
export function hotRow(rail: HotRail, count: number, over_mm: number): HotRow {
  const { tube, length_mm, slits_mm, hot_C, slits_up } = rail;
  const supports_mm = supportRow(length_mm, count, over_mm);
  const moment = momentAt(weightPerLength(tube), length_mm, supports_mm);
  const holds = Math.max(hotSteel(hot_C).yield, 1e-6) * backWallMoment(tube);
  const slits = slits_mm.map((at_mm): HotSlit => {
    const moment_Nmm = moment(at_mm);
    const index = Math.abs(moment_Nmm) / holds;
    const advice = index < MOVE_FROM ? 'go' : index <= STOP_FROM ? 'move a support' : 'do not weld here';
    return { at_mm, moment_Nmm, closes: moment_Nmm >= 0 === slits_up, index, advice };
  });
  const worst = slits.reduce((at, s, i) => (s.index > (slits[at]?.index ?? 0) ? i : at), 0);
  const apart_mm = count > 1 ? (supports_mm[1] ?? 0) - (supports_mm[0] ?? 0) : 0;
  return { supports_mm, over_mm: supports_mm[0] ?? 0, apart_mm, slits, worst };
}

/** The row of so many supports over which the worst slit holds best. */
export function bestRow(rail: HotRail, count: number): HotRow {
  let best: HotRow | null = null;
  for (let k = 0; k <= STEPS; k++) {
    const over = (LEAST + ((MOST - LEAST) * k) / STEPS) * rail.length_mm;
    const row = hotRow(rail, count, over);
    if (best === null || indexOf(row) < indexOf(best)) best = row;
    if (count === 1) break;
  }
  return best ?? hotRow(rail, count, LEAST * rail.length_mm);
}

/** Share of what it holds that the worst slit of a row has to bear. */
export const indexOf = (row: HotRow): number => row.slits[row.worst]?.index ?? 0;

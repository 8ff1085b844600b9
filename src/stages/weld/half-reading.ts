import { readStations } from '../../build/facts.ts';
import type { Survey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import type { Situation } from '../situation.ts';
import { bendTold } from '../slit-errors.ts';
import { halvesOf } from '../weld-order.ts';
import { slitNumbers } from './rail-pull.ts';

/** Stations of two surveys are one and the same when they are this near, mm. */
const SAME_STATION = 2;
const LEAST_STATIONS = 5;

const latest = (s: Situation, rail: RailName, phase: Survey['phase']): Survey | undefined =>
  s.build.surveys
    .filter(x => x.closed && !x.retired && x.rail === rail && x.kind === 'curve' && x.phase === phase)
    .sort((a, b) => a.n - b.n)
    .at(-1);

/** What the half-way survey tells: bend that each slit with welded sides has brought since the rail was read tacked, rad. */
export type HalfReading = Readonly<{ survey: string; perSlit_rad: number; welded: readonly number[] }>;

/**
 * The half-way survey against the tacked one, station by station: errors that were there before cancel, what the side welds brought
 * is left. Null until both are closed, or when they share too few stations.
 */
export const halfReading = (s: Situation, plan: RailPlan): HalfReading | null => {
  const half = latest(s, plan.rail, 'half-welded');
  const tacked = latest(s, plan.rail, 'tacked');
  if (half === undefined || tacked === undefined) return null;
  const now = readStations(half);
  const before = readStations(tacked);
  const line = tacked.to;
  // Read to another line or edge the two cannot be subtracted.
  if (half.to !== line || half.edge !== tacked.edge) return null;
  const stations: number[] = [];
  const moved: number[] = [];
  now.stations_mm.forEach((at, i) => {
    const k = before.stations_mm.findIndex(b => Math.abs(b - at) < SAME_STATION);
    if (k < 0) return;
    stations.push(at);
    moved.push((now.offsets_mm[i] ?? 0) - (before.offsets_mm[k] ?? 0));
  });
  if (stations.length < LEAST_STATIONS) return null;
  const { first } = halvesOf(slitNumbers(plan));
  return { survey: half.id, perSlit_rad: bendTold(plan, line, stations, moved, first), welded: first };
};

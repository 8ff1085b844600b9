import { good, type Outcome } from '../../quantity/outcome.ts';
import { bracedRail } from './braced-rail.ts';
import { clampBareRail } from './clamped-rail.ts';
import { bareRail, checkForced, type ForcedRail, footBelow, railPlaces, type Stiff } from './forced-rail.ts';
import { type FrameAnswer, prepareFrame } from './frame.ts';
import type { NodeLoad } from './frame-loads.ts';
import type { FrameModel } from './frame-model.ts';
import { type LinePlace, layToLine, placeNearest } from './rail-line.ts';

export type SpringBack = Readonly<{
  /** Force each clamp puts on the rail, N, + toward the centre. */
  clamps: readonly Readonly<{ at_mm: number; force_N: number }>[];
  /** What the rail has sprung at each station when let go and laid to its line again, mm, + toward the centre. */
  stations: readonly Readonly<{ at_mm: number; back_mm: number }>[];
  worst_mm: number;
  /** The worst that no brace at all would leave. */
  unbraced_mm: number;
  /** Forced so many times as far, past its line, the least of it is left once it is let go: how many times, and the worst left, mm. */
  over: Readonly<{ times: number; left_mm: number }>;
  /** Greatest stress in the rail, ends of bays, while clamped and after. */
  clamped_MPa: number;
  released_MPa: number;
}>;

/**
 * What comes back when a rail that was forced to its line by clamps is let go after braces went in, stress-free.
 * The clamps' forces on the bare rail, taken off the braced one: both linear, plane, with full-strength slits.
 * Refuses fewer than two clamps or stations, places off the line or the base rail, and a frame that moves freely.
 * Source: change = K_braced⁻¹·K_free·forced [derived].
 */
export const springBack = async (forced: ForcedRail): Promise<Outcome<SpringBack>> => {
  const fault = checkForced(forced);
  if (fault !== null) return fault;
  const places = railPlaces(forced);
  const clamped = await clampBareRail(forced, places);
  if (!clamped.ok) return clamped;
  const bare = await letGo(bareRail(forced, places), clamped.value.loads);
  if (!bare.ok) return bare;
  const braced = await letGo(bracedRail(forced, places), clamped.value.loads);
  if (!braced.ok) return braced;

  const back = springAt(forced, places, braced.value);
  const free = springAt(forced, places, bare.value);
  return good({
    clamps: clamped.value.clamps,
    stations: forced.stations_mm.map((at_mm, k) => ({ at_mm, back_mm: back[k]! })),
    worst_mm: worst(back),
    unbraced_mm: worst(free),
    over: bestTimes(free, back),
    clamped_MPa: peakStress(forced, places, [clamped.value.answer]),
    released_MPa: peakStress(forced, places, [clamped.value.answer, braced.value]),
  });
};

/** Nobody forces a rail farther past its line than this, as a share of how far it was off. */
const MOST_TIMES = 1.5;
const TIMES_STEPS = 100;

/**
 * How much farther to force a rail than to its line. Free it lies off by what it springs back without a brace; forced k times as
 * far and let go braced it lies off by free − k (free − back), for all of it is linear. [derived]
 */
const bestTimes = (free: readonly number[], back: readonly number[]): SpringBack['over'] => {
  const left = (times: number): number => worst(free.map((f, j) => f - times * (f - (back[j] ?? 0))));
  let best = { times: 1, left_mm: left(1) };
  for (let k = 1; k <= TIMES_STEPS; k++) {
    const times = 1 + ((MOST_TIMES - 1) * k) / TIMES_STEPS;
    const left_mm = left(times);
    if (left_mm < best.left_mm) best = { times, left_mm };
  }
  return best;
};

/** What comes back at worst, mm, with so many uprights welded. */
export type SpringBackRow = Readonly<{
  welded: number;
  loose_mm: number;
  looseWithDiagonals_mm: number;
  held_mm: number;
}>;

/**
 * How many uprights to weld before letting go: one row for the first upright, the first two, and so on in the order listed,
 * each with the base rail loose, loose with a diagonal in every bay between welded uprights (from the foot nearer the toe up
 * to the head nearer the lip), and held down at its start and at every foot. Refuses as `springBack` does.
 */
export const springBackTable = async (
  forced: ForcedRail,
  diagonal: Stiff,
): Promise<Outcome<readonly SpringBackRow[]>> => {
  const fault = checkForced(forced);
  if (fault !== null) return fault;
  const places = railPlaces(forced);
  const clamped = await clampBareRail(forced, places);
  if (!clamped.ok) return clamped;
  const rows: SpringBackRow[] = [];
  for (const welded of forced.uprights.keys()) {
    const braced = weldFirst(forced, welded + 1);
    const feet = braced.uprights.map(({ at_mm }) =>
      footBelow(places[placeNearest(places, at_mm)]!, forced.base),
    );
    const cases: readonly ForcedRail[] = [
      braced,
      { ...braced, diagonals: diagonalsBetween(braced, feet, diagonal) },
      { ...braced, base: { ...forced.base, heldAt_mm: [0, ...feet] } },
    ];
    const backs: number[] = [];
    for (const one of cases) {
      const released = await letGo(bracedRail(one, places), clamped.value.loads);
      if (!released.ok) return released;
      backs.push(worst(springAt(forced, places, released.value)));
    }
    rows.push({
      welded: welded + 1,
      loose_mm: backs[0]!,
      looseWithDiagonals_mm: backs[1]!,
      held_mm: backs[2]!,
    });
  }
  return good(rows);
};

/** The first so many uprights of the list, fully welded, in order along the rail; base loose, no diagonals. */
const weldFirst = (forced: ForcedRail, count: number): ForcedRail => ({
  ...forced,
  uprights: forced.uprights
    .slice(0, count)
    .map(upright => ({ ...upright, counts: 1 as const }))
    .sort((a, b) => a.at_mm - b.at_mm),
  diagonals: [],
  base: { ...forced.base, heldAt_mm: [] },
});

const diagonalsBetween = (
  { uprights }: ForcedRail,
  feet: readonly number[],
  section: Stiff,
): ForcedRail['diagonals'] =>
  uprights.slice(1).map(({ at_mm }, k) => ({ foot_mm: feet[k]!, head_mm: at_mm, section, counts: 1 }));

const letGo = async (model: FrameModel, loads: readonly NodeLoad[]): Promise<Outcome<FrameAnswer>> => {
  const frame = await prepareFrame(model);
  return frame.ok ? frame.value.solve(loads) : frame;
};

const springAt = (
  { stations_mm }: ForcedRail,
  places: readonly LinePlace[],
  { nodes }: FrameAnswer,
): number[] => {
  const stations = stations_mm.map(at => placeNearest(places, at));
  const offsets = stations.map(k => nodes[k]!.x_mm * places[k]!.left.x + nodes[k]!.y_mm * places[k]!.left.y);
  return layToLine(
    stations.map(k => places[k]!),
    offsets,
  );
};

const worst = (offsets: readonly number[]): number =>
  offsets.reduce((most, offset) => Math.max(most, Math.abs(offset)), 0);

/** Axial and bending stress at the ends of the rail's bays, the answers added together. */
const peakStress = (
  { rail }: ForcedRail,
  places: readonly LinePlace[],
  answers: readonly FrameAnswer[],
): number =>
  places.slice(1).reduce((most, _, k) => {
    const total = (end: 'from' | 'to', force: 'axial_N' | 'moment_Nmm') =>
      answers.reduce((sum, answer) => sum + answer.members[k]![end][force], 0);
    const stress = (end: 'from' | 'to') =>
      Math.abs(total(end, 'axial_N')) / rail.area_mm2 +
      (Math.abs(total(end, 'moment_Nmm')) * rail.depth_mm) / 2 / rail.inertia_mm4;
    return Math.max(most, stress('from'), stress('to'));
  }, 0);

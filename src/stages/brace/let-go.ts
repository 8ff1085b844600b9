import { countingSurvey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { Gate, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { holdingOf } from './holding.ts';
import { SMOOTH_LIMIT } from './limits.ts';
import { diagonalsOf, flatsNear, KEYS } from './side.ts';

/** One clamp, or one pair of blocks, for so much of rail, mm; never fewer than three (common practice). */
const RAIL_PER_CLAMP = 400;
const FEWEST_CLAMPS = 3;

/** Flats that carry a clamp, entry to lip. */
export const clampFlats = (s: Situation, rail: RailName): readonly number[] => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined) return [];
  const count = Math.max(FEWEST_CLAMPS, Math.ceil(plan.toLip_mm / RAIL_PER_CLAMP));
  const wanted = Array.from({ length: count }, (_, k) => ((k + 0.5) * plan.toLip_mm) / count);
  return [...flatsNear(plan, wanted)].sort((a, b) => a - b);
};

/** The order clamps come off: the middle one first, then outward by turns, the ends last. */
export const middleFirst = <T>(row: readonly T[]): readonly T[] => {
  const centre = (row.length - 1) / 2;
  return row
    .map((thing, k) => ({ thing, off: Math.abs(k - centre), k }))
    .sort((a, b) => a.off - b.off || a.k - b.k)
    .map(o => o.thing);
};

const notHeld = (s: Situation, rail: RailName): Gate => {
  const held = holdingOf(s, rail);
  return {
    id: 'rail-not-held',
    shut: !held.enough,
    fills: { rail, between: held.between, needed: held.needed, diagonals: held.diagonalsOpen },
    measure: KEYS.weld(rail),
  };
};

/** Letting the clamps go, and reading the rail as it stands by itself. */
export const letGoSteps = (s: Situation, rail: RailName, turn: number): readonly StepDraft[] => {
  const plan = s.ramp.plans.get(rail);
  const items: readonly Item[] = middleFirst(clampFlats(s, rail)).map(flat => ({
    key: `${KEYS.clamps(rail)}#${flat}`,
    name: String(flat),
    value: { v: plan?.flats_mm[flat] ?? 0, as: 'length' },
  }));
  return [
    {
      key: KEYS.clamps(rail),
      stage: 'brace',
      words: 'clamps',
      fills: {
        rail,
        count: items.length,
        limit: { v: SMOOTH_LIMIT[s.ramp.design.tolerance], as: 'length' },
      },
      turn,
      needs: [
        KEYS.weld(rail),
        KEYS.join(rail),
        ...(diagonalsOf(s, rail).length > 0 ? [KEYS.weldDiagonals(rail)] : []),
      ],
      uses: [`springs-back@${rail}`, `clamp-holds@${rail}`],
      tall: [`springs-back@${rail}`],
      line: 'finished line',
      items,
      gates: [notHeld(s, rail)],
      cautions: ['clamp-force'],
      minutes: [15, 25],
    },
    {
      key: KEYS.survey(rail),
      stage: 'brace',
      words: 'survey',
      fills: { rail, count: stationsOf(s, rail).length },
      turn: turn + 10,
      needs: [KEYS.clamps(rail)],
      uses: [`springs-back@${rail}`],
      line: 'finished line',
      survey: {
        kind: 'curve',
        rail,
        phase: 'unclamped',
        to: 'finished line',
        stations_mm: stationsOf(s, rail),
      },
      minutes: [15, 30],
    },
  ];
};

/** Stations along the bottom face: those of the survey that counts, so that the two compare spot by spot; else the flats' middles. */
export const stationsOf = (s: Situation, rail: RailName): readonly number[] => {
  const before = countingSurvey(s.build, rail);
  if (before !== null && before.stations_mm.length >= 3) return before.stations_mm;
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined) return [];
  const arc = plan.finished.radius_mm * plan.turn_rad;
  const stations = plan.flats_mm.map(at => (at / plan.bend_mm) * arc);
  return plan.straight_mm > 0 ? [...stations, arc + plan.straight_mm] : stations;
};

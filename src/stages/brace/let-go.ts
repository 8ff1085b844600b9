import { countingSurvey } from '../../build/surveys.ts';
import type { RailName } from '../../ramp/design.ts';
import { limitsOf } from '../rail-findings/limits.ts';
import { clampPlaces } from '../remedies/forced-rail.ts';
import type { Gate, Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { holdingOf } from './holding.ts';
import { diagonalsOf, KEYS } from './side.ts';
import { springGate, springTableIds } from './spring-back.ts';

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
  const items: readonly Item[] = middleFirst(plan === undefined ? [] : clampPlaces(plan)).map(clamp => ({
    key: `${KEYS.clamps(rail)}#${clamp.name}`,
    name: clamp.name,
    value: { v: clamp.along_mm, as: 'length' },
  }));
  return [
    {
      key: KEYS.clamps(rail),
      stage: 'brace',
      words: 'clamps',
      fills: {
        rail,
        count: items.length,
        limit: { v: limitsOf(s).smooth, as: 'length' },
      },
      turn,
      needs: [
        KEYS.weld(rail),
        KEYS.join(rail),
        ...(diagonalsOf(s, rail).length > 0 ? [KEYS.weldDiagonals(rail)] : []),
      ],
      uses: [`springs-back@${rail}`, `clamp-holds@${rail}`, ...springTableIds(rail)],
      tall: [`springs-back@${rail}`],
      line: 'finished line',
      items,
      gates: [notHeld(s, rail), springGate(s, rail)],
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

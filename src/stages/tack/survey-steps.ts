import type { RailName } from '../../ramp/design.ts';
import { alongLine, jigScene } from '../jig.ts';
import { offsetScene } from '../offset-scene.ts';
import { railTurn } from '../order.ts';
import type { Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { flatStations } from '../slit-errors.ts';
import { SUPPORTS } from './hot-supports.ts';
import { SIDEWAYS_LIMIT, SMOOTH_LIMIT, TWIST_LIMIT } from './limits.ts';
import { KEYS, lastThird } from './thirds.ts';

const DEGREE = Math.PI / 180;
/** Stations of the sideways reading: ends and between (common practice). */
const SIDEWAYS_STATIONS = 7;
/** Surveys come after the last third of every rail that goes in step. */
const AFTER_THIRDS = 12;
/** Places a plank is strapped to a slit rail to carry it (common practice). */
const STRAPS = 4;
/** Stations read twice, whose spread is what a reading is worth (common practice). */
const TWICE = 5;

/** How far a lip mark may stand from the line's own before the field asks once more, and at most, mm. */
const LIP_USUAL = 10;
const LIP_MOST = 300;

const length = (v: number) => ({ v, as: 'length' }) as const;

/** Flats nearest to even places along the rail, both ends among them, mm along the line. */
const sidewaysStations = (stations: readonly number[]): readonly number[] => {
  const last = stations.length - 1;
  const picked = Array.from({ length: SIDEWAYS_STATIONS }, (_, k) =>
    Math.round((k * last) / (SIDEWAYS_STATIONS - 1)),
  );
  return [...new Set(picked)].map(k => stations[k] ?? 0);
};

/** Offsets, sideways line and twist, all before any welding: a tacked rail can still be opened with a grinder and a hand. */
export const surveySteps = (s: Situation, rail: RailName, index: number): readonly StepDraft[] => {
  const plan = s.ramp.plans.get(rail);
  if (plan === undefined) return [];
  const d = s.ramp.design;
  const rolled = plan.slits.length === 0;
  const line = rolled ? 'finished line' : 'tack line';
  const stations = flatStations(plan, line);
  const last = lastThird(s, rail);
  const before = rolled
    ? ['tack/blocks', `cut/clean-rail@${rail}`]
    : last === undefined
      ? []
      : [KEYS.read(rail, last)];
  const turn = (at: number) => railTurn(d, index, { after: 'survey', at: AFTER_THIRDS + at });
  const fills: Fills = {
    rail,
    count: stations.length,
    twice: Math.min(TWICE, stations.length),
    limit: length(SMOOTH_LIMIT[d.tolerance]),
    sideways: length(SIDEWAYS_LIMIT),
    twist: { v: TWIST_LIMIT[d.tolerance], as: 'angle' },
    straps: STRAPS,
  };
  const scene = offsetScene(
    plan,
    line,
    stations.map(station_mm => ({ station_mm, offset_mm: null })),
    null,
  );
  const twist = {
    as: 'angle',
    expected: [-2 * DEGREE, 2 * DEGREE],
    possible: [-30 * DEGREE, 30 * DEGREE],
  } as const;
  const common = { stage: 'tack', fills, line } as const;
  const steps: StepDraft[] = [
    {
      ...common,
      key: `tack/survey@${rail}`,
      words: rolled ? 'survey-rolled' : 'survey',
      turn: turn(0),
      needs: before,
      uses: [],
      survey: { kind: 'curve', rail, phase: 'tacked', to: line, stations_mm: stations },
      minutes: [stations.length, 2 * stations.length],
      scene,
    },
    {
      ...common,
      key: `tack/sideways@${rail}`,
      words: 'sideways',
      turn: turn(1),
      needs: before,
      uses: [],
      survey: {
        kind: 'sideways',
        rail,
        phase: 'tacked',
        to: line,
        stations_mm: sidewaysStations(stations),
      },
      minutes: [10, 15],
    },
    {
      ...common,
      key: `tack/twist@${rail}`,
      words: 'twist',
      turn: turn(2),
      needs: before,
      uses: [],
      asks: [
        { ask: 'entry', ...twist },
        { ask: 'lip', ...twist },
        { ask: 'lip-mark', as: 'length', expected: [-LIP_USUAL, LIP_USUAL], possible: [-LIP_MOST, LIP_MOST] },
      ],
      minutes: [5, 10],
    },
  ];
  if (rolled) return steps;
  return [
    ...steps,
    {
      ...common,
      key: `tack/carry@${rail}`,
      words: 'carry',
      turn: turn(4),
      needs: [`tack/survey@${rail}`, `tack/sideways@${rail}`, `tack/twist@${rail}`, SUPPORTS],
      uses: [`overhang@${rail}`],
      cautions: ['tack-lift'],
      minutes: [10, 20],
      scene: jigScene(s, rail, {
        railOn: 'tack line',
        lit_mm: alongLine(plan, 'tack line', plan.toLip_mm / 2),
      }),
    },
  ];
};

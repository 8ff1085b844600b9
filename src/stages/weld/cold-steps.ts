import type { RailPlan } from '../../ramp/rail-plan.ts';
import { alongLine, jigScene } from '../jig.ts';
import { railTurn } from '../order.ts';
import type { Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { flatStations } from '../slit-errors.ts';
import { SIDEWAYS_LIMIT, SMOOTH_LIMIT } from './limits.ts';
import { KEYS } from './rail-pull.ts';
import { pairsOf } from './rails-apart.ts';

/** Stations of the sideways reading: ends and between (common practice). */
const SIDEWAYS_STATIONS = 7;

const length = (v: number) => ({ v, as: 'length' }) as const;

/** The rail cold and free, along its curve and sideways: what every later piece is cut to. */
export const coldSteps = (s: Situation, plan: RailPlan, index: number): readonly StepDraft[] => {
  const { rail } = plan;
  const d = s.ramp.design;
  const rolled = plan.slits.length === 0;
  const stations = flatStations(plan, 'finished line');
  const last = stations.length - 1;
  const sideways = [
    ...new Set(
      Array.from({ length: SIDEWAYS_STATIONS }, (_, k) => Math.round((k * last) / (SIDEWAYS_STATIONS - 1))),
    ),
  ].map(k => stations[k] ?? 0);
  const fills: Fills = {
    rail,
    count: stations.length,
    limit: length(SMOOTH_LIMIT[d.tolerance]),
    sideways: length(SIDEWAYS_LIMIT),
  };
  const turn = (at: number) => railTurn(d, index, { after: 'cold', at });
  const curve: StepDraft = {
    key: KEYS.cold(rail),
    stage: 'weld',
    words: rolled ? 'cold-survey-rolled' : 'cold-survey',
    fills,
    turn: turn(3),
    needs: rolled
      ? [`tack/survey@${rail}`, `tack/sideways@${rail}`, `tack/twist@${rail}`]
      : [KEYS.cool(rail), KEYS.bend(rail)],
    uses: [],
    line: 'finished line',
    survey: { kind: 'curve', rail, phase: 'cold', to: 'finished line', stations_mm: stations },
    minutes: [stations.length, 2 * stations.length],
    scene: jigScene(s, rail, {
      railOn: 'finished line',
      lit_mm: alongLine(plan, 'finished line', plan.toLip_mm),
    }),
  };
  if (rolled) return [curve];
  return [
    curve,
    {
      key: `weld/cold-sideways@${rail}`,
      stage: 'weld',
      words: 'cold-sideways',
      fills,
      turn: turn(4),
      needs: [KEYS.cool(rail)],
      uses: [],
      line: 'finished line',
      survey: { kind: 'sideways', rail, phase: 'cold', to: 'finished line', stations_mm: sideways },
      minutes: [10, 15],
    },
  ];
};

/** Rails against each other, once all are cold. */
export const compareSteps = (s: Situation): readonly StepDraft[] => {
  const { rails, design: d } = s.ramp;
  const last = rails.length - 1;
  if (last < 1) return [];
  const pairs = pairsOf(s).map(([a, b]) => `rails-apart@${a}-${b}`);
  return [
    {
      key: 'weld/compare',
      stage: 'weld',
      words: 'compare',
      fills: { rails: rails.join(', '), count: rails.length, limit: length(SMOOTH_LIMIT[d.tolerance]) },
      turn: railTurn(d, last, { after: 'cold', at: 9 }),
      needs: rails.map(KEYS.cold),
      uses: pairs,
      line: 'finished line',
      minutes: [10, 20],
    },
  ];
};

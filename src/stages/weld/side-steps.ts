import { offsetScene } from '../offset-scene.ts';
import { railTurn } from '../order.ts';
import type { StepDraft } from '../sheet.ts';
import { flatStations } from '../slit-errors.ts';
import { slitStrip } from '../slit-strip.ts';
import { halvesOf } from '../weld-order.ts';
import { chosenKeys } from './chosen-steps.ts';
import { couponsKey } from './coupon-steps.ts';
import { hotGates } from './hot-gates.ts';
import type { RailJob } from './rail-job.ts';
import { KEYS, slitNumbers } from './rail-pull.ts';
import { openSlit, roundItems } from './round-items.ts';
import { workedNeeds } from './worked-steps.ts';

/** Minutes of one slit's two sides, gun in hand and cooling among them (common practice: 0.5 to 0.8 an inch and pauses). */
const SIDE_MINUTES = [3, 6] as const;

/** Sides of a rail's slits: every second one, a survey half way, and those between. */
export const sideSteps = ({ s, plan, index, standing, common, set }: RailJob): readonly StepDraft[] => {
  const { rail } = plan;
  const halves = halvesOf(slitNumbers(plan));
  const turn = (at: number) => railTurn(s.ramp.design, index, { after: 'weld', at });
  const note = { slitNote: 'weld-side-item' };
  const first = roundItems(KEYS.sidesFirst(rail), halves.first, { ...note, look: true });
  const rest = roundItems(KEYS.sidesRest(rail), halves.rest, { ...note, look: false });
  const stations = flatStations(plan, 'tack line');
  const minutes = (n: number): [number, number] => [n * SIDE_MINUTES[0], n * SIDE_MINUTES[1]];
  const steps: StepDraft[] = [
    {
      ...common,
      key: KEYS.sidesFirst(rail),
      words: standing ? 'sides-first' : 'sides-first-lying',
      turn: turn(0),
      needs: [
        `tack/survey@${rail}`,
        `tack/sideways@${rail}`,
        `tack/carry@${rail}`,
        `prep/open-faces@${rail}`,
        'weld/settings',
        couponsKey(s),
        ...workedNeeds(s, 'slits'),
        'prep/body',
        'prep/dry-steel',
      ],
      uses: ['weld-amps', 'weld-shade', `pull-all@${rail}`],
      tall: set,
      items: first,
      gates: hotGates(s),
      cautions: ['weld-fume', 'weld-fire-watch'],
      minutes: minutes(halves.first.length),
      scene: slitStrip(s, rail, openSlit(s, first)),
    },
    {
      ...common,
      key: KEYS.half(rail),
      words: 'half-survey',
      turn: turn(1),
      needs: [KEYS.sidesFirst(rail)],
      uses: [`half-bend@${rail}`, `half-lip@${rail}`],
      tall: [`half-lip@${rail}`],
      line: 'tack line',
      survey: { kind: 'curve', rail, phase: 'half-welded', to: 'tack line', stations_mm: stations },
      minutes: [stations.length, 2 * stations.length],
      scene: offsetScene(
        plan,
        'tack line',
        stations.map(station_mm => ({ station_mm, offset_mm: null })),
        null,
      ),
    },
    {
      ...common,
      key: KEYS.sidesRest(rail),
      words: standing ? 'sides-rest' : 'sides-rest-lying',
      turn: turn(4),
      needs: [KEYS.half(rail), couponsKey(s), ...chosenKeys(s, rail)],
      uses: [`half-told@${rail}`, `gap@${rail}`, 'weld-shade'],
      tall: set,
      items: rest,
      gates: hotGates(s),
      minutes: minutes(halves.rest.length),
      scene: slitStrip(s, rail, openSlit(s, rest)),
    },
  ];
  return steps.filter(step => step.items === undefined || step.items.length > 0);
};

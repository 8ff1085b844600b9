import { railTurn } from '../order.ts';
import type { Ask, StepDraft } from '../sheet.ts';
import { slitStrip } from '../slit-strip.ts';
import { couponsKey } from './coupon-steps.ts';
import { hotGates } from './hot-gates.ts';
import type { RailJob } from './rail-job.ts';
import {
  around,
  type Band,
  bendForeseen,
  KEYS,
  pullOddTops,
  slitNumbers,
  tackedBend,
  topsOf,
} from './rail-pull.ts';
import { openSlit, roundItems } from './round-items.ts';
import { topsWords } from './tops-findings.ts';

/** Minutes of one top, gun in hand and cooling among them (common practice). */
const TOP_MINUTES = [2, 4] as const;
/** A bend read otherwise than foreseen by no more than this is taken as it is, rad: half a degree. */
const SURPRISING = (0.5 * Math.PI) / 180;

/** Bend reading of a rail: what it should be, how far it may be off before the field asks again. */
const bendAsk = (foreseen: Band, turn_rad: number): Ask => ({
  ask: 'bent',
  as: 'angle',
  expected: around(foreseen, SURPRISING),
  possible: [0, 2 * turn_rad + 0.2],
});

/** Tops of a rail's slits: odd ones, a reading, even ones, and the rail cold with its bend read. */
export const topSteps = ({ s, plan, index, inStep, common, set }: RailJob): readonly StepDraft[] => {
  const { rail, turn_rad } = plan;
  const d = s.ramp.design;
  const tops = topsOf(plan);
  const tacked = tackedBend(s, plan);
  const odd = pullOddTops(plan);
  const turn = (at: number) => railTurn(d, index, { after: 'weld', at });
  const note = { slitNote: 'weld-top-item', look: false };
  const oddItems = roundItems(KEYS.topsOdd(rail), tops.odd, note);
  const evenItems = roundItems(KEYS.topsEven(rail), tops.even, note);
  const minutes = (n: number): [number, number] => [n * TOP_MINUTES[0], n * TOP_MINUTES[1]];
  // Tops of rails welded in step are left for one evening: the sides of all of them come first. A rail of one slit has no rest.
  const sides = (r: string): string => {
    const other = s.ramp.plans.get(r);
    return other !== undefined && slitNumbers(other).length > 1 ? KEYS.sidesRest(r) : KEYS.half(r);
  };
  const steps: StepDraft[] = [
    {
      ...common,
      key: KEYS.topsOdd(rail),
      words: inStep ? 'tops-odd-in-step' : 'tops-odd',
      turn: turn(8),
      needs: [...(inStep ? s.ramp.rails : [rail]).map(sides), couponsKey(s)],
      uses: ['weld-amps'],
      tall: set,
      items: oddItems,
      gates: hotGates(s),
      minutes: minutes(tops.odd.length),
      scene: slitStrip(s, rail, openSlit(s, oddItems)),
    },
    {
      ...common,
      key: KEYS.readTops(rail),
      words: 'read-tops',
      turn: turn(10),
      needs: [KEYS.topsOdd(rail)],
      uses: [`odd-bend@${rail}`],
      tall: [`odd-bend@${rail}`],
      asks: [
        bendAsk({ low: tacked + odd.low, likely: tacked + odd.likely, high: tacked + odd.high }, turn_rad),
      ],
      minutes: [5, 10],
    },
    {
      ...common,
      key: KEYS.topsEven(rail),
      words: topsWords(s, rail),
      turn: turn(12),
      needs: [KEYS.readTops(rail), couponsKey(s)],
      uses: [`bend-cold@${rail}`],
      // The machine stands as it did for the odd tops: the room is the foreseen bend's.
      items: evenItems,
      gates: hotGates(s),
      minutes: minutes(tops.even.length),
      scene: slitStrip(s, rail, openSlit(s, evenItems)),
    },
    {
      ...common,
      key: KEYS.cool(rail),
      words: 'cool',
      turn: railTurn(d, index, { after: 'cold', at: 0 }),
      needs: [tops.even.length > 0 ? KEYS.topsEven(rail) : KEYS.readTops(rail)],
      uses: [],
      minutes: [60, 90],
    },
    {
      ...common,
      key: KEYS.bend(rail),
      words: 'read-bend',
      turn: railTurn(d, index, { after: 'cold', at: 1 }),
      needs: [KEYS.cool(rail)],
      uses: [`bend-cold@${rail}`],
      asks: [bendAsk(bendForeseen(s, plan), turn_rad)],
      minutes: [5, 10],
    },
  ];
  return steps.filter(step => step.items === undefined || step.items.length > 0);
};

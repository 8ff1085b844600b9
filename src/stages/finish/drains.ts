import { CLEAR_OF_SLIT } from '../../ramp/members.ts';
import { TURN } from '../order.ts';
import type { Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** Drain holes, mm: large enough not to clog with rust, small enough for the wall (common practice: 8 to 10). */
const HOLE = 8;
/** Hole's middle from a tube's end where nothing is in the way, and the least that leaves steel round it, mm (common practice). */
const FROM_END = 25;
const LEAST_FROM_END = 12;
/** Outside edges are rounded to this, mm (common practice; the usual rule for roller sports elements, from memory). */
const ROUND = 3;
/** Rail ends past the deck, mm: none. A step in the deck a small wheel does not feel (common practice). */
const DECK_STEP = 2;

/** Lowest point of a curved rail, on its back wall: before the first slit, clear of it. */
export const railDrainAt = (firstSlit_mm: number | null): number =>
  firstSlit_mm === null
    ? FROM_END
    : Math.max(LEAST_FROM_END, Math.min(FROM_END, firstSlit_mm - CLEAR_OF_SLIT - HOLE / 2));

const drainItems = (s: Situation): readonly Item[] =>
  s.ramp.rails.flatMap(rail => {
    const slit = s.ramp.plans.get(rail)?.slits[0]?.at_mm ?? null;
    const item = (where: 'curved' | 'base-front' | 'base-rear', v: number): Item => ({
      key: `finish/drains#${rail} ${where}`,
      name: rail,
      value: { v, as: 'length' },
      note: { words: `says.finish-drain-${where}` },
    });
    return [item('curved', railDrainAt(slit)), item('base-front', FROM_END), item('base-rear', FROM_END)];
  });

/** Ends of tube that still stand open: they are capped, their vents left open. */
const openEnds = (s: Situation): number => 2 * s.ramp.rails.length;

/** Edges that a hand or a shin meets, and holes that let water out, before paint. */
export const edgeAndDrainSteps = (s: Situation): readonly StepDraft[] => [
  {
    key: 'finish/edges',
    stage: 'finish',
    words: 'edges',
    fills: {
      round: { v: ROUND, as: 'length' },
      step: { v: DECK_STEP, as: 'length' },
    },
    turn: TURN.finish + 60,
    needs: ['finish/trial-deck'],
    uses: [],
    minutes: [30, 60],
  },
  {
    key: 'finish/drains',
    stage: 'finish',
    words: 'drains',
    fills: {
      hole: { v: HOLE, as: 'length' },
      clear: { v: CLEAR_OF_SLIT, as: 'length' },
      ends: openEnds(s),
    },
    turn: TURN.finish + 70,
    needs: ['finish/proof'],
    uses: [],
    line: { face: 'hinge line' },
    items: drainItems(s),
    minutes: [20, 40],
  },
];

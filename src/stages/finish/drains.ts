import { CLEAR_OF_SLIT } from '../../ramp/members.ts';
import { TURN } from '../order.ts';
import type { Item, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** Drain holes, mm: large enough not to clog with rust, small enough for the wall (common practice: 8 to 10). */
const HOLE = 8;
/** Hole's middle from a tube's end where nothing is in the way, and the least that leaves steel round it, mm (common practice). */
const FROM_END = 25;
const LEAST_FROM_END = 12;

/** Lowest point of a curved rail, on its back wall: before the first slit, clear of it. */
export const railDrainAt = (firstSlit_mm: number | null): number =>
  firstSlit_mm === null
    ? FROM_END
    : Math.max(LEAST_FROM_END, Math.min(FROM_END, firstSlit_mm - CLEAR_OF_SLIT - HOLE / 2));

/** From an end of a base rail, underneath: past the foot plate that is welded on there, and clear of its weld. */
export const baseDrainAt = (footPlate_mm: number): number => footPlate_mm + FROM_END;

const drainItems = (s: Situation): readonly Item[] => {
  const foot = s.ramp.members.find(m => m.kind === 'foot plate')?.tube.depth_mm ?? 0;
  return s.ramp.rails.flatMap(rail => {
    const slit = s.ramp.plans.get(rail)?.slits[0]?.at_mm ?? null;
    const item = (where: 'curved' | 'base-front' | 'base-rear', v: number): Item => ({
      key: `finish/drains#${rail} ${where}`,
      name: `${rail} ${where.replace('-', ' ')}`,
      value: { v, as: 'length' },
      note: { words: `says.finish-drain-${where}` },
    });
    return [
      item('curved', railDrainAt(slit)),
      item('base-front', baseDrainAt(foot)),
      item('base-rear', baseDrainAt(foot)),
    ];
  });
};

/** Ends of tube that still stand open: they are capped, their vents left open. */
const openEnds = (s: Situation): number => 2 * s.ramp.rails.length;

/** Holes that let water out, before paint. */
export const drainSteps = (s: Situation): readonly StepDraft[] => [
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

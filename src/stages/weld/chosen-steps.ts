import type { Chosen } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import { railTurn } from '../order.ts';
import type { Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { machineOf } from './machine.ts';
import { settingNow } from './setting-now.ts';

/** Numbers are read from what was frozen when the remedy was chosen; anything else in it is not understood and left out. */
const numbers = (v: unknown): readonly number[] =>
  Array.isArray(v) ? v.filter((n): n is number => typeof n === 'number') : [];

/** A narrower bead wants so much less feed or current, as a share, and so much less volts (common practice: 10 to 15 %, half a volt). */
const LESS = 0.9;
const LESS_VOLTS = 0.5;

/** From what to what the machine is turned for narrower beads on the rail's wall; null before it is told. */
const narrower = (s: Situation): Fills | null => {
  const set = settingNow(s, 'slits')?.set;
  if (set === undefined) return null;
  const feed = set.feed_m_min?.start;
  const [v, as] = feed === undefined ? ([set.amps.start, 'current'] as const) : ([feed, 'feed'] as const);
  return {
    was: { v, as },
    set: { v: LESS * v, as },
    volts: { v: set.volts.start - LESS_VOLTS, as: 'tension' },
  };
};

/** Steps that a chosen remedy of the half-way reading asks for, with the numbers it was chosen with. */
const stepOf = (s: Situation, chosen: Chosen): StepDraft | null => {
  const rail = typeof chosen.plan.rail === 'string' ? chosen.plan.rail : '';
  const index = s.ramp.rails.indexOf(rail);
  if (index < 0) return null;
  const key = `weld/${chosen.remedy}@${chosen.entry}`;
  const slits = numbers(chosen.plan.slits);
  const gap = typeof chosen.plan.gap_mm === 'number' ? chosen.plan.gap_mm : 0;
  const fills: Fills = { rail, count: slits.length, gap: { v: gap, as: 'thickness' } };
  const common = {
    key,
    stage: 'weld',
    fills,
    turn: railTurn(s.ramp.design, index, { after: 'weld', at: 3 }),
    needs: [],
    uses: [],
  } as const;
  switch (chosen.remedy) {
    case 'half-open-gaps':
    case 'half-check-tacks':
      return {
        ...common,
        words: chosen.remedy,
        line: 'tack line',
        items: slits.map(slit => ({ key: `${key}#${slit}`, name: String(slit) })),
        minutes: [3 * slits.length, 6 * slits.length],
      };
    case 'half-narrow-beads': {
      const set = narrower(s);
      return {
        ...common,
        words:
          set === null
            ? chosen.remedy
            : machineOf(s)?.process === 'smaw'
              ? 'half-narrow-rod'
              : 'half-narrow-set',
        fills: { ...fills, ...set },
        minutes: [10, 20],
      };
    }
    default:
      return null;
  }
};

/** Of two choices about one finding the later counts. */
const counting = (s: Situation): readonly Chosen[] =>
  s.build.chosen.filter(c => !s.build.chosen.some(later => later.n > c.n && later.finding === c.finding));

export const chosenSteps = (s: Situation): readonly StepDraft[] =>
  counting(s)
    .map(c => stepOf(s, c))
    .filter(step => step !== null);

/** Keys of the steps that chosen remedies ask for on one rail before more of it is welded. */
export const chosenKeys = (s: Situation, rail: RailName): readonly string[] =>
  counting(s)
    .filter(c => c.plan.rail === rail)
    .map(c => stepOf(s, c)?.key)
    .filter(key => key !== undefined);

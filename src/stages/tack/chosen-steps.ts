import type { Chosen } from '../../build/fold.ts';
import { railTurn } from '../order.ts';
import type { Fills, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { leverOf } from './thirds.ts';

/** Numbers are read from what was frozen when the remedy was chosen; anything else in it is not understood and left out. */
const numbers = (v: unknown): readonly number[] =>
  Array.isArray(v) ? v.filter((n): n is number => typeof n === 'number') : [];
const number = (v: unknown): number => (typeof v === 'number' ? v : 0);

/** Remedies that set the supports under all rails. */
const SUPPORTED = new Set(['hot-plank', 'hot-more', 'hot-move']);

const length = (v: number) => ({ v, as: 'length' }) as const;

/** What was chosen about the supports, once for all rails. */
const supportStep = (s: Situation, chosen: Chosen): StepDraft => ({
  key: `tack/${chosen.remedy}@${chosen.entry}`,
  stage: 'tack',
  words: chosen.remedy,
  fills: {
    count: number(chosen.plan.count),
    over: length(number(chosen.plan.over_mm)),
    apart: length(number(chosen.plan.apart_mm)),
  },
  turn: railTurn(s.ramp.design, 0, { after: 'survey', at: 14 }) + 1,
  needs: [],
  uses: [],
  minutes: [5, 20],
});

/** Steps that a chosen remedy of this page asks for, with the numbers it was chosen with. */
const stepOf = (s: Situation, chosen: Chosen): StepDraft | null => {
  if (SUPPORTED.has(chosen.remedy)) return supportStep(s, chosen);
  const rail = typeof chosen.plan.rail === 'string' ? chosen.plan.rail : '';
  const index = s.ramp.rails.indexOf(rail);
  if (index < 0) return null;
  const third = number(chosen.plan.third);
  const key = `tack/${chosen.remedy}@${chosen.entry}`;
  switch (chosen.remedy) {
    case 'third-open':
    case 'third-close': {
      const slits = numbers(chosen.plan.slits);
      const each = Math.abs(number(chosen.plan.off_rad)) / Math.max(1, slits.length);
      const fills: Fills = {
        rail,
        third,
        count: slits.length,
        each: { v: each, as: 'angle' },
        gap: { v: leverOf(s, rail) * each, as: 'thickness' },
      };
      return {
        key,
        stage: 'tack',
        words: chosen.remedy,
        fills,
        turn: railTurn(s.ramp.design, index, { third, part: 'read' }) + 5,
        needs: [],
        uses: [],
        line: 'tack line',
        items: slits.map(slit => ({ key: `${key}#${slit}`, name: String(slit) })),
        minutes: [4 * slits.length, 8 * slits.length],
      };
    }
    case 'lip-mark-anew':
      return {
        key,
        stage: 'tack',
        words: chosen.remedy,
        fills: { rail, off: length(Math.abs(number(chosen.plan.off_mm))) },
        turn: railTurn(s.ramp.design, index, { after: 'survey', at: 13 }),
        needs: [],
        uses: [],
        minutes: [3, 6],
      };
    case 'twist-tack-again':
    case 'twist-weld-held':
    case 'twist-packers':
    case 'twist-send-back':
      return {
        key,
        stage: 'tack',
        words: chosen.remedy,
        fills: { rail, twist: { v: Math.abs(number(chosen.plan.twist_rad)), as: 'angle' } },
        turn: railTurn(s.ramp.design, index, { after: 'survey', at: 15 }),
        needs: [],
        uses: [],
        minutes: [15, 40],
      };
    default:
      return null;
  }
};

/** Of two choices about one finding the later counts. */
export const chosenSteps = (s: Situation): readonly StepDraft[] =>
  s.build.chosen
    .filter(c => !s.build.chosen.some(later => later.n > c.n && later.finding === c.finding))
    .map(c => stepOf(s, c))
    .filter(step => step !== null);

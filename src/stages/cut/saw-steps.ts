import { SAW, sawSaid, WOOD_SAW, wheelSpeeds } from '../../build/bar-saw.ts';
import { type BarSaw, hasVice, turnsWheel } from '../../ramp/cutting/bar-saw.ts';
import { TURN } from '../order.ts';
import type { Ask, Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';

/** Where the saw is none for steel, or its wheel too slow for it, nothing is cut with it. */
const SAW_FITS = 'cut/saw-fits';

const DEG = Math.PI / 180;

/** Turns a minute of a wheel of 14 in and its saw, and of a steel-cutting blade and its saw (makers' plates; common practice). */
const SPEEDS: Readonly<
  Partial<Record<BarSaw, { saw: readonly [number, number]; wheel: readonly [number, number] }>>
> = {
  'abrasive saw': { saw: [3400, 4200], wheel: [4200, 4500] },
  'metal blade saw': { saw: [1200, 1900], wheel: [1600, 2500] },
};
/** How far the vices of such saws turn from square, and the widest tube they cut through (makers' sheets; common practice). */
const TURNS: readonly [number, number] = [40 * DEG, 60 * DEG];
const THROUGH = [60, 130] as const;

const KIND: Ask = { ask: 'saw', as: 'count', expected: [1, 1], possible: [1, WOOD_SAW], unlit: true };

const asksOf = (s: Situation): readonly Ask[] => {
  const saw = sawSaid(s.build);
  if (saw === null || saw === 'wood saw') return [KIND];
  const speeds = SPEEDS[saw];
  const turning: Ask[] =
    speeds === undefined || !turnsWheel(saw)
      ? []
      : [
          { ask: 'saw-turns', as: 'count', expected: speeds.saw, possible: [100, 20_000] },
          { ask: 'wheel', as: 'count', expected: speeds.wheel, possible: [100, 20_000] },
        ];
  const reach: Ask[] = hasVice(saw)
    ? [
        { ask: 'turns', as: 'angle', expected: TURNS, possible: [0, 75 * DEG] },
        { ask: 'through', as: 'length', expected: THROUGH, possible: [5, 500] },
      ]
    : [];
  // A wheel that is too slow is what is changed: it comes first, so that it is the one that is read again.
  return wheelIsSlow(s) ? [...turning.reverse(), KIND, ...reach] : [KIND, ...turning, ...reach];
};

const wheelIsSlow = (s: Situation): boolean => {
  const speeds = wheelSpeeds(s.build);
  return speeds !== null && speeds.wheel < speeds.saw;
};

/** What keeps every bar uncut: a saw made for wood, a wheel that is slower than its saw. No reason opens either. */
export const sawGates = (s: Situation): readonly Gate[] => {
  const shut = { shut: true, never: true, measure: SAW } as const;
  if (sawSaid(s.build) === 'wood saw') return [{ id: 'saw-wood', ...shut }];
  const speeds = wheelSpeeds(s.build);
  return speeds !== null && wheelIsSlow(s) ? [{ id: 'wheel-slow', ...shut, fills: speeds }] : [];
};

/** Rails that were cut before anybody was asked: what cut them cuts the rest. */
const alreadyCut = (s: Situation): boolean =>
  sawSaid(s.build) === null &&
  s.ramp.rails.every(rail => s.build.pieces.some(p => p.serves === `curved rail@${rail}`));

/** Where a grinder and its disc are read, and what stands there while the disc is too slow for it. */
const DISC = ['prep/discs', 'prep/disc-fits'] as const;

/** Steps that a bar's first cut waits for: which saw it is, and that its wheel, or a grinder's disc, bears its speed. */
export const sawNeeds = (s: Situation): readonly string[] => {
  if (alreadyCut(s)) return [];
  const saw = sawGates(s).length > 0 ? [SAW, SAW_FITS] : [SAW];
  return sawSaid(s.build) === 'grinder' ? [...saw, ...DISC] : saw;
};

/** Steps that the first slit waits for, by what saws it; a hacksaw waits for nothing. */
export const slitSawNeeds = (s: Situation): readonly string[] => {
  switch (s.ramp.design.cutter.kind) {
    case 'thin disc':
      return DISC;
    case 'hacksaw':
      return [];
    default:
      return sawNeeds(s);
  }
};

/** Which saw cuts the bars, how fast, how steep and how wide: asked before the first cut. */
export const sawSteps = (s: Situation): readonly StepDraft[] => {
  if (alreadyCut(s)) return [];
  const gates = sawGates(s);
  const widest = Math.max(...s.ramp.members.filter(m => m.kind.endsWith('rail')).map(m => m.tube.depth_mm));
  const steepest = Math.max(
    0,
    ...s.ramp.members.flatMap(m => [Math.abs(m.ends.first_rad), Math.abs(m.ends.second_rad)]),
  );
  const read: StepDraft = {
    key: SAW,
    stage: 'cut',
    words: 'saw',
    fills: { widest: { v: widest, as: 'length' }, steepest: { v: steepest, as: 'angle' } },
    turn: TURN.receive + 31,
    needs: ['cut/check-steel'],
    uses: [],
    asks: asksOf(s),
    cautions: ['cut-wood-saw'],
    minutes: [2, 5],
  };
  return gates.length === 0
    ? [read]
    : [
        read,
        {
          key: SAW_FITS,
          stage: 'cut',
          words: 'saw-fits',
          turn: TURN.receive + 32,
          needs: [],
          uses: [],
          gates,
          minutes: [5, 30],
        },
      ];
};

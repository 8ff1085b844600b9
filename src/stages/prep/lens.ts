import { RODS, type Rod } from '../../reckon/welding/rod-settings.ts';
import { type Shade, shade } from '../../reckon/welding/shade.ts';
import { quickHandAmps } from '../../reckon/welding/solid-wire-settings.ts';
import { TURN } from '../order.ts';
import type { Figure, Gate, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { once } from './once.ts';
import { welderOf } from './process.ts';
import { valueAt } from './reading.ts';

export const LENS = 'prep/lens';
/** Thickest wall and strongest arc that the table of shades is asked for: beyond it the last row holds. */
const MOST_A = 250;

/** Most current a rod of this core is burnt with, A. */
const rodAmps = (rod: Rod, core_mm: number): number =>
  RODS[rod].reduce((best, r) => (Math.abs(r.mm - core_mm) < Math.abs(best.mm - core_mm) ? r : best)).most_A;

/** The strongest arc of this build, A: the quick hand's current on its thickest wall, or the most its rod takes. */
const strongestArc = (s: Situation): number => {
  const welder = welderOf(s);
  const wall_mm = Math.max(s.ramp.design.tube.wall_mm, s.ramp.design.post.wall_mm);
  return welder?.process === 'smaw'
    ? rodAmps(welder.kind === 5 ? 'E7018' : 'E6013', welder.filler_mm ?? 3.2)
    : quickHandAmps(wall_mm);
};

export type Lens = Shade & Readonly<{ amps: number }>;

/** The shade for the strongest arc; before the welder is told as for wire, which no process asks darker than. */
export const lensFor = once((s): Lens | null => {
  const welder = welderOf(s);
  const amps = strongestArc(s);
  const core = welder?.process === 'smaw' ? (welder.filler_mm ?? 0) : 0;
  const found = shade(welder?.process ?? 'gmaw', Math.min(amps, MOST_A), Math.min(core, 6.35));
  return found.ok ? { ...found.value, amps } : null;
});

const fills = (s: Situation, lens: Lens) =>
  ({
    least: lens.least,
    start: lens.start,
    lens: valueAt(s, LENS, 'shade') ?? 0,
    amps: { v: lens.amps, as: 'current' },
  }) as const;

/** A lens lighter than the least for this arc: no reason opens it. */
export const lensGates = (s: Situation): readonly Gate[] => {
  const lens = lensFor(s);
  const told = valueAt(s, LENS, 'shade');
  return lens === null || told === undefined || told >= lens.least
    ? []
    : [{ id: 'lens-light', shut: true, never: true, fills: fills(s, lens), measure: LENS }];
};

export const lensStep = (s: Situation): readonly StepDraft[] => {
  const lens = lensFor(s);
  return lens === null
    ? []
    : [
        {
          key: LENS,
          stage: 'prep',
          words: 'lens',
          fills: fills(s, lens),
          turn: TURN.place + 15,
          needs: [],
          uses: ['lens-least'],
          tall: ['lens-least'],
          asks: [{ ask: 'shade', as: 'count', expected: [lens.start, lens.start], possible: [3, 15] }],
          minutes: [2, 3],
        },
      ];
};

export const lensFigures = (s: Situation): readonly Figure[] => {
  const lens = lensFor(s);
  return lens === null
    ? []
    : [
        {
          id: 'lens-least',
          kind: 'size',
          as: 'count',
          value: { is: 'exact', v: lens.least },
          matters: 0.5,
        },
      ];
};

import type { Chosen } from '../../build/fold.ts';
import type { Stage, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { addSlitSteps } from './add-slit.ts';
import { clampSteps } from './clamp-and-brace.ts';
import { gaugeSteps } from './gauge-flats.ts';
import { packerSteps } from './packers.ts';
import { slitSteps } from './re-cut.ts';
import { reLaySteps } from './re-lay.ts';
import { reRollSteps } from './re-roll.ts';
import { readAgainSteps } from './read-again.ts';
import type { Injecting } from './remedy.ts';
import { bowSteps } from './sideways.ts';
import { NEW_RAIL } from './slit-limits.ts';
import { startAgainSteps } from './start-again.ts';

/** The steps a remedy gives once it is chosen. */
const INJECTED: Readonly<Record<string, Injecting>> = {
  're-lay': reLaySteps,
  're-cut': slitSteps,
  'close-slit': slitSteps,
  'match-rail': slitSteps,
  'add-slit': addSlitSteps,
  'start-again': startAgainSteps,
  're-roll': reRollSteps,
  'clamp-and-brace': clampSteps,
  'over-correct': clampSteps,
  packers: packerSteps,
  'gauge-flats': gaugeSteps,
  'read-again': readAgainSteps,
  'check-three': readAgainSteps,
  'bow-other-side': bowSteps,
  'bow-retack': bowSteps,
};

/** Words of the steps that remedies give, by stage. */
export const STEPS = {
  tack: [
    're-lay',
    'gauge',
    're-cut',
    'add-slit-saw',
    'add-slit-close',
    'again-blank',
    'again-saw',
    'again-close',
    'read-again',
    'read-again-at',
    'read-again-sideways',
    're-roll',
    'bow-retack',
  ],
  weld: [
    're-lay',
    'gauge',
    're-cut-saw',
    're-cut',
    're-cut-weld',
    'add-slit-saw',
    'add-slit-close',
    'add-slit-weld',
    'again-weld',
    'read-again',
    'read-again-at',
    'read-again-sideways',
    're-roll',
    'bow-order',
  ],
  brace: [
    're-lay',
    'clamp-to-line',
    'clamp-past-line',
    'clamped-survey',
    'packers',
    'read-again',
    'read-again-at',
    'read-again-sideways',
  ],
} as const;

/** Steps that go on after the next survey of the rail: its own survey stands in between. */
const OUTLASTS = new Set(['start-again', 'bow-other-side']);

/** Of two choices about one finding the later counts; a rail begun again takes with it what was chosen for the old one. */
const counts = (s: Situation, c: Chosen): boolean =>
  !s.build.chosen.some(
    later =>
      later.n > c.n &&
      (later.finding === c.finding || (NEW_RAIL.has(later.remedy) && later.plan.rail === c.plan.rail)),
  );

const isSettled = (s: Situation, d: StepDraft): boolean => {
  const settled = (key: string): boolean => s.build.ticks.has(key) || s.build.skips.has(key);
  if (d.survey !== undefined) return true;
  return settled(d.key) || ((d.items ?? []).length > 0 && (d.items ?? []).every(i => settled(i.key)));
};

/** A rail read after a remedy is judged by that reading: what was left undone of the remedy is not asked any more. */
const overtaken = (s: Situation, c: Chosen): boolean =>
  !OUTLASTS.has(c.remedy) &&
  s.build.surveys.some(
    v => v.closed && !v.retired && v.kind === 'curve' && v.rail === c.plan.rail && v.n > c.n,
  );

/**
 * Steps that chosen remedies add to a stage, their numbers as frozen when they were chosen, keyed by the choice. A remedy taken
 * back takes its steps with it.
 */
export const remedySteps = (s: Situation, stage: Stage): StepDraft[] =>
  s.build.chosen
    .filter(c => counts(s, c))
    .flatMap(c => {
      const steps = (INJECTED[c.remedy]?.(s, c) ?? []).filter(d => d.stage === stage);
      return overtaken(s, c) ? steps.filter(d => isSettled(s, d)) : steps;
    });

import { readStations } from '../../build/facts.ts';
import type { Ramp } from '../../ramp/ramp.ts';
import { lazyScene } from '../../scene/lazy-scene.ts';
import { strikesArc } from '../../stages/arc-steps.ts';
import { offsetScene } from '../../stages/offset-scene.ts';
import type { Item, StepDraft } from '../../stages/sheet.ts';
import type { Check } from './checks.ts';

/** Before everything else in the walk. */
const FIRST = -1000;

/** Whether a step is about a rail: by its key, or by what its words are filled with. */
const aboutRail = (step: StepDraft, rail: string): boolean =>
  step.fills?.rail === rail ||
  step.survey?.rail === rail ||
  step.key.endsWith(`@${rail}`) ||
  step.key.includes(`@${rail}:`);

/** Keeping children off a ramp waits for nothing. */
const AT_ONCE = 'finish/keep-safe';

/** Whether a step waits until a check is settled. Nothing of plan waits, nor the reading of any page. */
export const waitsFor = (step: StepDraft, check: Check): boolean => {
  if (step.stage === 'plan' || step.key === AT_ONCE) return false;
  switch (check.holds) {
    case 'rail':
      return (
        step.stage === 'assemble' || step.stage === 'finish' || aboutRail(step, check.rail ?? check.subject)
      );
    case 'arc':
      // Bright steel and a working set are wanted before these, and before no others.
      return (check.rail === undefined || aboutRail(step, check.rail)) && strikesArc(step.key);
    case 'frame':
      return step.stage === 'finish' || (check.stage === 'assemble' && step.stage === 'assemble');
  }
};

/** The step of a check, as a stage would give it; measured ones first, each before all other work. */
export const checkStep = (check: Check, place: number, ramp: Ramp): StepDraft => {
  const items = check.items.map((name): Item => {
    const note = check.name === 'joints' ? {} : { note: { words: `says.pause-${check.name}-${name}` } };
    return { key: `${check.key}#${name}`, name, ...note };
  });
  return {
    key: check.key,
    stage: check.stage,
    words: check.words,
    fills: { days: check.pause.days, ...check.fills },
    turn: FIRST + place,
    needs: [],
    uses: [],
    ...(check.line === undefined ? {} : { line: check.line }),
    ...(check.asks.length === 0 ? {} : { asks: check.asks.map(({ was: _, ...ask }) => ask) }),
    ...(items.length === 0 ? {} : { items }),
    minutes: check.minutes,
    ...sceneOf(check, ramp),
  };
};

/** A rail as it was read before the pause. */
const sceneOf = ({ survey, rail = '' }: Check, ramp: Ramp): Pick<StepDraft, 'scene'> => {
  const plan = ramp.plans.get(rail);
  if (survey === undefined || plan === undefined) return {};
  const { stations_mm, offsets_mm } = readStations(survey);
  const read = stations_mm.map((station_mm, k) => ({ station_mm, offset_mm: offsets_mm[k] ?? null }));
  return { scene: lazyScene(() => offsetScene(plan, survey.to, read, null)) };
};

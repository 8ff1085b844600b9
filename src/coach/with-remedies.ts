import type { Build, Chosen } from '../build/fold.ts';
import { stageOfPhase } from '../stages/remedies/remedy.ts';
import type { SheetDraft, StepDraft } from '../stages/sheet.ts';
import { isSettled } from './walk.ts';

/** The pages on which a rail is measured, mended and measured again. In bracing, steps of a remedy have places of their own. */
const MENDED = new Set<StepDraft['stage']>(['tack', 'weld']);

/** Whether a step was brought by a choice: its key names the choice's entry. */
export const broughtBy = (step: Pick<StepDraft, 'key'>, chosen: Pick<Chosen, 'entry'>): boolean =>
  step.key.includes(`@${chosen.entry}`);

/** Whether a step is of one rail: its key ends with the rail's name. */
const isOfRail = (step: StepDraft, rail: unknown): boolean =>
  typeof rail === 'string' && step.key.endsWith(`@${rail}`);

/** Steps of a stage that a choice brought; and of what comes after them with its rail and is still to be done, all and the readings. */
const partsOf = (b: Build, steps: readonly StepDraft[], chosen: Chosen) => {
  const brought = steps.filter(step => broughtBy(step, chosen) && step.survey === undefined);
  const last = Math.max(...brought.map(step => step.turn));
  const later = steps.filter(
    step => isOfRail(step, chosen.plan.rail) && step.turn > last && !isSettled(b, step),
  );
  return { brought, later, readings: later.filter(step => step.survey !== undefined) };
};

const mended = (b: Build, sheet: SheetDraft): SheetDraft => {
  const led = new Set<string>();
  const waits = new Map<string, string[]>();
  for (const chosen of b.chosen) {
    // What it brings to a later page has its time there.
    if (stageOfPhase(chosen.plan.phase) !== sheet.stage) continue;
    const { brought, later, readings } = partsOf(b, sheet.steps, chosen);
    if (brought.length === 0 || readings.length === 0) continue;
    const open = brought.filter(step => !isSettled(b, step));
    // What comes next of it: its own steps, and then the first reading, which tells what came of them.
    const reading = readings.reduce((first, step) => (step.turn < first.turn ? step : first));
    for (const step of [...open, reading]) led.add(step.key);
    for (const step of later) waits.set(step.key, [...(waits.get(step.key) ?? []), ...open.map(o => o.key)]);
  }
  if (led.size === 0) return sheet;
  const steps = sheet.steps.map(step => {
    const needs = waits.get(step.key) ?? [];
    if (needs.length === 0 && !led.has(step.key)) return step;
    return {
      ...step,
      needs: [...step.needs, ...needs],
      ...(led.has(step.key) ? { led: true as const } : {}),
    };
  });
  return { ...sheet, steps };
};

/**
 * The sheets with what was chosen for a rail led to before other open work: the remedy's steps, then the reading that tells what
 * came of them. What else is done with that rail waits for them: a rail that is about to be cut is not measured or carried first.
 */
export const withRemedies = (b: Build, sheets: readonly SheetDraft[]): readonly SheetDraft[] =>
  b.chosen.length === 0 ? sheets : sheets.map(sheet => (MENDED.has(sheet.stage) ? mended(b, sheet) : sheet));

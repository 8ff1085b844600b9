import type { Build } from '../build/fold.ts';
import { ARC_BAR, strikesArc, WEATHER } from '../stages/arc-steps.ts';
import type { SheetDraft, StepDraft } from '../stages/sheet.ts';
import { isSettled } from './walk.ts';

/** Last: a step says first what it waits for of its own. */
const NEEDS = [WEATHER, ARC_BAR] as const;

const barred = (step: StepDraft): StepDraft => {
  if (!strikesArc(step.key)) return step;
  const more = NEEDS.filter(key => !step.needs.includes(key));
  return more.length === 0 ? step : { ...step, needs: [...step.needs, ...more] };
};

/**
 * The sheets with every step that strikes an arc, of whatever stage, waiting for the weather and for what bars an arc. A weather read
 * too long ago is asked for just before the next arc of the walk, and by no means once the last one is out.
 */
export const withArcBar = (b: Build, sheets: readonly SheetDraft[]): readonly SheetDraft[] => {
  const bar = sheets.flatMap(sheet => sheet.steps.filter(step => step.key === ARC_BAR))[0];
  const old = bar?.gates?.some(g => g.soon === true) === true;
  const turns = old
    ? sheets.flatMap(sheet =>
        sheet.steps.filter(step => strikesArc(step.key) && !isSettled(b, step)).map(step => step.turn),
      )
    : [];
  const place = (step: StepDraft): readonly StepDraft[] => {
    if (!old || step.key !== ARC_BAR) return [barred(step)];
    return turns.length > 0 ? [{ ...step, turn: Math.min(...turns) - 0.5 }] : [];
  };
  return sheets.map(sheet => ({ ...sheet, steps: sheet.steps.flatMap(place) }));
};

import { openFindings } from '../../coach/view.ts';
import { STAGES, type Stage } from '../../stages/sheet.ts';
import type { Lit } from '../pages/stage-page.ts';
import type { Desk } from './desk.ts';
import { findingsPlace } from './finding-places.ts';
import { journalPlace } from './journal-place.ts';
import {
  drawingPlace,
  glossaryPlace,
  helpPlace,
  hurtPlace,
  largePlace,
  orderPlace,
  whyPlace,
} from './look-places.ts';
import { stagePlace } from './stage-place.ts';

/** Goes to the next step, wherever it is. */
export const goNow = (desk: Desk): void => {
  const next = desk.view.next;
  if (next === null) {
    desk.say('Nothing is left to do in this build.');
    desk.root(stagePlace(desk, { stage: 'finish', step: null, item: 0 }));
    return;
  }
  desk.root(stagePlace(desk, { stage: next.stage, step: next.key, item: firstOpenItem(desk, next.key) }));
};

/** The first repeated thing of a step that is not done. */
export const firstOpenItem = (desk: Desk, key: string): number => {
  const step = desk.view.steps.find(s => s.key === key);
  const items = step?.items ?? [];
  const at = items.findIndex(
    i =>
      !desk.view.build.ticks.has(i.key) &&
      !desk.view.build.skips.has(i.key) &&
      !(
        i.piece !== undefined &&
        desk.view.build.pieces.some(p => p.serves === i.piece?.need && p.fate !== 'spoiled')
      ),
  );
  return Math.max(0, at);
};

export const goStage = (desk: Desk, stage: Stage): void => {
  const next = desk.view.next;
  const step = next?.stage === stage ? next.key : null;
  desk.root(stagePlace(desk, { stage, step, item: step === null ? 0 : firstOpenItem(desk, step) }));
};

/** Keys that do the same on every page of an open build. True when the key was one of them. */
export const commonAct = (desk: Desk, act: string, char: string, lit: Lit): boolean => {
  switch (act) {
    case 'stage':
      goStage(desk, STAGES[Number(char) - 1] ?? 'plan');
      return true;
    case 'now':
      goNow(desk);
      return true;
    case 'why':
      desk.push(whyPlace(lit));
      return true;
    case 'findings':
      desk.push(findingsPlace(lit.stage, 0));
      if (openFindings(desk.view).length === 0) desk.say('Nothing to fix.');
      return true;
    case 'drawing':
      desk.push(drawingPlace(lit));
      return true;
    case 'large':
      desk.push(largePlace(lit));
      return true;
    case 'journal':
      desk.push(journalPlace(lit.stage));
      return true;
    case 'order':
      desk.push(orderPlace(lit));
      return true;
    case 'hurt':
      desk.push(hurtPlace(lit));
      return true;
    case 'help':
      desk.push(helpPlace(lit.stage, desk.place.own ?? []));
      return true;
    case 'glossary':
      desk.push(glossaryPlace(lit.stage));
      return true;
    case 'remark':
      desk.ask({
        title: 'Remark:',
        value: '',
        submit: text => {
          if (text.trim() === '') desk.say('Nothing typed, nothing kept.');
          else desk.act({ do: 'remark', text, ...(lit.step === null ? {} : { step: lit.step }) });
        },
      });
      return true;
    case 'take-back':
      desk.act({ do: 'strike' });
      return true;
    case 'units':
      desk.system = desk.system === 'metric' ? 'us' : 'metric';
      desk.around.setUnits(desk.system);
      desk.say(
        desk.system === 'us'
          ? 'Shown in feet and inches. What was entered stays as it is.'
          : 'Shown in mm. What was entered stays as it is.',
      );
      return true;
    case 'builds':
      desk.leaveBuild();
      desk.root(desk.around.opening());
      return true;
    default:
      return false;
  }
};

import { asksOf } from '../../coach/tasks.ts';
import { underWay } from '../../coach/under-way.ts';
import { openFindings } from '../../coach/view.ts';
import { STAGES, type Stage } from '../../stages/sheet.ts';
import { typedLine } from '../fields/typed-line.ts';
import type { PageKey } from '../keys.ts';
import type { Lit } from '../pages/stage-page.ts';
import type { Desk } from './desk.ts';

/** The design is changed from the end of the beginning on and from any stage, for steel that is cut is no wall either. */
export const CHANGE_DESIGN: PageKey = {
  char: 'c',
  act: 'design',
  word: 'change the design',
  help: 'change the design',
  writes: false,
};

/** Goes to the next step, wherever it is. */
export const goNow = (desk: Desk): void => {
  const next = desk.view.next;
  if (next === null) {
    desk.say('Nothing is left to do in this build.');
    desk.root(desk.around.ways.stage(desk, { stage: 'finish', step: null, item: 0 }));
    return;
  }
  desk.root(
    desk.around.ways.stage(desk, { stage: next.stage, step: next.key, item: firstOpenItem(desk, next.key) }),
  );
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
  desk.root(
    desk.around.ways.stage(desk, { stage, step, item: step === null ? 0 : firstOpenItem(desk, step) }),
  );
};

/** Keys that do the same on every page of an open build. True when the key was one of them. */
export const commonAct = (desk: Desk, act: string, char: string, lit: Lit): boolean => {
  switch (act) {
    case 'stage': {
      const stage = STAGES[Number(char) - 1] ?? 'plan';
      goStage(desk, stage);
      // Who meant to type a number sees where it led, and the way back.
      if (desk.view.next !== null && desk.view.next.stage !== stage)
        desk.say(`${char} is the stage ${stage}. 0 goes back to the next step.`);
      return true;
    }
    case 'now':
      goNow(desk);
      return true;
    case 'why':
      desk.push(desk.around.ways.why(lit));
      return true;
    case 'findings':
      desk.push(desk.around.ways.findings(lit.stage));
      // What is still being worked out may bring one: nothing is said that would then stand beside it.
      if (openFindings(desk.view).length + underWay(desk.view).length === 0 && asksOf(desk.view).length === 0)
        desk.say('Nothing to fix.');
      return true;
    case 'drawing':
      desk.push(desk.around.ways.drawing(lit));
      return true;
    case 'large':
      desk.push(desk.around.ways.large(lit));
      return true;
    case 'journal':
      desk.push(desk.around.ways.journal(lit.stage));
      return true;
    case 'order':
      desk.push(desk.around.ways.order(lit));
      return true;
    case 'hurt':
      desk.push(desk.around.ways.hurt(lit));
      return true;
    case 'help': {
      const { place } = desk;
      const own = place.field?.field.open === true ? [] : (place.own ?? []);
      desk.push(desk.around.ways.help(lit.stage, desk.keysOf(place), own));
      return true;
    }
    case 'glossary':
      desk.push(desk.around.ways.glossary(lit.stage));
      return true;
    case 'remark':
      desk.ask({
        title: 'Remark:',
        line: typedLine(),
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
      desk.root(desk.around.ways.opening());
      return true;
    default:
      return false;
  }
};

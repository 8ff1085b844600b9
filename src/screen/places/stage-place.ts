import { openFindings } from '../../coach/view.ts';
import { itemSettled, type Step } from '../../coach/walk.ts';
import type { Ask } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import { typedLine } from '../fields/typed-line.ts';
import type { LineItem } from '../keys.ts';
import { comesFirst, stageChange } from '../pages/stage-change.ts';
import { type Lit, litStep, stagePage, stepsOf } from '../pages/stage-page.ts';
import { askChoices, stepText } from '../pages/step-words.ts';
import { askField, fieldPage, pieceField } from './ask-field.ts';
import { choicePlace } from './choice-place.ts';
import { CHANGE_DESIGN, commonAct, firstOpenItem } from './common.ts';
import type { Desk, Place } from './desk.ts';

const isRead = (desk: Desk, s: Step, a: Ask): boolean => desk.view.build.readings.has(`${s.key}#${a.ask}`);

const allRead = (desk: Desk, s: Step): boolean =>
  (s.asks ?? []).every(a => a.optional === true || isRead(desk, s, a));

const wantsReading = (s: Step): boolean => (s.asks ?? []).some(a => a.optional !== true);

/** The page of one stage: one step owns it. */
export const stagePlace = (_desk: Desk, start: Lit): Place => {
  let lit = start;

  const step = (desk: Desk): Step | null => litStep(desk.context(), lit);

  /** After something was done: the next of the repeated things, else the next step of the whole walk. */
  const goOn = (desk: Desk, before: Step): void => {
    const now = desk.view.steps.find(s => s.key === before.key);
    if (now !== undefined && (now.state === 'to do' || now.state === 'stop')) {
      lit = { ...lit, step: now.key, item: firstOpenItem(desk, now.key) };
      // An answer that stops the build is told at once, and not by a count at the foot alone.
      const raised = openFindings(desk.view).find(
        f => f.severity === 'stop' && f.raisedBy?.includes(now.key) === true,
      );
      if (raised !== undefined && now.state === 'stop') desk.push(desk.around.ways.finding(raised.key));
      return;
    }
    const next = desk.view.next;
    if (next === null) return;
    lit = { stage: next.stage, step: next.key, item: firstOpenItem(desk, next.key) };
    const why = stageChange(desk.context(), before.stage, next);
    if (why !== null) desk.say(why);
  };

  const tick = (desk: Desk): void => {
    const s = step(desk);
    if (s === null) return desk.say('Space: nothing to tick here');
    const caution = (s.cautions ?? []).find(c => !desk.view.build.cautions.has(c));
    if (caution !== undefined && s.state !== 'waiting') {
      desk.push(desk.around.ways.caution(lit.stage, caution, () => tick(desk)));
      return;
    }
    const item = s.items?.[lit.item];
    if (item !== undefined && !itemSettled(desk.view.build, item)) {
      if (desk.act({ do: 'tick', step: item.key })) goOn(desk, s);
      return;
    }
    if (desk.act({ do: 'tick', step: s.key })) goOn(desk, s);
  };

  /** Asks for one reading: a number to type, or one of a few answers. */
  const read = (desk: Desk, s: Step, ask: Ask, done: () => void): void => {
    if (askChoices(desk.view, desk.voice, s, ask.ask).length > 0) desk.push(choicePlace(lit, s, ask, done));
    else place.field = askField(desk, s, ask, done);
  };

  /** Enter: the number this step wants, its survey, what stands in its way. */
  const open = (desk: Desk): void => {
    const s = step(desk);
    if (s === null) return desk.say('Enter: nothing to open here');
    const blocking = openFindings(desk.view).find(f => f.blocks?.includes(s.key) === true);
    if (s.state === 'stop' && blocking !== undefined)
      return desk.push(desk.around.ways.finding(blocking.key));
    if (s.state === 'waiting') {
      const wanted = desk.view.steps.find(x => x.key === s.waitsFor[0]);
      if (wanted === undefined) return desk.say('Enter: this step waits for another');
      lit = { stage: wanted.stage, step: wanted.key, item: firstOpenItem(desk, wanted.key) };
      return desk.say(comesFirst(desk.context(), s));
    }
    const gate = (s.gates ?? []).find(g => s.shut.includes(g.id));
    if (gate?.measure !== undefined && gate.measure !== s.key) {
      const wanted = desk.view.steps.find(x => x.key === gate.measure);
      if (wanted !== undefined) {
        lit = { stage: wanted.stage, step: wanted.key, item: 0 };
        // All of it is to be read anew: it begins at once.
        if (gate.soon === true && wantsReading(wanted)) return ask(desk, wanted, 0);
        return desk.say('Reading this again can open it.');
      }
    }
    if (s.survey !== undefined) return desk.push(desk.around.ways.survey(desk, s));
    if (askItem(desk, s)) return;
    const stale = desk.view.findings.find(f => f.stage === s.stage && f.key.includes(s.key));
    if (s.state === 'stale' && stale !== undefined) return desk.push(desk.around.ways.finding(stale.key));
    if (wantsReading(s)) return ask(desk, s, 0);
    const piece = s.items?.[lit.item]?.piece ?? s.piece;
    if (piece !== undefined) {
      place.field = pieceField(desk, piece, () => goOn(desk, s));
      return;
    }
    if (tickGroup(desk, s)) return;
    desk.say('Enter: nothing to measure in this step. Space ticks it');
  };

  /** All that is open of the lit thing's group, each its own tick: what comes home from one shop is not ticked line by line. */
  const tickGroup = (desk: Desk, s: Step): boolean => {
    const group = s.items?.[lit.item]?.group;
    if (group === undefined) return false;
    const open = (s.items ?? []).filter(i => i.group === group && !itemSettled(desk.view.build, i));
    const done = open.filter(i => desk.act({ do: 'tick', step: i.key })).length;
    if (done < open.length) return true;
    goOn(desk, s);
    if (done > 0) desk.say(say(desk.voice, { words: 'says.group-ticked', fills: { group, count: done } }));
    return true;
  };

  /** What is wrong with the lit one of the repeated things, where it can be said. */
  const askItem = (desk: Desk, s: Step): boolean => {
    const item = s.items?.[lit.item];
    const wanted = s.asks?.find(a => a.ask === item?.ask);
    if (item === undefined || wanted === undefined) return false;
    read(desk, s, wanted, () => {
      // What was just said to be wrong wants a word on what it is.
      const found = openFindings(desk.view).find(f => f.key.startsWith(`${s.key}#${wanted.ask}:`));
      if (found !== undefined) desk.push(desk.around.ways.finding(found.key));
    });
    return true;
  };

  /** The numbers not yet read one after the other, or, where all are, all of them once more. */
  const ask = (desk: Desk, s: Step, from: number, again = allRead(desk, s)): void => {
    const asks = (s.asks ?? []).filter(a => a.optional !== true);
    const at = again ? from : asks.findIndex(a => !isRead(desk, s, a));
    const wanted = asks[at];
    if (wanted === undefined) return goOn(desk, s);
    read(desk, s, wanted, () => {
      const now = desk.view.steps.find(x => x.key === s.key);
      if (now === undefined) goOn(desk, s);
      else ask(desk, now, at + 1, again);
    });
  };

  const skip = (desk: Desk): void => {
    const s = step(desk);
    if (s === null) return desk.say('s: nothing to skip here');
    const gate = (s.gates ?? []).find(g => s.shut.includes(g.id));
    const item = s.items?.[lit.item];
    const key = item !== undefined && !itemSettled(desk.view.build, item) ? item.key : s.key;
    desk.ask({
      title: gate === undefined ? 'Skip it. Why?' : 'Go ahead all the same. Why?',
      line: typedLine(),
      submit: why => {
        const done =
          gate === undefined
            ? desk.act({ do: 'skip', step: key, why })
            : desk.act({ do: 'override', step: s.key, gate: gate.id, why });
        if (done && gate === undefined) goOn(desk, s);
      },
    });
  };

  const move = (desk: Desk, by: number, overItems: boolean): void => {
    const s = step(desk);
    const items = s?.items ?? [];
    if (overItems && items.length > 0) {
      const to = lit.item + by;
      if (to >= 0 && to < items.length) {
        lit = { ...lit, item: to };
        return;
      }
    }
    const steps = stepsOf(desk.context(), lit.stage);
    const at = steps.findIndex(x => x.key === s?.key) + by;
    const target = steps[at];
    if (target === undefined)
      return desk.say(
        by > 0
          ? 'This is the last step of the stage. 0 goes to the next thing to do'
          : 'This is the first step of the stage',
      );
    lit = { ...lit, step: target.key, item: firstOpenItem(desk, target.key) };
  };

  const lineKeys = (desk: Desk): LineItem[] => {
    const s = step(desk);
    const item = s?.items?.[lit.item];
    const tickWords =
      s === null
        ? 'tick'
        : (stepText(desk.view, desk.voice, s, 'tick') ?? (item === undefined ? 'tick' : 'this one done'));
    const measured = s !== null && (wantsReading(s) || s.survey !== undefined);
    const piece = item?.piece ?? s?.piece;
    return [
      ...(s === null || measured || s.piece !== undefined
        ? []
        : [{ act: 'tick' as const, words: tickWords }]),
      ...(measured
        ? [{ act: 'open' as const, words: s?.survey === undefined ? 'measure' : 'read it' }]
        : piece !== undefined
          ? [{ act: 'open' as const, words: 'its real length' }]
          : item?.ask !== undefined && s?.state === 'to do'
            ? [{ act: 'open' as const, words: 'it fails' }]
            : s?.state === 'stop' || s?.state === 'waiting'
              ? [{ act: 'open' as const, words: 'what opens it' }]
              : item?.group !== undefined
                ? [{ act: 'open' as const, words: 'all of this shop' }]
                : []),
      { act: 'skip' },
      { act: 'next', shown: 'n p', words: 'move' },
      // Before what may be left out of a full row: sentences that do not fit a page end in "w".
      { act: 'why' },
      // Where steel is bought and cut, its list lies beside the step.
      ...(lit.stage === 'plan' || lit.stage === 'cut' ? [{ act: 'order' as const, words: 'order' }] : []),
      ...(lit.stage === 'plan' ? [{ act: 'design' }] : [{ act: 'now' as const, words: 'now' }]),
      { act: 'findings' },
      { act: 'help' },
    ];
  };

  const place: Place = {
    stage: () => lit.stage,
    own: [CHANGE_DESIGN],
    field: null,
    rows: desk => {
      const s = step(desk);
      const keys = desk.keyRow(place);
      if (s !== null && place.field !== null && place.field !== undefined)
        return fieldPage(desk, s, place.field, lit, keys);
      return stagePage(desk.context(), lit, keys);
    },
    keys: lineKeys,
    act: (desk, act, char) => {
      // A field that was closed belongs to the step it was opened for.
      if (place.field?.field.open === false) place.field = null;
      switch (act) {
        case 'tick':
          tick(desk);
          return true;
        case 'open':
          open(desk);
          return true;
        case 'measure': {
          const s = step(desk);
          if (s === null || ((s.asks ?? []).length === 0 && s.survey === undefined)) return false;
          if (s.survey !== undefined) desk.push(desk.around.ways.survey(desk, s));
          else if (!askItem(desk, s)) {
            const first = s.asks?.[0];
            if (first !== undefined) read(desk, s, first, () => goOn(desk, s));
          }
          return true;
        }
        case 'skip':
          skip(desk);
          return true;
        case 'next':
          move(desk, 1, char === '');
          return true;
        case 'previous':
          move(desk, -1, char === '');
          return true;
        case 'design':
          desk.push(desk.around.ways.design());
          return true;
        case 'back':
          return false;
        default: {
          const s = step(desk);
          return commonAct(desk, act, char, { ...lit, step: s?.key ?? lit.step });
        }
      }
    },
  };
  return place;
};

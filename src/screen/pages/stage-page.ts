import { EMPTY_SHOP } from '../../build/shop/shop.ts';
import { minutesLeft } from '../../coach/hours-left.ts';
import { sheetOf } from '../../coach/view.ts';
import { nextStep, type Step } from '../../coach/walk.ts';
import { drawScene } from '../../drawing/braille.ts';
import { besideRows, cutRow, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import type { Scene } from '../../scene/scene.ts';
import type { SheetDraft, Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import { itemRows, readingRows, stepListRows, worstRow } from './around-rows.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from './frame.ts';
import { spanText } from './span-text.ts';
import { barRows, changeRows, reasonRows, tagRow } from './step-rows.ts';
import { figuresOf, stepText } from './step-words.ts';
import { type TallThing, tallFigure, tallRows, tallValue } from './tall-figures.ts';

/** What is lit on a stage page: the step, and one of its repeated things. */
export type Lit = Readonly<{ stage: Stage; step: string | null; item: number }>;

export const stepsOf = (c: PageContext, stage: Stage): readonly Step[] =>
  c.view.steps.filter(s => s.stage === stage);

/** The step the page is about: the lit one, else the first of the stage that wants something. */
export const litStep = (c: PageContext, lit: Lit): Step | null => {
  const steps = stepsOf(c, lit.stage);
  return (
    steps.find(s => s.key === lit.step) ??
    nextStep(steps) ??
    steps.find(s => s.state === 'waiting') ??
    steps.at(-1) ??
    null
  );
};

/** The tall figures of a step: of its lit repeated thing, else those it names. */
export const tallOf = (c: PageContext, step: Step, item: number): readonly TallThing[] => {
  const thing = step.items?.[item];
  const things: TallThing[] = [];
  if (thing?.value !== undefined) {
    const itemWord = stepText(c.view, c.voice, step, 'item') ?? '';
    things.push(tallValue(c.voice, thing.value.v, thing.value.as, `${itemWord} ${thing.name}`.trim()));
    if (thing.second !== undefined) things.push(tallValue(c.voice, thing.second.v, thing.second.as, 'and'));
  }
  const figures = figuresOf(c.view, step);
  for (const id of step.tall ?? []) {
    const figure = figures.find(f => f.id === id);
    const tall = figure === undefined ? null : tallFigure(c.voice, figure);
    if (tall !== null) things.push(tall);
  }
  return things.slice(0, 3);
};

const timeLeft = (c: PageContext, stage: Stage): string => {
  const shop = c.shop ?? EMPTY_SHOP;
  const here = minutesLeft(c.view, shop, stage);
  const all = minutesLeft(c.view, shop, null);
  if (all.high === 0) return say(c.voice, { words: 'says.left-nothing' });
  const fills = { here: spanText(here), all: spanText(all) };
  if (here.high === 0) return say(c.voice, { words: 'says.left-in-all', fills });
  return say(c.voice, {
    words: all.high > here.high ? 'says.left-here-and-in-all' : 'says.left-here',
    fills,
  });
};

/** The step's own drawing, else its rail's, else the stage's. */
const sceneOf = (sheet: SheetDraft, step: Step): Scene => {
  const rail = /@([A-Z])(?![a-z])/.exec(step.key)?.[1];
  return step.scene ?? (rail === undefined ? undefined : sheet.railScene?.(rail)) ?? sheet.scene;
};

/** The page of one stage: one step owns it, the rest stands around. */
export const stagePage = (c: PageContext, lit: Lit, keys: Row): Row[] => {
  const steps = stepsOf(c, lit.stage);
  const step = litStep(c, lit);
  const number = step === null ? 0 : steps.indexOf(step) + 1;
  const head = [
    titleRow(c),
    stripRow(c.view, lit.stage),
    ruleRow(c, `${lit.stage}: step ${number} of ${steps.length}`, timeLeft(c, lit.stage)),
  ];
  const foot = [worstRow(c), echoRow(c), keys];
  if (step === null) return page(c, head, [row(' ', 'Nothing to do in this stage for this build.')], foot);
  const wide = c.look.columns >= 110;
  // Beside a list of steps the words come first: most titles fit 40 cells.
  const drawColumns = wide ? 58 : Math.min(33, Math.max(27, c.look.columns - 53));
  const item = Math.min(lit.item, Math.max(0, (step.items?.length ?? 1) - 1));
  const things = tallOf(c, step, item);
  const tall = things.length === 0 ? [] : tallRows(things, c.look.columns - 2, c.look.ascii);
  const bars = [...barRows(c, step), ...(step.state === 'stale' ? changeRows(c, step) : [])].slice(0, 6);
  const bodyRows = pageRows(c) - head.length - foot.length;
  // What is around keeps a few rows; the reasons get what is left, and what they leave goes back to the list.
  // Two or three things need no more rows than that, however few are left for the drawing beside them.
  const count = (step.items ?? []).length;
  const around = Math.min(6, count > 0 ? Math.max(2, count) : Math.max(4, (step.asks ?? []).length + 3));
  const room = Math.max(3, bodyRows - 1 - tall.length - bars.length - 1 - around);
  const note = step.items?.[item]?.note;
  const noteRows: Row[] =
    note === undefined
      ? []
      : wrap(say(c.voice, note, figuresOf(c.view, step)), c.look.columns - 4)
          .slice(0, 2)
          .map(line => row('  ', ['plain', line]));
  const top = [
    tagRow(c, step),
    ...tall,
    ...noteRows,
    ...bars,
    ...reasonRows(c, step, room - noteRows.length),
  ];
  const aroundRows = Math.max(2, bodyRows - top.length - 1);
  const listColumns = c.look.columns - drawColumns - 2;
  const items = step.items ?? [];
  const asks = readingRows(c, step, listColumns, aroundRows);
  const list =
    items.length > 0
      ? itemRows(c, step, item, aroundRows, listColumns)
      : asks.length > 0
        ? [
            ...asks.map(r => cutRow(r, listColumns)),
            ...stepListRows(c, steps, step, Math.max(0, aroundRows - asks.length), listColumns),
          ]
        : stepListRows(c, steps, step, aroundRows, listColumns);
  const scene = sceneOf(sheetOf(c.view, lit.stage), step);
  const drawing = drawScene(scene, {
    columns: drawColumns,
    rows: Math.min(aroundRows, wide ? 16 : 10),
    ascii: c.look.ascii,
  });
  const label =
    items.length > 0
      ? `${step.itemsDone} of ${items.length} done`
      : asks.length > 0
        ? 'to read, and steps around'
        : 'before and after';
  const body = [
    ...top,
    ruleRow(c, label, scene.title),
    ...besideRows(list, drawing, c.look.columns - drawColumns - 1),
  ];
  return page(c, head, body, foot);
};

import { openFindings, sheetOf } from '../../coach/view.ts';
import { itemSettled, nextStep, type Step } from '../../coach/walk.ts';
import { drawScene } from '../../drawing/braille.ts';
import { besideRows, cellWidth, cutRow, cutTo, joinSides, padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { SIGNS, type State } from '../../drawing/signs.ts';
import { write } from '../../quantity/write.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from './frame.ts';
import { askLabel, figuresOf, findingText, lineText, readingText, stepText } from './step-words.ts';
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

export const stateSign = (step: Step, isNext: boolean): State => {
  if (isNext && step.state === 'to do') return 'next';
  switch (step.state) {
    case 'to do':
      return 'to-do';
    case 'done':
    case 'stale':
    case 'skipped':
    case 'waiting':
    case 'stop':
      return step.state;
  }
};

const TAGS: Readonly<Record<Step['state'], readonly [State, string]>> = {
  'to do': ['next', 'NEXT'],
  done: ['done', 'DONE'],
  stale: ['stale', 'STALE'],
  skipped: ['skipped', 'SKIPPED'],
  waiting: ['waiting', 'WAITS'],
  stop: ['stop', 'STOP'],
};

/** A step's sentence where it fits; else what stands before its comma, which says the deed. */
const deedWithin = (title: string, room: number): string => {
  const deed = title.split(',')[0] ?? title;
  return cellWidth(title) > room && deed.length > 15 ? deed : title;
};

/** Row 4: the tag, the sentence, and at the right the line the numbers belong to. */
export const tagRow = (c: PageContext, step: Step): Row => {
  const [state, word] = TAGS[step.state];
  const measures =
    step.state === 'to do' && ((step.asks ?? []).some(a => a.optional !== true) || step.survey !== undefined);
  const title = stepText(c.view, c.voice, step, 'title') ?? step.key;
  const sign = SIGNS[state];
  const line = lineText(step.line);
  const tag = `${sign.sign} ${measures ? 'MEASURE' : word}`;
  const room = c.look.columns - cellWidth(tag) - cellWidth(line) - 6;
  const left = row(' ', [sign.role, tag], '  ', ['lead', deedWithin(title, room)]);
  return joinSides(left, row(['quiet', line]), c.look.columns - 1);
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

/** Rows 9 to 12: why, caution, measure, two rows at most for each, four in all. */
export const reasonRows = (c: PageContext, step: Step, room: number): Row[] => {
  const parts: [string, string | null][] = [
    ['Do', stepText(c.view, c.voice, step, 'do')],
    ['Stand', stepText(c.view, c.voice, step, 'posture')],
    ['Why', stepText(c.view, c.voice, step, 'why')],
    ['Caution', stepText(c.view, c.voice, step, 'caution')],
    ['Measure', stepText(c.view, c.voice, step, 'measure')],
  ];
  const present = parts.filter((p): p is [string, string] => p[1] !== null);
  const columns = c.look.columns - 12;
  const wrapped = present.map(([name, text]) => ({ name, lines: wrap(text, columns) }));
  let over = wrapped.reduce((n, w) => n + w.lines.length, 0) - room;
  /** Takes lines off a part until it has so few; the rest of it is under w. */
  const shorten = (name: string, least: number): void => {
    const at = wrapped.findIndex(w => w.name === name);
    const part = wrapped[at];
    if (part === undefined || over <= 0) return;
    const keep = Math.max(least, part.lines.length - over);
    over -= part.lines.length - keep;
    if (keep === 0) wrapped.splice(at, 1);
    else if (keep < part.lines.length)
      part.lines = [...part.lines.slice(0, keep - 1), more(part.lines[keep - 1] ?? '')];
  };
  /** The rest is under w; no word is cut. */
  const more = (line: string): string => {
    const words = line.split(' ');
    while (words.length > 1 && cellWidth(words.join(' ')) > columns - 4) words.pop();
    return `${words.join(' ')} … w`;
  };
  // What makes it safe goes last: the reason first, then how to measure, then how to stand.
  shorten('Why', 1);
  shorten('Why', 0);
  shorten('Measure', 1);
  const caution = wrapped.find(w => w.name === 'Caution');
  const brief = stepText(c.view, c.voice, step, 'brief');
  if (over > 0 && caution !== undefined && brief !== null) {
    const lines = wrap(brief, columns);
    if (lines.length < caution.lines.length) {
      over -= caution.lines.length - lines.length;
      caution.lines = lines;
    }
  }
  shorten('Measure', 0);
  shorten('Stand', 1);
  shorten('Do', 1);
  shorten('Stand', 0);
  shorten('Caution', 1);
  return wrapped.flatMap(({ name, lines }) =>
    lines.map((line, i) =>
      row(
        ' ',
        i === 0 ? ([name === 'Caution' ? 'attention' : 'quiet', padTo(name, 10)] as const) : padTo('', 10),
        line,
      ),
    ),
  );
};

const itemRows = (c: PageContext, step: Step, item: number, rows: number, columns: number): Row[] => {
  const items = step.items ?? [];
  const word = stepText(c.view, c.voice, step, 'item') ?? '';
  const cell = (i: number): string => {
    const it = items[i];
    if (it === undefined) return '';
    const value =
      it.value === undefined
        ? ''
        : write(it.value.v, it.value.as, c.voice.system, { unit: false, fixed: true });
    const second =
      it.second === undefined
        ? ''
        : ` → ${write(it.second.v, it.second.as, c.voice.system, { unit: false, fixed: true })}`;
    return `${it.name.padStart(3)}  ${padTo(value, 7, 'right')}${second}`;
  };
  const short = items.every(it => it.second === undefined && it.name.length <= 3);
  const across = short && items.length > rows ? Math.max(1, Math.floor(columns / 19)) : 1;
  const perColumn = Math.ceil(items.length / across);
  const from = across > 1 || items.length <= rows ? 0 : Math.max(0, Math.min(item - 2, items.length - rows));
  return Array.from({ length: Math.min(rows, perColumn) }, (_, r): Row => {
    const parts = Array.from({ length: across }, (_, k) => {
      const i = from + r + k * perColumn;
      const it = items[i];
      if (it === undefined) return [];
      const state: State = itemSettled(c.view.build, it) ? 'done' : i === item ? 'next' : 'to-do';
      const width = across > 1 ? 16 : columns - 4;
      const label = across > 1 ? cell(i) : `${SIGNS[state].word.padEnd(6)} ${word} ${cell(i).trim()}`;
      return [
        [i === item ? 'lead' : SIGNS[state].role, ` ${SIGNS[state].sign} `] as const,
        [i === item ? 'lead' : 'plain', padTo(label, width)] as const,
      ];
    });
    return row(...parts.flat());
  });
};

/** The window of steps around the lit one, the lit row kept third. */
export const stepListRows = (
  c: PageContext,
  steps: readonly Step[],
  lit: Step | null,
  rows: number,
  columns: number,
): Row[] => {
  const at = Math.max(
    0,
    steps.findIndex(s => s.key === lit?.key),
  );
  const from = Math.max(0, Math.min(at - 2, steps.length - rows));
  return steps.slice(from, from + rows).map(s => {
    const isLit = s.key === lit?.key;
    const state = stateSign(s, isLit);
    const sign = SIGNS[state];
    const whole = stepText(c.view, c.voice, s, 'title') ?? s.key;
    const count = s.items === undefined ? '' : ` ${s.itemsDone}/${s.items.length}`;
    const title = deedWithin(whole, columns - 11 - cellWidth(count));
    return cutRow(
      row(
        ' ',
        [isLit ? 'lead' : sign.role, `${sign.sign} ${padTo(sign.word, 8)}`],
        [isLit ? 'lead' : 'plain', `${title}${count}`],
      ),
      columns,
    );
  });
};

/** Row 21: the worst open finding, or nothing. */
export const worstRow = (c: PageContext): Row => {
  const worst = openFindings(c.view)[0];
  if (worst === undefined) return [];
  const sign = SIGNS[worst.severity];
  return row(
    ' ',
    [sign.role, `${sign.sign} ${sign.word}`],
    '    ',
    findingText(c.voice, worst, 'title') ?? worst.key,
  );
};

/** Why the lit step cannot be done now: what it waits for, or the gate that is shut, with what opens it. */
export const barRows = (c: PageContext, step: Step): Row[] => {
  if (step.state === 'waiting') {
    return step.waitsFor.slice(0, 3).map((key, i) => {
      const other = c.view.steps.find(s => s.key === key);
      const title = other === undefined ? key : (stepText(c.view, c.voice, other, 'title') ?? key);
      return row(
        ' ',
        ['quiet', padTo(i === 0 ? 'Waits for' : '', 10)],
        `${title}${other === undefined ? '' : ` (${other.stage})`}`,
      );
    });
  }
  const gate = (step.gates ?? []).find(g => step.shut.includes(g.id));
  if (gate === undefined) return [];
  const fills = gate.fills ?? {};
  const words = gate.words ?? gate.id;
  const opens = c.voice.content.gates[words]?.opens ?? [];
  return [
    row(' ', ['halt', `■ STOP  ${say(c.voice, { words: `gates.${words}.stop`, fills })}`]),
    ...wrap(say(c.voice, { words: `gates.${words}.why`, fills }), c.look.columns - 12)
      .slice(0, 2)
      .map((line, i) => row(' ', ['quiet', padTo(i === 0 ? 'Why' : '', 10)], line)),
    ...opens.map((_, i) =>
      row(
        ' ',
        ['quiet', padTo(i === 0 ? 'Opens it' : '', 10)],
        say(c.voice, { words: `gates.${words}.opens.${i}`, fills }),
      ),
    ),
    ...(gate.never === true
      ? []
      : [row(' ', ['quiet', padTo('', 10)], 'Go ahead all the same: s, say why; it is kept.')]),
  ];
};

/** From what to what a stale step's figures changed. */
export const changeRows = (c: PageContext, step: Step): Row[] =>
  step.changes.slice(0, 3).map(change => {
    const figure = change.figure;
    const name = say(c.voice, { words: `figures.${change.id.split('@')[0]}.label` });
    const text = (v: number): string => (figure === undefined ? '' : write(v, figure.as, c.voice.system));
    return row(
      ' ',
      ['attention', '≠ '],
      change.now === undefined
        ? `${name}: no longer asked`
        : `${name}: was ${text(change.was)}, now ${text(change.now)}`,
    );
  });

/** What was read in a step, one row each. */
export const readingRows = (c: PageContext, step: Step, columns = 62): Row[] =>
  (step.asks ?? []).map(a => {
    const reading = c.view.build.readings.get(`${step.key}#${a.ask}`);
    const label = askLabel(c.view, c.voice, step, a.ask);
    const sign = SIGNS[reading === undefined ? 'to-do' : 'done'];
    if (reading === undefined) return row(' ', [sign.role, `${sign.sign} `], label);
    const value = readingText(c.view, c.voice, step, a, reading.value);
    const room = Math.max(10, columns - 4 - cellWidth(value));
    return row(' ', [sign.role, `${sign.sign} `], padTo(cutTo(label, room), room + 1), value);
  });

const timeLeft = (c: PageContext, stage: Stage): string => {
  const open = stepsOf(c, stage).filter(
    s => s.state === 'to do' || s.state === 'waiting' || s.state === 'stop',
  );
  const low = open.reduce((n, s) => n + s.minutes[0], 0);
  const high = open.reduce((n, s) => n + s.minutes[1], 0);
  if (high === 0) return 'nothing left here';
  return high < 90
    ? `about ${low} to ${high} min left here`
    : `about ${Math.max(1, Math.round(low / 60))} to ${Math.round(high / 60)} h left here`;
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
  const around = Math.max(4, Math.min(6, (step.items ?? []).length || (step.asks ?? []).length + 3));
  const room = Math.max(3, bodyRows - 1 - tall.length - bars.length - 1 - around);
  const note = step.items?.[item]?.note;
  const noteRow: Row[] =
    note === undefined
      ? []
      : [cutRow(row('  ', ['plain', say(c.voice, note, figuresOf(c.view, step))]), c.look.columns)];
  const top = [tagRow(c, step), ...tall, ...noteRow, ...bars, ...reasonRows(c, step, room - noteRow.length)];
  const aroundRows = Math.max(4, bodyRows - top.length - 1);
  const listColumns = c.look.columns - drawColumns - 2;
  const items = step.items ?? [];
  const asks = readingRows(c, step, listColumns);
  const list =
    items.length > 0
      ? itemRows(c, step, item, aroundRows, listColumns)
      : asks.length > 0
        ? [
            ...asks.map(r => cutRow(r, listColumns)),
            ...stepListRows(c, steps, step, Math.max(0, aroundRows - asks.length), listColumns),
          ]
        : stepListRows(c, steps, step, aroundRows, listColumns);
  const scene = step.scene ?? sheetOf(c.view, lit.stage).scene;
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

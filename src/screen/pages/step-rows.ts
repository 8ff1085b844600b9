import { opensAt } from '../../coach/fire-watch-ends.ts';
import type { Step } from '../../coach/walk.ts';
import { cellWidth, joinSides, padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { SIGNS, type State } from '../../drawing/signs.ts';
import { NOT_KNOWN, say } from '../../words/say.ts';
import { clockTime } from './clock-time.ts';
import type { PageContext } from './context.ts';
import { figureNumber, lineText, stepText } from './step-words.ts';

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

/** Words after which a sentence says the how, the where or the next, and can do without. */
const TURNS = new Set(
  'after and at before between by for from how in of on once or over so that then to under until what when where which with'.split(
    ' ',
  ),
);

/** The shortest a sentence is made: less says no deed. */
const LEAST_DEED = 12;

/** The longest of the shortened deeds that has room for its rail, each of which has a step of the same words; null where none has, or none is named. */
const withRail = (deeds: readonly string[], title: string, room: number): string | null => {
  const rail = /\brail ([A-Z])\b/.exec(title)?.[1];
  if (rail === undefined) return null;
  const named = deeds.flatMap(deed =>
    new RegExp(`\\b${rail}\\b`).test(deed) ? [deed] : [`${deed}, rail ${rail}`, `${deed}, ${rail}`],
  );
  return named.find(t => cellWidth(t) <= room) ?? null;
};

/** A step's sentence where it fits; else as much of it as says a deed: what stands before its comma, or before a word that turns to the how. */
export const deedWithin = (title: string, room: number): string => {
  if (cellWidth(title) <= room) return title;
  const words = title.split(' ');
  const deeds: string[] = [];
  for (let n = words.length - 1; n > 0; n--) {
    const deed = words.slice(0, n).join(' ');
    if (deed.length < LEAST_DEED) break;
    const ends = /[,:]$/.test(deed) || TURNS.has(words[n] ?? '');
    if (ends && !TURNS.has(words[n - 1] ?? '') && cellWidth(deed) <= room)
      deeds.push(deed.replace(/[,:]$/, ''));
  }
  return withRail(deeds, title, room) ?? deeds[0] ?? title;
};

/** Row 4: the tag, the sentence, and at the right the line the numbers belong to, or until when a fire is watched for. */
export const tagRow = (c: PageContext, step: Step): Row => {
  // What can be done but is not its turn is no NEXT: supports can be set before there is a rail to lay on them.
  const [state, word] =
    step.state === 'to do' && c.view.next !== null && c.view.next.key !== step.key
      ? (['to-do', 'TO DO'] as const)
      : TAGS[step.state];
  const measures =
    step.state === 'to do' && ((step.asks ?? []).some(a => a.optional !== true) || step.survey !== undefined);
  const title = stepText(c.view, c.voice, step, 'title') ?? step.key;
  const sign = SIGNS[state];
  const opens = opensAt(c.view, step.key);
  const line = opens === null ? lineText(step.line) : `until ${clockTime(opens)}`;
  const tag = `${sign.sign} ${measures ? 'MEASURE' : word}`;
  const room = c.look.columns - cellWidth(tag) - cellWidth(line) - 6;
  const left = row(' ', [sign.role, tag], '  ', ['lead', deedWithin(title, room)]);
  return joinSides(left, row(['quiet', line]), c.look.columns - 1);
};

/** Whether Enter opens a field in this step, or what is read anew: one that only takes a tick has nothing to type. */
const takesNumber = (step: Step): boolean =>
  step.survey !== undefined ||
  step.piece !== undefined ||
  (step.asks ?? []).some(a => a.optional !== true) ||
  (step.items ?? []).some(i => i.piece !== undefined) ||
  (step.gates ?? []).some(g => g.measure !== undefined && step.shut.includes(g.id));

/** What stands before a step's limits: a number is measured and typed, the rest is looked at and ticked. */
export const measureWord = (step: Step): 'Measure' | 'Check' => (takesNumber(step) ? 'Measure' : 'Check');

/** Rows 9 to 12: why, caution, measure, two rows at most for each, four in all. */
export const reasonRows = (c: PageContext, step: Step, room: number): Row[] => {
  const parts: [string, string | null][] = [
    ['Do', stepText(c.view, c.voice, step, 'do')],
    ['Stand', stepText(c.view, c.voice, step, 'posture')],
    ['Why', stepText(c.view, c.voice, step, 'why')],
    ['Caution', stepText(c.view, c.voice, step, 'caution')],
    [measureWord(step), stepText(c.view, c.voice, step, 'measure')],
  ];
  // A step that waits says what it waits for; its sentences are told when their numbers are there.
  const told = (text: string): boolean => step.state !== 'waiting' || !text.includes(NOT_KNOWN);
  const present = parts.filter((p): p is [string, string] => p[1] !== null && told(p[1]));
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
    // Where a part of the sentence ends past the middle, that is where it is broken off.
    const end = words.findLastIndex(word => /[.,;:]$/.test(word)) + 1;
    if (end > words.length / 2) words.length = end;
    return `${words.join(' ')} … w`;
  };
  // What makes it safe goes last: the reason first, then how to measure, then how to stand.
  shorten('Why', 1);
  shorten('Why', 0);
  shorten(measureWord(step), 1);
  const caution = wrapped.find(w => w.name === 'Caution');
  const brief = stepText(c.view, c.voice, step, 'brief');
  if (over > 0 && caution !== undefined && brief !== null) {
    const lines = wrap(brief, columns);
    if (lines.length < caution.lines.length) {
      over -= caution.lines.length - lines.length;
      caution.lines = lines;
    }
  }
  shorten(measureWord(step), 0);
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
    const text = (v: number): string => (figure === undefined ? '' : figureNumber(c.voice, figure, v));
    return row(
      ' ',
      ['attention', '≠ '],
      change.now === undefined
        ? `${name}: no longer asked`
        : `${name}: was ${text(change.was)}, now ${text(change.now)}`,
    );
  });

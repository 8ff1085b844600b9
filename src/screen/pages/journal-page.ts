import type { Entry } from '../../build/entries.ts';
import { newestStrikeable } from '../../coach/decide/decide.ts';
import { findStep } from '../../coach/decide/steps.ts';
import { pastStep } from '../../coach/pause.ts';
import { cutAtWord, padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import type { Fills, Stage, StepDraft } from '../../stages/sheet.ts';
import { counted } from '../../words/counted.ts';
import { say, textAt } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { designWords } from './design-words.ts';
import { echoRow, page, ruleRow, stripRow, titleRow } from './frame.ts';
import { askLabel, goneReadingText, readingText, stepText } from './step-words.ts';

/** The step of a key, or as it stood in a long pause that is over: no page offers it any more, and the journal keeps it. */
const stepOf = (c: PageContext, key: string): { step: StepDraft; item: boolean } | null => {
  const found = findStep(c.view, key);
  if (found !== null) return found;
  const past = pastStep(c.view, key);
  return past === null ? null : { step: past, item: past.key !== key };
};

/** A later round of the same step, where the one of this key is offered no more: its words have the same questions. */
const likeOf = (c: PageContext, key: string): StepDraft | undefined => {
  const name = key.split(/[@:~]/)[0];
  return c.view.steps.find(s => s.key.split(/[@:~]/)[0] === name);
};

/** What is over and done with (a fire watch) has no step any more: the title of its kind, where that needs no numbers. */
const goneTitle = (c: PageContext, key: string): string => {
  const [stage, name] = (key.split(/[@:~#]/)[0] ?? '').split('/');
  const title = textAt(c.voice.content, `steps.${stage}.${name}.title`);
  return typeof title === 'string' && !title.includes('{') ? title : (name ?? key).replaceAll('-', ' ');
};

const stepTitle = (c: PageContext, key: string): string => {
  const found = stepOf(c, key);
  if (found === null) return goneTitle(c, key);
  const title = stepText(c.view, c.voice, found.step, 'title') ?? key;
  const item = found.item ? (found.step.items ?? []).find(i => i.key === key) : undefined;
  // The one of many goes first: the end of a long row is cut.
  const one = item === undefined ? '' : `${stepText(c.view, c.voice, found.step, 'item') ?? ''} ${item.name}`;
  return item === undefined ? title : `${one.trim()}: ${title}`;
};

/** What an entry says, in a person's words: deed and value. */
export const entryText = (c: PageContext, e: Entry): { deed: string; value: string } => {
  const len = (v: number): string => write(v, 'length', c.voice.system);
  switch (e.kind) {
    case 'build-begun':
      return { deed: `began ${e.name}`, value: e.system };
    case 'design-set':
      return { deed: `design: ${e.field}`, value: designWords(e.field, e.value, c.voice.system) };
    case 'design-agreed':
      return { deed: 'design agreed', value: '' };
    case 'step-ticked':
      return { deed: stepTitle(c, e.step), value: 'done' };
    case 'step-skipped':
      return { deed: `skipped: ${stepTitle(c, e.step)}`, value: `"${e.why}"` };
    case 'gate-overridden':
      return { deed: `went on past a gate: ${stepTitle(c, e.step)}`, value: `"${e.why}"` };
    case 'reading-logged': {
      const step = stepOf(c, e.step)?.step ?? likeOf(c, e.step);
      if (step === undefined) return { deed: e.ask, value: e.typed };
      const ask = step.asks?.find(a => a.ask === e.ask);
      const label = askLabel(c.view, c.voice, step, e.ask);
      return {
        // Words of the step as it is now need not ask it.
        deed: label.startsWith('steps.') ? e.ask : label,
        value:
          ask === undefined
            ? goneReadingText(c.view, c.voice, step, e.ask, e.value, e.typed)
            : readingText(c.view, c.voice, step, ask, e.value),
      };
    }
    case 'slits-marked':
      return {
        deed: `marked slits ${e.first} to ${e.first + e.marks_mm.length - 1} of rail ${e.rail}`,
        value: '',
      };
    case 'slit-noted':
      return { deed: `slit ${e.slit} of rail ${e.rail}`, value: e.note };
    case 'piece-cut':
      return { deed: `cut ${pieceName(e.need)}`, value: len(e.length_mm) };
    case 'piece-fated':
      return { deed: 'piece', value: e.fate };
    case 'survey-opened':
      return {
        deed: `began reading rail ${e.rail} (${e.phase})`,
        value: counted(e.stations_mm.length, 'station'),
      };
    case 'offsets-read': {
      const first = e.readings[0];
      const more = e.readings.length > 1 ? ` and ${e.readings.length - 1} more` : '';
      return {
        deed: `station ${first?.station ?? '?'}${more}`,
        value: first === undefined ? '' : write(first.offset_mm, 'length', c.voice.system, { sign: true }),
      };
    }
    case 'survey-closed':
      return { deed: 'closed the reading', value: '' };
    case 'remedy-chosen':
      if (typeof e.plan.typed === 'string') return { deed: `took on: ${e.plan.typed}`, value: '' };
      return {
        deed: `chose: ${say(c.voice, { words: `remedies.${e.remedy}.deed`, fills: fillsOf(e.plan) })}`,
        value: e.predicted_mm === undefined ? '' : `${len(e.predicted_mm)} after`,
      };
    case 'caution-known':
      return {
        deed: `read the caution: ${say(c.voice, { words: `cautions.${e.caution}.title` })}`,
        value: '',
      };
    case 'remarked':
      return { deed: `remark: ${e.text}`, value: '' };
    case 'stopped':
      return { deed: 'left the bench', value: '' };
    case 'shop-copied':
      return { deed: 'took the numbers of the shop', value: '' };
    case 'entry-struck':
      return { deed: 'took an entry back', value: 'undo' };
  }
};

/** What fills the deed of a remedy that was chosen: the fills frozen with it, else the plain ones of its plan. */
const fillsOf = (plan: Readonly<Record<string, unknown>>): Fills => ({
  ...Object.fromEntries(
    Object.entries(plan).filter(
      (kv): kv is [string, string | number] => typeof kv[1] === 'string' || typeof kv[1] === 'number',
    ),
  ),
  ...((plan.fills ?? {}) as Fills),
});

/** A need's key as words: "upright@A:7" is the upright on flat 7 of rail A. */
export const pieceName = (need: string): string => {
  const [kind = need, where = ''] = need.split('@');
  const [rail = '', name = ''] = where.split(':');
  const on = name === '' ? '' : /^\d+$/.test(name) ? ` on flat ${name}` : `, ${name}`;
  return `${kind}${rail.includes('-') ? ` between ${rail.replace('-', ' and ')}` : rail === '' ? '' : ` of rail ${rail}`}${on}`;
};

/** Newest first, strikes themselves left out: a struck entry shows it. */
export const journalEntries = (c: PageContext): readonly Entry[] =>
  c.view.build.all.filter(e => e.kind !== 'entry-struck').reverse();

export const journalPage = (c: PageContext, stage: Stage, lit: number, keys: Row): Row[] => {
  const list = journalEntries(c);
  const struck = c.view.build.struck;
  const idle = new Set(c.view.build.idle.map(e => e.id));
  const newest = newestStrikeable(c.view);
  const litEntry = list[lit];
  const head = [
    titleRow(c),
    stripRow(c.view, stage),
    ruleRow(c, `journal: ${counted(c.view.build.all.length, 'entry', 'entries')}`, 'newest first'),
  ];
  const said =
    litEntry === undefined
      ? ''
      : struck.has(litEntry.id)
        ? `y puts back:  ${entryText(c, litEntry).deed}`
        : `z takes back:  ${entryText(c, litEntry).deed}`;
  const top: Row[] = [
    row(' ', ['lead', `▸ ${cutAtWord(said, c.look.columns - 4)}`]),
    row('   ', ['quiet', 'Nothing is erased. The entry stays, marked struck; the steel is as it is.']),
  ];
  const rows = Math.max(1, c.look.rows - 1 - 3 - top.length - 3);
  const from = Math.max(0, Math.min(lit - 2, list.length - rows));
  let day = '';
  const lines: Row[] = [];
  for (let i = from; i < list.length && lines.length < rows; i++) {
    const e = list[i] as Entry;
    const date = new Date(e.at);
    const today = Number.isNaN(date.getTime())
      ? ''
      : `${date.getFullYear()}-${String(date.getMonth() + 1).padStart(2, '0')}-${String(date.getDate()).padStart(2, '0')}`;
    if (today !== day) {
      day = today;
      lines.push(ruleRow(c, day));
      if (lines.length >= rows) break;
    }
    const { deed, value } = entryText(c, e);
    const isStruck = struck.has(e.id);
    const time = Number.isNaN(date.getTime())
      ? '     '
      : `${String(date.getHours()).padStart(2, '0')}:${String(date.getMinutes()).padStart(2, '0')}`;
    const note = isStruck ? 'struck' : idle.has(e.id) ? 'idle' : e.id === newest?.id ? 'z takes this' : '';
    lines.push(
      row(
        ' ',
        [i === lit ? 'lead' : 'quiet', i === lit ? '▸ ' : isStruck ? '× ' : '  '],
        ['quiet', `${time} `],
        [
          i === lit ? 'lead' : isStruck ? 'quiet' : 'plain',
          padTo(cutAtWord(deed, c.look.columns - 36), c.look.columns - 36),
        ],
        padTo(cutAtWord(value, 12), 13, 'right'),
        ['quiet', `  ${note}`],
      ),
    );
  }
  const file = `${counted(c.view.build.all.length, 'entry', 'entries')}, ${struck.size} struck.`;
  return page(c, head, [...top, ...lines], [[], echoRow(c, file), keys]);
};

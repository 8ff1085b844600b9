import { sheetOf } from '../../coach/view.ts';
import { drawScene } from '../../drawing/braille.ts';
import { padTo, row, wrap } from '../../drawing/cells.ts';
import { LARGE_ROWS, largeDigits } from '../../drawing/large.ts';
import type { Row } from '../../drawing/row.ts';
import type { Figure, Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from './frame.ts';
import { slitStripRows } from './slit-strip-rows.ts';
import { type Lit, litStep, tallOf } from './stage-page.ts';
import { measureWord, tagRow } from './step-rows.ts';
import { figureNumber, figuresOf, lineText, stepText } from './step-words.ts';

/** A figure's value in words. */
export const figureValue = (c: PageContext, f: Figure): string => {
  const v = f.value;
  const text = (n: number, unit = true): string => figureNumber(c.voice, f, n, unit);
  switch (v.is) {
    case 'exact':
      return text(v.v);
    case 'band':
      return `${text(v.likely)}, from ${text(v.low, false)} to ${text(v.high)}`;
    case 'pending':
      return v.meanwhile === undefined ? 'being worked out' : `about ${text(v.meanwhile)}`;
    case 'unknown':
      return 'no number yet';
  }
};

const sourceText = (c: PageContext, key: string): string => {
  const source = c.voice.content.sources[key];
  return source === undefined
    ? key
    : `${source.title} [${source.mark}]${source.note === undefined ? '' : `: ${source.note}`}`;
};

/** The strip of marks under the steps that choose, mark and saw slits: of all rails, or of the step's own. */
const stripFor = (c: PageContext, key: string): readonly Row[] => {
  if (key === 'plan/slits') return slitStripRows(c);
  const rail = /^cut\/(?:mark-blank|(?:mark|saw|deburr)-third)@([^:]+)/.exec(key)?.[1];
  return rail === undefined ? [] : slitStripRows(c, [rail]);
};

/** Key w: the step's words in full, then every number of it with its why and its source. */
export const whyRows = (c: PageContext, lit: Lit): Row[] => {
  const step = litStep(c, lit);
  if (step === null) return [];
  const columns = c.look.columns - 13;
  const part = (name: string, text: string | null): Row[] =>
    text === null
      ? []
      : wrap(text, columns).map((l, i) => row(' ', ['quiet', padTo(i === 0 ? name : '', 10)], l));
  const figures = figuresOf(c.view, step);
  const own = [...new Set([...step.uses, ...(step.tall ?? [])])].flatMap(id =>
    figures.filter(f => f.id === id).slice(0, 1),
  );
  return [
    tagRow(c, step),
    ...part('Do', stepText(c.view, c.voice, step, 'do')),
    ...part('Stand', stepText(c.view, c.voice, step, 'posture')),
    ...part('Why', stepText(c.view, c.voice, step, 'why')),
    ...part('Caution', stepText(c.view, c.voice, step, 'caution')),
    ...part(measureWord(step), stepText(c.view, c.voice, step, 'measure')),
    ...part('More', stepText(c.view, c.voice, step, 'more')),
    ...stripFor(c, step.key),
    ...(own.length === 0 ? [] : [ruleRow(c, 'its numbers')]),
    ...own.flatMap((f): Row[] => {
      const base = f.id.split('@')[0] ?? f.id;
      const words = c.voice.content.figures[base];
      return [
        row(
          ' ',
          ['lead', `${say(c.voice, { words: `figures.${base}.label` })}: ${figureValue(c, f)}`],
          '  ',
          ['quiet', f.kind === 'dimension' ? lineText(f.line) : ''],
        ),
        ...(words === undefined
          ? []
          : wrap(
              `${say(c.voice, { words: `figures.${base}.why` })} ${f.on === undefined ? '' : 'It stands on what you measured. '}Source: ${sourceText(c, f.source ?? words.source)}`,
              columns + 8,
            ).map(l => row('     ', l))),
      ];
    }),
  ];
};

export const whyPage = (c: PageContext, lit: Lit, from: number, keys: Row): Row[] => {
  const rows = whyRows(c, lit);
  const room = Math.max(1, pageRows(c) - 6);
  const at = Math.max(0, Math.min(from, rows.length - room));
  const more =
    rows.length > room ? `rows ${at + 1} to ${Math.min(rows.length, at + room)} of ${rows.length}` : '';
  return page(
    c,
    [titleRow(c), stripRow(c.view, lit.stage), ruleRow(c, 'why, in full', more)],
    rows.slice(at, at + room),
    [[], echoRow(c), keys],
  );
};

/** Key d: the drawing, whole screen. */
export const drawingPage = (c: PageContext, lit: Lit, keys: Row): Row[] => {
  const step = litStep(c, lit);
  const scene = step?.scene ?? sheetOf(c.view, lit.stage).scene;
  const drawing = drawScene(scene, {
    columns: c.look.columns - 2,
    rows: Math.max(3, pageRows(c) - 5),
    ascii: c.look.ascii,
  });
  return page(
    c,
    [titleRow(c), ruleRow(c, scene.title)],
    drawing.map(r => [{ text: ' ' }, ...r]),
    [[], keys],
  );
};

/** Key l: the figures fill the screen, readable across the garage. */
export const largePage = (c: PageContext, lit: Lit, keys: Row): Row[] => {
  const step = litStep(c, lit);
  if (step === null) return page(c, [], [row(' ', 'No figure in this step.')], [keys]);
  const things = tallOf(c, step, lit.item).slice(0, c.look.rows >= 2 * LARGE_ROWS + 4 ? 2 : 1);
  const columns = c.look.columns - 26;
  const body = things.flatMap((t): Row[] => [
    ...largeDigits(t.digits, c.look.ascii, columns).map((line, i) =>
      row(' ', line, i === 0 ? `   ${t.unit}` : i === LARGE_ROWS - 1 ? `   ${t.name}` : ''),
    ),
    [],
  ]);
  const line = lineText(step.line);
  return page(c, [], body.length === 0 ? [row(' ', 'No figure in this step.')] : body, [
    row(' ', ['lead', stepText(c.view, c.voice, step, 'title') ?? ''], '   ', line),
    keys,
  ]);
};

/** Key g: words of the trade. */
export const glossaryPage = (c: PageContext, stage: Stage, from: number, keys: Row): Row[] => {
  const words = Object.entries(c.voice.content.glossary)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([word, means]) =>
      wrap(means, c.look.columns - 22).map((l, i) => row(' ', ['lead', padTo(i === 0 ? word : '', 20)], l)),
    );
  const rows = words.flat();
  const room = Math.max(1, pageRows(c) - 6);
  const at = Math.max(0, Math.min(from, rows.length - room));
  // Words are counted, not rows: one that only its last rows show is in sight too.
  const starts = words.map((_, i) => words.slice(0, i).reduce((n, w) => n + w.length, 0));
  const first = starts.findLastIndex(s => s <= at) + 1;
  const last = starts.findLastIndex(s => s < at + room) + 1;
  return page(
    c,
    [titleRow(c), stripRow(c.view, stage), ruleRow(c, 'words', `${first} to ${last} of ${words.length}`)],
    rows.slice(at, at + room),
    [[], echoRow(c), keys],
  );
};

/** Key i: what to do now. The list first, one of them on Enter. */
export const hurtPage = (c: PageContext, lit: number, open: boolean, keys: Row): Row[] => {
  const list = Object.entries(c.voice.content.hurt);
  const one = list[lit];
  const head = [titleRow(c), ruleRow(c, 'hurt: what to do now')];
  const first = row(' ', [
    'halt',
    ' Hard bleeding, a bad burn, hard to breathe, any doubt: call 112, 911 or 999. ',
  ]);
  if (!open || one === undefined) {
    return page(
      c,
      head,
      [
        first,
        [],
        ...list.map(([, h], i) =>
          row(' ', [i === lit ? 'lead' : 'plain', `${i === lit ? '▸' : '·'} ${h.title}`]),
        ),
        [],
        row(' ', ['quiet', 'First aid as commonly taught, from memory. A course and a doctor know better.']),
      ],
      [[], echoRow(c), keys],
    );
  }
  const body = [
    row(' ', ['lead', one[1].title]),
    [],
    ...one[1].now.flatMap((l, i) => wrap(`${i + 1}  ${l}`, c.look.columns - 4).map(t => row(' ', t))),
    [],
    ...wrap(one[1].call, c.look.columns - 4).map(t => row(' ', ['lead', t])),
  ];
  return page(c, [...head, first], body, [[], echoRow(c), keys]);
};

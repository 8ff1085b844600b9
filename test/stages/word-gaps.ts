import { compileContent } from '../../src/making/compile-content.ts';
import type { Figure, Fills, Finding, SheetDraft, StepDraft } from '../../src/stages/sheet.ts';
import type { Content } from '../../src/words/schema.ts';

/** All words, compiled and checked as the build does it. */
export const WORDS = JSON.parse(compileContent(process.cwd())) as Content;

const marksIn = (text: unknown): string[] =>
  [...JSON.stringify(text ?? '').matchAll(/\{([a-z][a-z0-9-]*)\}/gi)].map(m => m[1] as string);

/** Words that are missing, or hold a mark that nothing fills. */
const gapsIn = (where: string, words: unknown, fills: Fills = {}, names: readonly string[] = []): string[] =>
  words === undefined
    ? [`${where}: no words`]
    : marksIn(words)
        .filter(mark => fills[mark] === undefined && !names.includes(mark))
        .map(mark => `${where}: {${mark}} is not filled`);

const nameOf = (id: string): string => id.split('@')[0] as string;

const figureGaps = (f: Figure): string[] => {
  const words = WORDS.figures[nameOf(f.id)];
  if (words === undefined) return [`figures.${nameOf(f.id)}: no words`];
  return [words.source, f.source ?? words.source]
    .filter(source => WORDS.sources[source] === undefined)
    .map(source => `sources.${source}: no source`);
};

const stepGaps = (step: StepDraft, ids: ReadonlySet<string>): string[] => {
  const where = `steps.${step.stage}.${step.words}`;
  const own = WORDS.steps[step.stage]?.[step.words];
  return [
    ...gapsIn(where, own, step.fills, step.uses.map(nameOf)),
    ...[...step.uses, ...(step.tall ?? [])].filter(id => !ids.has(id)).map(id => `${where}: no figure ${id}`),
    ...(step.asks ?? []).flatMap(a =>
      gapsIn(`${where}.asks.${a.ask}`, own?.asks?.[nameOf(a.ask)], step.fills),
    ),
    ...(step.cautions ?? []).flatMap(id => gapsIn(`cautions.${id}`, WORDS.cautions[id])),
    ...(step.gates ?? []).flatMap(g =>
      gapsIn(`gates.${g.words ?? g.id}`, WORDS.gates[g.words ?? g.id], g.fills),
    ),
    ...(step.items ?? []).flatMap(({ note }) =>
      note === undefined ? [] : gapsIn(note.words, WORDS.says[note.words.replace('says.', '')], note.fills),
    ),
  ];
};

const findingGaps = (f: Finding): string[] => [
  ...gapsIn(`findings.${f.words}`, WORDS.findings[f.words], f.fills),
  ...f.offers.flatMap(o => gapsIn(`remedies.${o.remedy}`, WORDS.remedies[o.remedy], o.fills)),
];

/**
 * What a page emits that has no words, and marks in its words that nothing fills.
 *
 * @param words the steps looked at, where a page holds steps of remedies whose words stand elsewhere
 * @param figures the figures of all pages, where a step uses another page's
 */
export const wordGaps = (
  sheet: SheetDraft,
  words?: readonly string[],
  figures: readonly Figure[] = sheet.figures,
): string[] => {
  const ids = new Set(figures.map(f => f.id));
  const gaps = [
    ...sheet.figures.flatMap(figureGaps),
    ...sheet.steps
      .filter(step => words === undefined || words.includes(step.words))
      .flatMap(step => stepGaps(step, ids)),
    ...sheet.findings.flatMap(findingGaps),
  ];
  return [...new Set(gaps)];
};

/** Two rows of a page of 80 columns. */
const TWO_ROWS = 150;

/** Steps whose title runs past twelve words, or whose words do not fit two rows. */
export const longWords = (
  stage: string,
  keys: readonly string[] = Object.keys(WORDS.steps[stage] ?? {}),
): string[] =>
  keys.flatMap(key => {
    const own = WORDS.steps[stage]?.[key];
    if (own === undefined) return [`${stage}.${key}: no words`];
    return [
      ...(own.title.split(' ').length > 12 ? [`${stage}.${key}.title`] : []),
      ...(['do', 'posture', 'why', 'caution', 'measure'] as const)
        .filter(part => (own[part]?.length ?? 0) > TWO_ROWS)
        .map(part => `${stage}.${key}.${part}: ${own[part]?.length}`),
    ];
  });

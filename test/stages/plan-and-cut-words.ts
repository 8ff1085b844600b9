import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import type { Fills, SheetDraft } from '../../src/stages/sheet.ts';
import { joinFiles } from '../../src/words/join-files.ts';
import { type Content, FILE_SCHEMA } from '../../src/words/schema.ts';

const FILES = ['ride', 'strength', 'stages/plan', 'stages/cut', 'questions', 'problems', 'refusals'];

/** The words of planning and cutting, checked by the schema that the build uses. */
export const WORDS: Content = joinFiles(
  FILES.map(name => ({
    name: `${name}.yaml`,
    content: FILE_SCHEMA.parse(parse(readFileSync(`content/${name}.yaml`, 'utf8'))),
  })),
);

const marksIn = (text: unknown): string[] =>
  [...JSON.stringify(text ?? '').matchAll(/\{([a-z][a-z0-9-]*)\}/gi)].map(m => m[1] as string);

const unfilled = (where: string, text: unknown, fills: Fills, names: readonly string[]): string[] =>
  marksIn(text)
    .filter(mark => fills[mark] === undefined && !names.includes(mark))
    .map(mark => `${where}: {${mark}} is not filled`);

const nameOf = (id: string): string => id.split('@')[0] as string;

/** Everything a page emits for which there are no words, or words with a mark that nothing fills. */
export const wordGaps = (sheet: SheetDraft): string[] => {
  const gaps: string[] = [];
  const ids = new Set(sheet.figures.map(f => f.id));
  for (const f of sheet.figures) {
    const words = WORDS.figures[nameOf(f.id)];
    if (words === undefined) gaps.push(`figures.${nameOf(f.id)}`);
    else if (WORDS.sources[words.source] === undefined) gaps.push(`sources.${words.source}`);
  }
  for (const step of sheet.steps) {
    const where = `steps.${step.stage}.${step.words}`;
    const words = WORDS.steps[step.stage]?.[step.words];
    if (words === undefined) {
      gaps.push(where);
      continue;
    }
    gaps.push(...unfilled(where, words, step.fills ?? {}, step.uses.map(nameOf)));
    for (const use of step.uses) if (!ids.has(use)) gaps.push(`${where}: uses ${use}, which no figure is`);
    for (const tall of step.tall ?? [])
      if (!step.uses.includes(tall)) gaps.push(`${where}: tall ${tall} is not used`);
    for (const ask of step.asks ?? [])
      if (words.asks?.[ask.ask] === undefined) gaps.push(`${where}.asks.${ask.ask}`);
    for (const id of step.cautions ?? []) if (WORDS.cautions[id] === undefined) gaps.push(`cautions.${id}`);
    for (const item of step.items ?? []) {
      if (item.note === undefined) continue;
      const said = WORDS.says[item.note.words.replace('says.', '')];
      if (said === undefined) gaps.push(item.note.words);
      gaps.push(...unfilled(item.note.words, said, item.note.fills ?? {}, []));
    }
  }
  for (const finding of sheet.findings) {
    const where = `findings.${finding.words}`;
    const words = WORDS.findings[finding.words];
    if (words === undefined) gaps.push(where);
    gaps.push(...unfilled(where, words, finding.fills ?? {}, []));
    for (const offer of finding.offers) {
      const deed = WORDS.remedies[offer.remedy];
      if (deed === undefined) gaps.push(`remedies.${offer.remedy}`);
      gaps.push(...unfilled(`remedies.${offer.remedy}`, deed, offer.fills ?? {}, []));
    }
  }
  return gaps;
};

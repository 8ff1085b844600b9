import { compileContent } from '../../src/making/compile-content.ts';
import type { Figure, Fills, SheetDraft } from '../../src/stages/sheet.ts';
import type { Content } from '../../src/words/schema.ts';

/** All words, compiled and checked as the build does it. */
export const WORDS = JSON.parse(compileContent(process.cwd())) as Content;

const marksIn = (text: unknown): string[] =>
  [...JSON.stringify(text ?? '').matchAll(/\{([a-z][a-z0-9-]*)\}/gi)].map(m => m[1] as string);

const unfilled = (where: string, text: unknown, fills: Fills, names: readonly string[] = []): string[] =>
  marksIn(text)
    .filter(mark => fills[mark] === undefined && !names.includes(mark))
    .map(mark => `${where}: {${mark}} is not filled`);

const nameOf = (id: string): string => id.split('@')[0] as string;

/** What a page of one of these stages emits without words, and marks in its words that nothing fills. */
export const wordGaps = (
  sheet: SheetDraft,
  words: readonly string[],
  figures: readonly Figure[],
): string[] => {
  const ids = new Set(figures.map(f => f.id));
  const gaps: string[] = [];
  for (const f of sheet.figures) {
    const own = WORDS.figures[nameOf(f.id)];
    if (own === undefined) gaps.push(`figures.${nameOf(f.id)}`);
    else if (WORDS.sources[own.source] === undefined) gaps.push(`sources.${own.source}`);
  }
  for (const step of sheet.steps) {
    if (!words.includes(step.words)) continue;
    const where = `steps.${step.stage}.${step.words}`;
    const own = WORDS.steps[step.stage]?.[step.words];
    if (own === undefined) {
      gaps.push(where);
      continue;
    }
    gaps.push(...unfilled(where, own, step.fills ?? {}, step.uses.map(nameOf)));
    for (const id of [...step.uses, ...(step.tall ?? [])])
      if (!ids.has(id)) gaps.push(`${where}: no figure ${id}`);
    for (const a of step.asks ?? []) if (own.asks?.[a.ask] === undefined) gaps.push(`${where}.asks.${a.ask}`);
    for (const id of step.cautions ?? []) if (WORDS.cautions[id] === undefined) gaps.push(`cautions.${id}`);
    for (const g of step.gates ?? []) {
      if (WORDS.gates[g.words ?? g.id] === undefined) gaps.push(`gates.${g.words ?? g.id}`);
      gaps.push(...unfilled(`gates.${g.words ?? g.id}`, WORDS.gates[g.words ?? g.id], g.fills ?? {}));
    }
    for (const item of step.items ?? []) {
      if (item.note === undefined) continue;
      const said = WORDS.says[item.note.words.replace('says.', '')];
      if (said === undefined) gaps.push(item.note.words);
      gaps.push(...unfilled(item.note.words, said, item.note.fills ?? {}));
    }
  }
  for (const f of sheet.findings) {
    if (WORDS.findings[f.words] === undefined) gaps.push(`findings.${f.words}`);
    gaps.push(...unfilled(`findings.${f.words}`, WORDS.findings[f.words], f.fills ?? {}));
    for (const o of f.offers) {
      if (WORDS.remedies[o.remedy] === undefined) gaps.push(`remedies.${o.remedy}`);
      gaps.push(...unfilled(`remedies.${o.remedy}`, WORDS.remedies[o.remedy], o.fills ?? {}));
    }
  }
  return [...new Set(gaps)];
};

/** Titles past twelve words, and rows that do not fit two lines of 80 columns. */
export const longWords = (stage: string): string[] =>
  Object.entries(WORDS.steps[stage] ?? {}).flatMap(([key, own]) => [
    ...(own.title.split(' ').length > 12 ? [`${stage}.${key}.title`] : []),
    ...(['do', 'posture', 'why', 'caution', 'measure'] as const)
      .filter(part => (own[part]?.length ?? 0) > 140)
      .map(part => `${stage}.${key}.${part}: ${own[part]?.length}`),
  ]);

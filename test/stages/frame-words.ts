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

const figureGaps = (f: Figure): string[] => {
  const words = WORDS.figures[nameOf(f.id)];
  if (words === undefined) return [`figures.${nameOf(f.id)}`];
  return WORDS.sources[words.source] === undefined ? [`sources.${words.source}`] : [];
};

/** What a page emits that has no words, and marks in its words that nothing fills. Steps of remedies have words elsewhere. */
export const wordGaps = (sheet: SheetDraft, words: readonly string[]): string[] => {
  const ids = new Set(sheet.figures.map(f => f.id));
  return [
    ...sheet.figures.flatMap(figureGaps),
    ...sheet.steps
      .filter(step => words.includes(step.words))
      .flatMap(step => {
        const where = `steps.${step.stage}.${step.words}`;
        const own = WORDS.steps[step.stage]?.[step.words];
        if (own === undefined) return [where];
        return [
          ...unfilled(where, own, step.fills ?? {}, step.uses.map(nameOf)),
          ...[...step.uses, ...(step.tall ?? [])]
            .filter(id => !ids.has(id))
            .map(id => `${where}: no figure ${id}`),
          ...(step.asks ?? [])
            .filter(a => own.asks?.[a.ask.split('@')[0] as string] === undefined)
            .map(a => `${where}.asks.${a.ask}`),
          ...(step.cautions ?? []).filter(id => WORDS.cautions[id] === undefined).map(id => `cautions.${id}`),
          ...(step.gates ?? []).flatMap(g =>
            WORDS.gates[g.words ?? g.id] === undefined
              ? [`gates.${g.words ?? g.id}`]
              : unfilled(`gates.${g.words ?? g.id}`, WORDS.gates[g.words ?? g.id], g.fills ?? {}),
          ),
          ...(step.items ?? []).flatMap(item => {
            if (item.note === undefined) return [];
            const said = WORDS.says[item.note.words.replace('says.', '')];
            return said === undefined
              ? [item.note.words]
              : unfilled(item.note.words, said, item.note.fills ?? {});
          }),
        ];
      }),
    ...sheet.findings.flatMap(f => {
      const own = WORDS.findings[f.words];
      return [
        ...(own === undefined
          ? [`findings.${f.words}`]
          : unfilled(`findings.${f.words}`, own, f.fills ?? {})),
        ...f.offers.flatMap(o =>
          WORDS.remedies[o.remedy] === undefined
            ? [`remedies.${o.remedy}`]
            : unfilled(`remedies.${o.remedy}`, WORDS.remedies[o.remedy], o.fills ?? {}),
        ),
      ];
    }),
  ];
};

/** Steps of a list of words whose title runs past twelve words, or whose rows are too long for 80 columns. */
export const longWords = (stage: string, keys: readonly string[]): string[] =>
  keys.flatMap(key => {
    const own = WORDS.steps[stage]?.[key];
    if (own === undefined) return [`${stage}.${key}: no words`];
    const rows = [own.why, own.caution, own.measure].filter(t => t !== undefined);
    return [
      ...(own.title.split(' ').length > 12 ? [`${stage}.${key}: title`] : []),
      ...rows.filter(t => t.length > 150).map(t => `${stage}.${key}: ${t.length} characters`),
    ];
  });

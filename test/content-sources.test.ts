import { describe, expect, test } from 'vitest';
import { compileContent } from '../src/making/compile-content.ts';
import { type Content, type ContentFile, FILE_SCHEMA } from '../src/words/schema.ts';

const content = JSON.parse(compileContent(process.cwd())) as Content;

const MARKS = ['found', 'memory', 'practice', 'derived'];

/** Every number and table that content/ speaks of, with the source that it names. */
const named = [
  ...Object.entries(content.figures).map(([key, f]) => ({ where: `figures.${key}`, source: f.source })),
  ...Object.entries(content.sections).map(([key, t]) => ({ where: `sections.${key}`, source: t.source })),
];

/** Names of sources that nothing explains. */
const unknown = (list: readonly Readonly<{ where: string; source: string }>[]): string[] =>
  list
    .filter(n => content.sources[n.source] === undefined)
    .map(({ where, source }) => `${where}: no source "${source}"`);

const parsed = (file: ContentFile | object): boolean => FILE_SCHEMA.safeParse(file).success;

describe('where the numbers of content/ come from', () => {
  test('every figure and every table names a source that is told with title and mark', () => {
    expect(named.length).toBeGreaterThan(150);
    expect(unknown(named)).toEqual([]);
    expect(unknown([{ where: 'figures.made-up', source: 'nowhere' }])).toHaveLength(1);
    const untold = Object.entries(content.sources).filter(
      ([, s]) => s.title.trim() === '' || !MARKS.includes(s.mark),
    );
    expect(untold.map(([key]) => key)).toEqual([]);
  });

  test('the build refuses a figure, a table and a source that are told without', () => {
    const figure = { label: 'leg of the bead', why: 'Strength stands on it.' };
    const table = { system: 'metric', shape: 'flat', mm: 1, sizes: [[40, 5]] };
    const source = { title: 'A table in print', mark: 'found' };
    expect(parsed({ figures: { leg: { ...figure, source: 'print' } }, sources: { print: source } })).toBe(
      true,
    );
    expect(parsed({ sections: { flats: { ...table, source: 'print' } } })).toBe(true);
    expect(parsed({ figures: { leg: figure } })).toBe(false);
    expect(parsed({ sections: { flats: table } })).toBe(false);
    expect(parsed({ sources: { print: { title: source.title } } })).toBe(false);
    expect(parsed({ sources: { print: { ...source, mark: 'certain' } } })).toBe(false);
  });
});

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import type { Entry } from '../../src/build/entries.ts';
import { understandEntry } from '../../src/build/versions/understand.ts';
import { compute } from '../../src/coach/compute.ts';
import { asksOf, withAnswer } from '../../src/coach/tasks.ts';
import { type View, viewOf } from '../../src/coach/view.ts';
import { sheetRows } from '../../src/commands/sheet-text.ts';
import { rowText } from '../../src/drawing/cells.ts';
import { readContent } from '../../src/machine/content-file.ts';
import { openJournal } from '../../src/machine/journal-file.ts';
import { STAGES } from '../../src/stages/sheet.ts';
import type { Answers } from '../../src/stages/situation.ts';

const ROOT = join(import.meta.dirname, '../..');
const NOW = Date.parse('2026-11-20T19:00:00Z');

const demo = async (name: string): Promise<View> => {
  const file = openJournal<Entry>(join(ROOT, 'sessions', 'demo', `${name}.jsonl`), {
    format: 'curvewright-build',
    understand: understandEntry,
  });
  if (!file.ok) throw new Error(file.fault.message);
  const { entries } = file.value.reading();
  let answers: Answers = new Map();
  for (let round = 0; round < 4; round++) {
    const asks = asksOf(viewOf(entries, NOW, answers));
    if (asks.length === 0) break;
    for (const ask of asks) answers = withAnswer(answers, ask, await compute(ask));
  }
  return viewOf(entries, NOW, answers);
};

/** Whole pages as prose: a change in a number or a word is read in the diff. `npx vitest run -u test/golden` writes them anew. */
describe.each(['orchard-bank-kicker', 'mill-lane-launch'])('the pages of %s', name => {
  test.each(STAGES)('%s', async stage => {
    const view = await demo(name);
    const rows = sheetRows(
      {
        view,
        voice: { content: readContent(), system: view.build.system },
        look: { columns: 100, rows: 1000, ascii: false },
        disk: { is: 'on disk', at: null },
        message: null,
      },
      stage,
    );
    const text = `${rows.map(r => rowText(r).trimEnd()).join('\n')}\n`;
    expect(text).not.toMatch(
      /undefined|NaN|Infinity|\{[a-z-]+\}|(figures|steps|findings|remedies|gates|cautions)\.[a-z]/,
    );
    await expect(text).toMatchFileSnapshot(join(import.meta.dirname, `${name}.${stage}.golden.txt`));
  });
});

import { drawScene } from '../../drawing/braille.ts';
import { row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import type { Finding } from '../../stages/sheet.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from './frame.ts';
import { findingLines, findingText } from './step-words.ts';

/** How a finding was found: everything it says, and its drawing. */
export const whyFindingRows = (c: PageContext, f: Finding, keys: Row): Row[] => {
  const columns = c.look.columns - 3;
  const text = [
    ...findingLines(c.voice, f),
    findingText(c.voice, f, 'sure') ?? '',
    findingText(c.voice, f, 'not') ?? '',
  ]
    .filter(l => l !== '')
    .flatMap(l => wrap(l, columns))
    .map(l => row(' ', l));
  const room = pageRows(c) - 6 - text.length;
  const drawing =
    f.scene === undefined || room < 4
      ? []
      : drawScene(f.scene, { columns: c.look.columns - 2, rows: room - 1, ascii: c.look.ascii });
  const body = [...text, ...(f.scene === undefined ? [] : [ruleRow(c, f.scene.title)]), ...drawing];
  return page(c, [titleRow(c), stripRow(c.view, f.stage), ruleRow(c, 'how this was found')], body, [
    [],
    echoRow(c),
    keys,
  ]);
};

import type { Keeper } from '../coach/keeper.ts';
import { settleAnswers } from '../coach/tasks.ts';
import { openFindings, sheetOf } from '../coach/view.ts';
import { noLongerAsked } from '../coach/walk.ts';
import { toAscii } from '../drawing/ascii-twin.ts';
import { drawScene } from '../drawing/braille.ts';
import { cellWidth, padTo, row, rowText, wrap } from '../drawing/cells.ts';
import type { Row } from '../drawing/row.ts';
import { SIGNS } from '../drawing/signs.ts';
import { write } from '../quantity/write.ts';
import { readingRows } from '../screen/pages/around-rows.ts';
import type { PageContext } from '../screen/pages/context.ts';
import { offerRow } from '../screen/pages/finding-pages.ts';
import { ruleRow, stripRow, titleRow } from '../screen/pages/frame.ts';
import { figureValue } from '../screen/pages/look-pages.ts';
import { slitStripRows } from '../screen/pages/slit-strip-rows.ts';
import { stateSign } from '../screen/pages/step-rows.ts';
import { findingLines, findingText, lineText, stepText } from '../screen/pages/step-words.ts';
import type { Stage } from '../stages/sheet.ts';
import { say, type Voice } from '../words/say.ts';
import type { World } from './command.ts';

/** Things in rows, none of them broken: a figure that ends on the next row is read wrong. */
const wrapWhole = (things: readonly string[], between: string, width: number): string[] => {
  const lines: string[] = [];
  for (const thing of things) {
    const last = lines.at(-1);
    if (last !== undefined && cellWidth(last + between + thing) <= width)
      lines[lines.length - 1] = last + between + thing;
    else lines.push(thing);
  }
  return lines;
};

/** A stage's whole page as plain text: numbers, steps, findings. */
export const sheetRows = (c: PageContext, stage: Stage): Row[] => {
  const { view, voice } = c;
  const sheet = sheetOf(view, stage);
  const steps = view.steps.filter(s => s.stage === stage);
  const open = openFindings(view);
  const gone = noLongerAsked(view.build, view.sheets).filter(k => k.startsWith(`${stage}/`));
  const width = c.look.columns;
  return [
    titleRow(c),
    stripRow(view, stage),
    ruleRow(c, `${stage}: ${steps.filter(s => s.state === 'done').length} of ${steps.length} steps done`),
    ...drawScene(sheet.scene, { columns: width - 2, rows: 10, ascii: c.look.ascii }),
    ruleRow(c, 'numbers'),
    ...sheet.figures.map(f => {
      const label = say(voice, { words: `figures.${f.id.split('@')[0]}.label` });
      const of = f.id.includes('@') ? ` (${f.id.split('@')[1]})` : '';
      return row(' ', `${padTo(`${label}${of}`, 45)} `, figureValue(c, f), '  ', [
        'quiet',
        f.kind === 'dimension' ? lineText(f.line) : '',
      ]);
    }),
    ruleRow(c, 'steps'),
    ...steps.flatMap((s): Row[] => {
      const state = SIGNS[stateSign(s, s.key === view.next?.key)];
      const items = (s.items ?? []).map(i => {
        const value = i.value === undefined ? '' : write(i.value.v, i.value.as, voice.system);
        const second = i.second === undefined ? '' : ` → ${write(i.second.v, i.second.as, voice.system)}`;
        // A piece may end in a number: 9 and 9/16 must not be read as 9 9/16.
        return value === '' ? i.name : `${i.name}: ${value}${second}`;
      });
      const isNext = s.key === view.next?.key;
      const why = isNext
        ? (['do', 'posture', 'why', 'caution', 'measure'] as const).flatMap(part => {
            const text = stepText(view, voice, s, part);
            return text === null
              ? []
              : wrap(text, width - 14).map((l, i) =>
                  row('    ', ['quiet', padTo(i === 0 ? part : '', 9)], l),
                );
          })
        : [];
      return [
        row(' ', `${state.sign} ${padTo(state.word, 8)}`, stepText(view, voice, s, 'title') ?? s.key),
        ...why,
        ...readingRows(c, s, 62, 0).map(r => row('   ', rowText(r))),
        ...(items.length === 0
          ? []
          : wrapWhole(items, ' · ', width - 6).map(l => row('     ', ['quiet', l]))),
      ];
    }),
    ...(stage === 'cut' ? slitStripRows(c) : []),
    ...gone.map(k => row(' ', ['quiet', `✓ done     ${k}  (done, no longer asked)`])),
    ...(sheet.findings.length === 0 ? [] : [ruleRow(c, 'findings')]),
    ...sheet.findings.flatMap((f): Row[] => [
      row(
        ' ',
        `${SIGNS[f.severity].sign} ${padTo(open.includes(f) ? SIGNS[f.severity].word : 'decided', 8)}`,
        findingText(voice, f, 'title') ?? f.key,
      ),
      ...findingLines(voice, f)
        .flatMap(l => wrap(l, width - 6))
        .map(l => row('     ', l)),
      ...f.offers.map(o =>
        row('    ', rowText(offerRow({ ...c, look: { ...c.look, columns: width - 4 } }, o, false, f.limit))),
      ),
    ]),
  ];
};

export const sheetText = async (keeper: Keeper, stage: Stage, world: World): Promise<string> => {
  const view = await settleAnswers(keeper);
  const voice: Voice = { content: world.content(), system: view.build.system };
  const barred = keeper.open.barred();
  const c: PageContext = {
    view,
    voice,
    look: { columns: Math.max(80, Math.min(120, world.columns)), rows: 1000, ascii: world.ascii },
    disk:
      barred === null
        ? { is: 'on disk', at: view.build.live.at(-1)?.at ?? null }
        : { is: 'read only', why: barred },
    message: null,
  };
  const rows = sheetRows(c, stage);
  const shown = world.ascii ? toAscii(rows, c.look.columns) : rows;
  return `${shown.map(r => rowText(r).trimEnd()).join('\n')}\n`;
};

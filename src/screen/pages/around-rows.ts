import { openFindings } from '../../coach/view.ts';
import { itemSettled, type Step } from '../../coach/walk.ts';
import { cellWidth, cutRow, cutTo, joinSides, padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { SIGNS, type State } from '../../drawing/signs.ts';
import { write } from '../../quantity/write.ts';
import type { PageContext } from './context.ts';
import { deedWithin, stateSign } from './step-rows.ts';
import { askLabel, findingText, readingText, stepText } from './step-words.ts';

/** The repeated things of a step, those around the lit one where not all fit. */
export const itemRows = (c: PageContext, step: Step, item: number, rows: number, columns: number): Row[] => {
  const items = step.items ?? [];
  const word = stepText(c.view, c.voice, step, 'item') ?? '';
  /** Slits and the like: many, alike, in columns, whose unit the page says once. */
  const short = items.every(it => it.second === undefined && it.name.length <= 3);
  const cell = (i: number): string => {
    const it = items[i];
    if (it === undefined) return '';
    const value =
      it.value === undefined
        ? ''
        : write(it.value.v, it.value.as, c.voice.system, { unit: !short, fixed: true });
    const second =
      it.second === undefined
        ? ''
        : ` → ${write(it.second.v, it.second.as, c.voice.system, { unit: true, fixed: true })}`;
    return `${it.name.padStart(3)}  ${padTo(value, 7, 'right')}${second}`;
  };
  const across = short && items.length > rows ? Math.max(1, Math.floor(columns / 19)) : 1;
  const perColumn = Math.ceil(items.length / across);
  const from = across > 1 || items.length <= rows ? 0 : Math.max(0, Math.min(item - 2, items.length - rows));
  return Array.from({ length: Math.min(rows, perColumn) }, (_, r): Row => {
    const parts = Array.from({ length: across }, (_, k) => {
      const i = from + r + k * perColumn;
      const it = items[i];
      if (it === undefined) return [];
      const state: State = itemSettled(c.view.build, it) ? 'done' : i === item ? 'next' : 'to-do';
      const width = across > 1 ? 16 : columns - 4;
      const label =
        across > 1
          ? cell(i)
          : [SIGNS[state].word.padEnd(6), ...(word === '' ? [] : [word]), cell(i).trim()].join(' ');
      return [
        [i === item ? 'lead' : SIGNS[state].role, ` ${SIGNS[state].sign} `] as const,
        [i === item ? 'lead' : 'plain', padTo(label, width)] as const,
      ];
    });
    return row(...parts.flat());
  });
};

/** The window of steps around the lit one, the lit row kept third. */
export const stepListRows = (
  c: PageContext,
  steps: readonly Step[],
  lit: Step | null,
  rows: number,
  columns: number,
): Row[] => {
  const at = Math.max(
    0,
    steps.findIndex(s => s.key === lit?.key),
  );
  const from = Math.max(0, Math.min(at - 2, steps.length - rows));
  return steps.slice(from, from + rows).map(s => {
    const isLit = s.key === lit?.key;
    const state = stateSign(s, isLit);
    const sign = SIGNS[state];
    const whole = stepText(c.view, c.voice, s, 'title') ?? s.key;
    const count = s.items === undefined ? '' : ` ${s.itemsDone}/${s.items.length}`;
    const title = deedWithin(whole, columns - 11 - cellWidth(count));
    return cutRow(
      row(
        ' ',
        [isLit ? 'lead' : sign.role, `${sign.sign} ${padTo(sign.word, 8)}`],
        [isLit ? 'lead' : 'plain', `${title}${count}`],
      ),
      columns,
    );
  });
};

/** What was read in a step, one row each. */
export const readingRows = (c: PageContext, step: Step, columns = 62): Row[] =>
  (step.asks ?? []).map(a => {
    const reading = c.view.build.readings.get(`${step.key}#${a.ask}`);
    const label = askLabel(c.view, c.voice, step, a.ask);
    const sign = SIGNS[reading === undefined ? 'to-do' : 'done'];
    if (reading === undefined) return row(' ', [sign.role, `${sign.sign} `], label);
    const value = readingText(c.view, c.voice, step, a, reading.value);
    const room = Math.max(10, columns - 4 - cellWidth(value));
    return row(' ', [sign.role, `${sign.sign} `], padTo(cutTo(label, room), room + 1), value);
  });

/** Row 21: the worst open finding, or nothing. */
export const worstRow = (c: PageContext): Row => {
  const open = openFindings(c.view);
  const worst = open[0];
  if (worst === undefined) return [];
  const sign = SIGNS[worst.severity];
  // A new one of the same weight must not hide behind the one that stood there.
  const alike = open.filter(f => f.severity === worst.severity).length;
  const said = `${sign.sign} ${sign.word}${alike > 1 ? ` 1 of ${alike}` : ''}`;
  const all = alike > 1 ? `f: all ${alike}` : '';
  const room = c.look.columns - 6 - cellWidth(said) - cellWidth(all);
  return joinSides(
    row(
      ' ',
      [sign.role, said],
      alike > 1 ? '  ' : '    ',
      cutTo(findingText(c.voice, worst, 'title') ?? worst.key, room),
    ),
    row(['quiet', all]),
    c.look.columns - 1,
  );
};

import { openFindings } from '../../coach/view.ts';
import { itemSettled, type Step } from '../../coach/walk.ts';
import { cellWidth, cutAtWord, cutRow, joinSides, padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { SIGNS, type State } from '../../drawing/signs.ts';
import { isInFeet } from '../../quantity/figure-parts.ts';
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
        : write(it.value.v, it.value.as, c.voice.system, {
            unit: !short,
            fixed: true,
            feet: isInFeet(it.value.v, it.value.as, c.voice.system),
          });
    const second =
      it.second === undefined
        ? ''
        : ` → ${write(it.second.v, it.second.as, c.voice.system, { unit: true, fixed: true, feet: isInFeet(it.second.v, it.second.as, c.voice.system) })}`;
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
    const word = state === 'next' && c.view.next?.key !== s.key ? SIGNS['to-do'].word : sign.word;
    return cutRow(
      row(
        ' ',
        [isLit ? 'lead' : sign.role, `${sign.sign} ${padTo(word, 8)}`],
        [isLit ? 'lead' : 'plain', `${title}${count}`],
      ),
      columns,
    );
  });
};

/** What is asked in a step and what was read, each whole where `rows` allow it, else in one row. */
export const readingRows = (c: PageContext, step: Step, columns: number, rows: number): Row[] => {
  const room = columns - 4;
  const asked = (step.asks ?? []).map(a => {
    const reading = c.view.build.readings.get(`${step.key}#${a.ask}`);
    return {
      label: askLabel(c.view, c.voice, step, a.ask),
      value: reading === undefined ? '' : readingText(c.view, c.voice, step, a, reading.value),
      sign: SIGNS[reading === undefined ? 'to-do' : 'done'],
    };
  });
  const whole = asked.map(({ label, value }) => {
    if (cellWidth(label) + 1 + cellWidth(value) <= room)
      return [value === '' ? label : `${padTo(label, room - cellWidth(value))}${value}`];
    return [...wrap(label, room), ...(value === '' ? [] : wrap(value, room - 2).map(l => `  ${l}`))];
  });
  const fits = whole.reduce((n, lines) => n + lines.length, 0) <= rows;
  return asked.flatMap(({ label, value, sign }, i) => {
    // Where there is no room for both, an answer keeps the words of its question that fit beside it.
    const besides = room - 1 - cellWidth(value);
    const short =
      value === ''
        ? cutAtWord(label, room)
        : besides < 10
          ? cutAtWord(`${label}: ${value}`, room)
          : `${padTo(cutAtWord(label, besides), besides + 1)}${value}`;
    const lines = fits ? (whole[i] ?? []) : [short];
    return lines.map((line, n) => row(' ', [sign.role, n === 0 ? `${sign.sign} ` : '  '], line));
  });
};

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
      cutAtWord(findingText(c.voice, worst, 'title') ?? worst.key, room),
    ),
    row(['quiet', all]),
    c.look.columns - 1,
  );
};

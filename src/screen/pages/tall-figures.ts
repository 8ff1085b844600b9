import { cellWidth, padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { tallDigits } from '../../drawing/tall.ts';
import { tall } from '../../quantity/figure-text.ts';
import type { Quantity } from '../../quantity/quantities.ts';
import type { Figure } from '../../stages/sheet.ts';
import { say, type Voice } from '../../words/say.ts';

/** A number shown tall: its digits, its unit, its name, which stand beside it. */
export type TallThing = Readonly<{ digits: string; unit: string; name: string }>;

export const tallValue = (voice: Voice, v: number, as: Quantity, name: string, sign = false): TallThing => {
  const t = tall(v, as, voice.system, { ...(sign ? { sign: true } : {}) });
  return { digits: t.digits, unit: t.unit, name };
};

/** A figure as a tall thing; null while it has no number. */
export const tallFigure = (voice: Voice, figure: Figure): TallThing | null => {
  const v = figure.value;
  const n =
    v.is === 'exact' ? v.v : v.is === 'band' ? v.likely : v.is === 'pending' ? v.meanwhile : undefined;
  if (n === undefined) return null;
  const about = v.is === 'exact' ? '' : 'about ';
  const name = say(voice, { words: `figures.${figure.id.split('@')[0]}.label` });
  return tallValue(voice, n, figure.as, `${about}${name}`);
};

/** Up to three tall things side by side in three rows, each with its name, its unit under it. */
export const tallRows = (things: readonly TallThing[], columns: number, ascii: boolean): Row[] => {
  const rows: [string, string, string] = ['', '', ''];
  for (const thing of things.slice(0, 3)) {
    const digits = tallDigits(thing.digits, ascii);
    const width = cellWidth(digits[0]);
    const start = cellWidth(rows[0]);
    const left = columns - start - width - 4;
    // What does not fit beside the others is left to the plain text of the page.
    if (left < 6 && start > 0) break;
    const share = things.length > 1 ? Math.min(Math.max(6, left), 22) : Math.max(6, left);
    const words = wrapTwo(thing.name, share);
    const beside = [words[0] ?? '', words[1] ?? '', thing.unit];
    const wide = Math.min(share, Math.max(...beside.map(cellWidth)));
    digits.forEach((d, i) => {
      rows[i as 0 | 1 | 2] += `  ${d}  ${padTo(beside[i] ?? '', wide)}`;
    });
  }
  return rows.map(r => row(r));
};

/** A name in at most two lines of a width. */
const wrapTwo = (name: string, width: number): string[] => {
  if (cellWidth(name) <= width) return [name];
  const words = name.split(' ');
  let first = '';
  while (words.length > 0 && cellWidth(`${first} ${words[0]}`.trim()) <= width)
    first = `${first} ${words.shift()}`.trim();
  return [first, words.join(' ').slice(0, width)];
};

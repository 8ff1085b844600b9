import { padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { write } from '../../quantity/write.ts';
import { closingOf } from '../../ramp/cutting/closing.ts';
import type { CutBar } from '../../ramp/cutting/cut-bars.ts';
import type { OrderedSection } from '../../ramp/cutting/order.ts';
import { isSteel } from '../../ramp/cutting/totals.ts';
import type { PageContext } from './context.ts';
import { lengthText, moneyText, pieceWords, sectionText, sourceText } from './order-words.ts';

const SECTION_AT = 5;
const PIECES_AT = 27;
const LEFT_WIDE = 9;
const PRICE_WIDE = 9;

/** Bars with the same pieces in words, one after the other, are one row. */
type Same = Readonly<{
  section: OrderedSection;
  bar: CutBar;
  /** Label of the last of them. */
  last: string;
  count: number;
  words: readonly string[];
}>;

export const sameBars = (c: PageContext, sections: readonly OrderedSection[]): readonly Same[] => {
  const rows: Same[] = [];
  for (const section of sections) {
    for (const bar of section.bars) {
      const words = pieceWords(c.voice, bar);
      const last = rows.at(-1);
      if (
        last?.section === section &&
        last.words.join() === words.join() &&
        sourceText(c.voice, last.bar) === sourceText(c.voice, bar)
      )
        rows[rows.length - 1] = { ...last, last: bar.label, count: last.count + 1 };
      else rows.push({ section, bar, last: bar.label, count: 1, words });
    }
  }
  return rows;
};

export const barRows = (c: PageContext, same: Same): Row[] => {
  const { bar, section, last, count, words } = same;
  const wide = c.look.columns - PIECES_AT - LEFT_WIDE - PRICE_WIDE;
  const kg = write(bar.kg, 'mass', c.voice.system);
  const mass = !isSteel(section) ? '' : count === 1 ? `, ${kg}` : `, ${count} x ${kg}`;
  const nameWide = PIECES_AT - SECTION_AT - 1;
  const names = [
    ...wrap(sectionText(c.voice, section.section), nameWide),
    ...wrap(`${sourceText(c.voice, bar)}${mass}`, nameWide),
  ];
  const price = bar.price === null ? '-' : bar.source.is === 'open' ? '' : moneyText(bar.price * count);
  const left = closingOf(bar, c.voice.system).left_mm;
  const pieces = wrap(words.join(' · '), wide - 1);
  return Array.from({ length: Math.max(names.length, pieces.length) }, (_, i) =>
    row(
      ' ',
      padTo(i === 0 ? (count === 1 ? bar.label : `${bar.label}-${last}`) : '', SECTION_AT - 1),
      [i === 0 ? 'plain' : 'quiet', padTo(names[i] ?? '', PIECES_AT - SECTION_AT)],
      padTo(pieces[i] ?? '', wide),
      padTo(i === 0 ? lengthText(c.voice, left) : '', LEFT_WIDE, 'right'),
      padTo(i === 0 ? price : '', PRICE_WIDE, 'right'),
    ),
  );
};

/** A refused section: the piece that is too long, or what else keeps it from a plan, and what would do. */
export const refusedRows = (c: PageContext, s: OrderedSection): Row[] =>
  s.plan.ok
    ? []
    : wrap(
        `${sectionText(c.voice, s.section)}: ${s.plan.fault.message} Would do: ${s.plan.fault.accepted}.`,
        c.look.columns - 4,
      ).map(l => row(' ', ['attention', l]));

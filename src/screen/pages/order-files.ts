import type { View } from '../../coach/view.ts';
import { wrap } from '../../drawing/cells.ts';
import { write } from '../../quantity/write.ts';
import { leftOfBar } from '../../ramp/cutting/bar-parts.ts';
import type { Cut } from '../../ramp/cutting/lay-bar.ts';
import { isSteel } from '../../ramp/cutting/totals.ts';
import { yardCuts } from '../../ramp/cutting/yard-cuts.ts';
import { pieceName } from '../../stages/piece-name.ts';
import { say, type Voice } from '../../words/say.ts';
import { goodsOf } from './order-goods.ts';
import { orderNotes } from './order-notes.ts';
import { sizeNotes } from './order-rack.ts';
import type { OrderSheet } from './order-sheet.ts';
import { boughtMass, weightLines } from './order-weights.ts';
import {
  barsTitle,
  closeText,
  lengthText,
  mitreText,
  moneyText,
  partNames,
  pieceWords,
  sectionText,
  sourceText,
} from './order-words.ts';

/** Signs a phone and an old printer both have. */
const plain = (text: string): string =>
  text.replaceAll('·', '-').replaceAll('−', '-').replaceAll('→', '->').replaceAll('°', ' deg');

/** A phone held upright shows about so many signs a line. */
const PHONE = 44;

const cutWords = (voice: Voice, c: Cut): string => {
  const mitres = mitreText(voice, c);
  const ends = mitres === null ? '' : ` to ${lengthText(voice, c.piece.short_mm)}, ${mitres}`;
  const note = !c.piece.known
    ? ` (${say(voice, { words: 'says.order-file-held', fills: { room: lengthText(voice, c.to_mm - c.from_mm) } })})`
    : c.piece.when === 'spare'
      ? ` (${say(voice, { words: 'says.order-file-spare' })})`
      : '';
  return `${pieceName(c.piece.need)} ${lengthText(voice, c.piece.long_mm)}${ends}${note}`;
};

/** The order and its cutting list as plain text for a phone: short lines, nothing that needs a column. */
export const orderText = (view: View, voice: Voice, sheet: OrderSheet, day: string): string => {
  const { totals, order } = sheet;
  const out: string[] = [];
  const put = (text: string, indent = ''): void => {
    for (const [i, line] of wrap(plain(text), PHONE - indent.length).entries())
      out.push(`${i === 0 ? indent : indent.replace(/\S/g, ' ')}${line}`);
  };
  const titled = (text: string): void => {
    out.push('');
    put(text.toUpperCase());
  };
  const title = (words: string): void => titled(say(voice, { words }));
  put(say(voice, { words: 'says.order-file-for', fills: { build: view.build.name, day } }));
  put(
    `${totals.bars} ${say(voice, { words: 'says.order-tall-bars' })}, ${write(boughtMass(voice, sheet), 'mass', voice.system)} ${say(voice, { words: 'says.order-tall-mass', fills: { heaviest: write(totals.heaviest_kg, 'mass', voice.system) } })}`,
  );
  if (totals.cost !== null && totals.cost > 0)
    put(`${moneyText(totals.cost)} ${say(voice, { words: 'says.order-tall-cost' })}`);
  titled(barsTitle(voice, sheet));
  for (const s of order.sections) {
    if (!s.plan.ok) put(`${sectionText(voice, s.section)}: ${s.plan.fault.message}`, '! ');
    for (const bar of s.bars) {
      const kg = isSteel(s) ? `, ${write(bar.kg, 'mass', voice.system)}` : '';
      const price =
        bar.price === null || bar.source.is === 'open'
          ? ''
          : `, ${say(voice, { words: 'says.order-file-price', fills: { price: moneyText(bar.price) } })}`;
      put(`${bar.label}. ${sectionText(voice, s.section)} ${sourceText(voice, bar)}${kg}${price}`);
      for (const words of pieceWords(voice, bar)) put(words, '   ');
      put(
        say(voice, {
          words: 'says.cutting-left',
          fills: { left: { v: leftOfBar(s.parts, bar, voice.system), as: 'length' } },
        }),
        '   ',
      );
      const yard = yardCuts(bar, sheet.carry_mm, voice.system);
      if (isSteel(s) && bar.source.is === 'sold' && yard.at_mm.length > 0)
        put(
          say(voice, {
            words: 'says.order-yard-file',
            fills: { at: yard.at_mm.map(v => lengthText(voice, v)).join(', '), ...partNames(bar, yard) },
          }),
          '   ',
        );
    }
  }
  if (order.sections.some(s => s.bars.length > 0)) {
    out.push('');
    for (const note of orderNotes(view, voice, sheet)) put(note, '* ');
  }
  const weights = weightLines(voice, sheet, view.ramp);
  if (weights !== null) {
    title('says.order-weights');
    for (const { kg, name } of weights.lines) put(`${write(kg, 'mass', voice.system)}: ${name}`);
    for (const said of weights.said) put(said);
  }
  title('says.order-rack');
  for (const note of sizeNotes(voice, sheet)) put(note, '! ');
  for (const id of ['wall', 'seam', 'bow', 'zinc', 'pair'])
    put(say(voice, { words: `says.order-rack-${id}` }), '- ');
  title('says.order-with');
  // What has no count is a kit: its reason says what is in it.
  for (const good of goodsOf(view, voice))
    put(`${good.name}: ${good.amount === '' ? good.why : good.amount}`, '[ ] ');
  title('says.order-file-cut');
  put(say(voice, { words: 'says.order-file-leans' }));
  for (const s of order.sections) {
    for (const bar of s.parts) {
      put(`${bar.label}. ${sectionText(voice, s.section)} ${sourceText(voice, bar)}`);
      for (const cut of bar.cuts)
        put(
          `${lengthText(voice, cut.from_mm)} to ${lengthText(voice, cut.to_mm)}: ${cutWords(voice, cut)}`,
          '   ',
        );
      put(closeText(voice, bar), '   ');
    }
  }
  return `${out.join('\n')}\n`;
};

/** A field of a CSV line (RFC 4180); a text that a spreadsheet would take for a sum is set apart. */
const csvField = (value: string | number | null): string => {
  if (value === null) return '';
  if (typeof value === 'number') return String(Math.round(value * 1000) / 1000);
  const safe = /^[=+\-@\t]/.test(value) ? `'${value}` : value;
  return /[",\n\r]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

const HEAD = [
  'row',
  'bar',
  'section',
  'bar_from',
  'bar_mm',
  'kg',
  'price',
  'piece',
  'when',
  'long_mm',
  'short_mm',
  'start_deg',
  'end_deg',
  'start_lean',
  'end_lean',
  'from_mm',
  'to_mm',
  'rolled_over',
  'trim_mm',
  'saw_mm',
  'turned_mm',
  'left_mm',
  'amount',
  'why',
] as const;

type Line = Partial<Record<(typeof HEAD)[number], string | number | null>>;

const degrees = (rad: number): number => (rad * 180) / Math.PI;

/**
 * The order as lines of comma-separated values: one a bar to buy or in the shop, one a part of it as it lies at the saw, one a piece,
 * one a thing to buy with it. Lengths are in mm whatever is shown. Of a part trim + Σ (to − from) + saw − turned + left is its length.
 */
export const orderCsv = (view: View, voice: Voice, sheet: OrderSheet): string => {
  const lines: Line[] = [];
  for (const s of sheet.order.sections) {
    const section = s.section.name;
    for (const bar of s.bars)
      lines.push({
        row: 'bar',
        bar: bar.label,
        section,
        bar_from: bar.source.is === 'sold' ? 'buy' : bar.source.bar.from,
        bar_mm: bar.length_mm,
        kg: bar.kg,
        price: bar.price,
      });
    for (const part of s.parts) {
      lines.push({
        row: 'part',
        bar: part.label,
        section,
        bar_mm: part.length_mm,
        trim_mm: part.trim_mm,
        saw_mm: part.kerfs_mm,
        turned_mm: part.turned_mm,
        left_mm: part.left_mm,
      });
      for (const c of part.cuts)
        lines.push({
          row: 'piece',
          bar: part.label,
          section,
          piece: pieceName(c.piece.need),
          when: c.piece.when,
          long_mm: c.piece.long_mm,
          short_mm: c.piece.short_mm,
          start_deg: degrees(c.start_rad),
          end_deg: degrees(c.end_rad),
          start_lean: c.start_lean,
          end_lean: c.end_lean,
          from_mm: c.from_mm,
          to_mm: c.to_mm,
          rolled_over: c.swung ? 'yes' : 'no',
        });
    }
  }
  for (const g of goodsOf(view, voice))
    lines.push({ row: 'with it', piece: g.name, amount: g.amount, why: g.why });
  return [HEAD.join(','), ...lines.map(l => HEAD.map(h => csvField(l[h] ?? null)).join(','))]
    .map(l => `${l}\r\n`)
    .join('');
};

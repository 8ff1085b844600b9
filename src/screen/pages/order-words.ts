import { asShown } from '../../quantity/as-shown.ts';
import { write } from '../../quantity/write.ts';
import { partName } from '../../ramp/cutting/bar-parts.ts';
import { closingOf } from '../../ramp/cutting/closing.ts';
import type { CutBar } from '../../ramp/cutting/cut-bars.ts';
import type { Cut, Lean } from '../../ramp/cutting/lay-bar.ts';
import type { Needed } from '../../ramp/cutting/needed.ts';
import type { StockSection } from '../../ramp/cutting/stock-section.ts';
import { isSteel } from '../../ramp/cutting/totals.ts';
import type { YardCuts } from '../../ramp/cutting/yard-cuts.ts';
import { pieceName } from '../../stages/piece-name.ts';
import { say, type Voice } from '../../words/say.ts';
import type { OrderSheet } from './order-sheet.ts';

/** A length as a tape has it, without its unit: a column says the unit once. */
export const lengthText = (voice: Voice, v: number): string =>
  write(v, 'length', voice.system, { unit: false, fixed: true });

/** A sum of money as it was typed: nobody knows whose. */
export const moneyText = (v: number): string => v.toFixed(2);

/** What a fraction may be off a caliper's size and still name it, mm. */
const NAMED_BY = 0.01;

/** A thickness as a shop says it: 3 or 2.5 mm; 3/16 and 1/8 in where it is one, else as a caliper has it. */
const thicknessText = (voice: Voice, v: number): string => {
  if (voice.system !== 'us') return String(Math.round(v * 100) / 100);
  const sixteenth = asShown(v, 'length', 'us');
  return Math.abs(sixteenth - v) < NAMED_BY
    ? write(v, 'length', 'us', { unit: false })
    : write(v, 'thickness', 'us', { unit: false });
};

/** A section as a yard is asked for it: sizes in the build's units, never a gauge word. */
export const sectionText = (voice: Voice, s: StockSection): string => {
  const side = (v: number): string => write(v, 'length', voice.system, { unit: false });
  const thin = (v: number): string => thicknessText(voice, v);
  switch (s.kind) {
    case 'tube':
      return `${side(s.depth_mm)} x ${side(s.width_mm)} x ${thin(s.wall_mm)}`;
    case 'flat':
      return `flat ${side(s.width_mm)} x ${thin(s.wall_mm)}`;
    case 'plate':
      return `plate ${side(s.width_mm)} x ${thin(s.wall_mm)}`;
    case 'board':
      return `board ${side(s.width_mm)} x ${side(s.wall_mm)}`;
    case 'sheet':
      return `plywood ${thin(s.wall_mm)}, ${side(s.width_mm)} wide,`;
  }
};

/** What pieces of one kind are called together: "rails", "crossmembers". */
const plural = (kind: Needed['kind']): string => (kind.endsWith('s') ? kind : `${kind}s`);

/** Pieces of one kind and length, one after the other. */
type Alike = Readonly<{ first: Needed; count: number }>;

const alikeIn = (bar: CutBar): readonly Alike[] => {
  const groups: Alike[] = [];
  for (const { piece } of bar.cuts.filter(c => c.piece.known)) {
    const last = groups.at(-1);
    if (last?.first.kind === piece.kind && Math.abs(last.first.long_mm - piece.long_mm) < 0.1)
      groups[groups.length - 1] = { ...last, count: last.count + 1 };
    else groups.push({ first: piece, count: 1 });
  }
  return groups;
};

/** What is cut from a bar in words: alike pieces together, held steel and spares by their length alone. */
export const pieceWords = (voice: Voice, bar: CutBar): readonly string[] => {
  const words = alikeIn(bar).map(({ first, count }) => {
    const long = lengthText(voice, first.long_mm);
    if (count > 1) return `${plural(first.kind)} ${count} x ${long}`;
    if (first.kind === 'spare') return say(voice, { words: 'says.order-over', fills: { long } });
    return `${pieceName(first.need)} ${long}`;
  });
  if (bar.held_mm === 0) return words;
  const count = bar.cuts.filter(c => !c.piece.known).length;
  const held = say(voice, {
    words: 'says.order-held',
    fills: { count, long: lengthText(voice, bar.held_mm) },
  });
  return [...words, held];
};

/** A part that the yard cuts off a bar has a letter behind its number. */
const isPart = (bar: CutBar): boolean => /[a-z]$/.test(bar.label);

/** Where a bar comes from: of which length it is bought, or what lies in the shop. */
export const sourceText = (voice: Voice, bar: CutBar): string => {
  const whole = bar.source.is === 'sold' && !isPart(bar);
  const length = write(bar.length_mm, 'length', voice.system, { feet: whole });
  if (bar.source.is === 'sold')
    return say(voice, { words: `says.order-bar-${whole ? 'sold' : 'part'}`, fills: { length } });
  const opened = bar.source.bar.squared && bar.source.bar.from === 'bought';
  const words = opened ? 'opened' : bar.source.bar.from === 'bought' ? 'bought' : 'offcut';
  return say(voice, { words: `says.order-bar-${words}`, fills: { length } });
};

/** The sum of one bar, in steps of a tape: what it goes into is the bar. */
export const closeText = (voice: Voice, bar: CutBar): string => {
  const sum = closingOf(bar, voice.system);
  const length = (v: number) => lengthText(voice, v);
  return say(voice, {
    words: 'says.cutting-close',
    fills: {
      trim: length(sum.trim_mm),
      pieces: length(sum.pieces_mm),
      saw: length(sum.saw_mm),
      turned: length(sum.turned_mm),
      left: length(sum.left_mm),
      bar: length(bar.length_mm),
    },
  });
};

/** What the list of bars is called: its numbers run on from the steel to what the deck is cut from. */
export const barsTitle = (voice: Voice, { order }: OrderSheet): string => {
  const count = (steel: boolean): number =>
    order.sections.filter(s => isSteel(s) === steel).reduce((sum, s) => sum + s.bars.length, 0);
  return count(false) === 0
    ? say(voice, { words: 'says.order-bars' })
    : say(voice, { words: 'says.order-bars-deck', fills: { steel: count(true), deck: count(false) } });
};

/** What the first and the last part of a bar are called that the yard cuts. */
export const partNames = (bar: CutBar, { at_mm }: YardCuts): Readonly<{ first: string; last: string }> => ({
  first: partName(bar.label, 0),
  last: partName(bar.label, at_mm.length),
});

/** A cut's two ends as they lean in the bar, seen from above with the hook at the left: `|` is square. Null where both are. */
export const mitreText = (voice: Voice, cut: Cut): string | null => {
  const end = (lean: Lean, rad: number): string =>
    lean === '|' ? lean : `${lean}${write(rad, 'angle', voice.system)}`;
  return cut.start_lean === '|' && cut.end_lean === '|'
    ? null
    : `${end(cut.start_lean, cut.start_rad)} ${end(cut.end_lean, cut.end_rad)}`;
};

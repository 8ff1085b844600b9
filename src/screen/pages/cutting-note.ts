import { padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { passFor, type SawReach } from '../../ramp/cutting/bar-saw.ts';
import type { CutBar } from '../../ramp/cutting/cut-bars.ts';
import type { Cut } from '../../ramp/cutting/lay-bar.ts';
import type { Fills } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { mitreText } from './order-words.ts';

/** How a piece's two ends lean, or that both are square. */
export const endsText = (c: PageContext, cut: Cut): string => mitreText(c.voice, cut) ?? 'square';

/** The cut a note is about, in its bar. */
type Lit = Readonly<{ bar: CutBar; cut: Cut }>;

/** What is to be known for the lit cut. */
const noteText = (c: PageContext, { bar, cut }: Lit, reach: SawReach): string => {
  const told = (words: string, fills: Fills = {}): string =>
    say(c.voice, { words: `says.cutting-${words}`, fills });
  if (!cut.piece.known) return told('note-held');
  if (cut.piece.when === 'spare') return told('note-spare');
  const first = cut === bar.cuts[0];
  const trim = { v: bar.trim_mm, as: 'length' } as const;
  const hook = first ? [told(bar.trim_mm > 0 ? 'square' : 'squared', { trim })] : [];
  return [...hook, ...howText(told, c, cut, reach, first)].join(' ');
};

/** How the saw makes a cut: in other ways than one pass where it must, else how its lines lean; a square one goes without saying at first. */
const howText = (
  told: (words: string, fills?: Fills) => string,
  c: PageContext,
  cut: Cut,
  reach: SawReach,
  first: boolean,
): readonly string[] => {
  const ends = endsText(c, cut);
  switch (passFor(reach, cut.piece.across_mm, Math.max(cut.start_rad, cut.end_rad))) {
    case 'too steep':
      return [told('steep', { most: { v: reach.turns_rad ?? 0, as: 'angle' }, ends })];
    case 'too wide':
      return [told('wide', { through: { v: reach.through_mm ?? 0, as: 'length' } })];
    case 'wall by wall':
      return [told('walls')];
    case 'one pass':
      if (mitreText(c.voice, cut) !== null) return [told(cut.swung ? 'swing' : 'leans', { ends })];
      return first ? [] : [told('mark')];
  }
};

/** The note in as many rows as it takes: a sentence broken off here is steel cut wrong. */
export const noteRows = (c: PageContext, l: Lit, reach: SawReach): readonly Row[] =>
  wrap(noteText(c, l, reach), c.look.columns - 2).map(line => row(' ', ['quiet', line]));

/** The caution of the saw in use: a running blade takes a glove, a wheel does not wait. */
export const cautionRows = (c: PageContext, { saw }: SawReach): readonly Row[] =>
  wrap(
    say(c.voice, { words: `says.cutting-${saw === 'band saw' ? 'band' : 'saw'}-caution` }),
    c.look.columns - 11,
  ).map((line, i) => row(' ', ['attention', padTo(i === 0 ? 'Caution' : '', 9)], line));

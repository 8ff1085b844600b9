import type { Row } from '../../drawing/row.ts';
import { isSteel } from '../../ramp/cutting/totals.ts';
import { yardCuts } from '../../ramp/cutting/yard-cuts.ts';
import { soldAs } from '../../reckon/steel/size-tolerance.ts';
import { say, type Voice } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { ruleRow } from './frame.ts';
import type { OrderSheet } from './order-sheet.ts';
import { lengthText, partNames, sectionText } from './order-words.ts';
import { saidRows } from './said-rows.ts';

export const yardRows = (c: PageContext, sheet: OrderSheet): Row[] => {
  const { voice } = c;
  const lines = sheet.order.sections.flatMap(s =>
    s.bars.flatMap(bar => {
      if (!isSteel(s) || bar.source.is === 'open') return [];
      const yard = yardCuts(bar, sheet.carry_mm, voice.system);
      if (yard.at_mm.length === 0) return [];
      return [
        say(voice, {
          words: yard.wander_mm >= 3 ? 'says.order-yard-bar' : 'says.order-yard-tight',
          fills: {
            bar: bar.label,
            ...partNames(bar, yard),
            section: sectionText(voice, s.section),
            at: yard.at_mm.map(v => lengthText(voice, v)).join(', '),
            wander: { v: yard.wander_mm, as: 'length' },
          },
        }),
      ];
    }),
  );
  return lines.length === 0
    ? []
    : [
        ruleRow(
          c,
          say(voice, { words: 'says.order-yard' }),
          say(voice, {
            words: 'says.order-yard-carry',
            fills: { carry: { v: sheet.carry_mm, as: 'length' } },
          }),
        ),
        ...lines.flatMap(l => saidRows(c, l)),
      ];
};

const RACK = ['wall', 'seam', 'bow', 'zinc', 'pair'] as const;

/** Tube that no yard lists as it was typed: what to ask for where a caliper was read, or that few yards keep it. */
export const sizeNotes = (voice: Voice, sheet: OrderSheet): readonly string[] => {
  const listed = Object.values(voice.content.sections)
    .filter(list => list.system === voice.system && list.shape.endsWith('tube'))
    .flatMap(list =>
      list.sizes.map(([depth = 0, width = 0, wall = 0]) => ({
        depth_mm: depth * list.mm,
        width_mm: width * list.mm,
        wall_mm: wall * list.mm,
      })),
    );
  return sheet.order.sections.flatMap(({ section }) => {
    if (section.kind !== 'tube') return [];
    const sold = soldAs(section, listed);
    if (sold === null)
      return [say(voice, { words: 'says.order-unusual', fills: { section: sectionText(voice, section) } })];
    const asked = sectionText(voice, { ...section, ...sold });
    return asked === sectionText(voice, section)
      ? []
      : [
          say(voice, {
            words: 'says.order-sold-as',
            fills: { section: sectionText(voice, section), sold: asked },
          }),
        ];
  });
};

/** What to check before the bars are loaded; and a section that a yard may not have. */
export const rackRows = (c: PageContext, sheet: OrderSheet): Row[] => [
  ruleRow(c, say(c.voice, { words: 'says.order-rack' })),
  ...sizeNotes(c.voice, sheet).flatMap(note => saidRows(c, note, '◇ ')),
  ...RACK.flatMap(id => saidRows(c, say(c.voice, { words: `says.order-rack-${id}` }), '· ')),
];

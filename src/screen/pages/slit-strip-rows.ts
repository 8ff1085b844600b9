import { padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import type { Quantity } from '../../quantity/quantities.ts';
import { write } from '../../quantity/write.ts';
import type { RailName } from '../../ramp/design.ts';
import { type SlitMarks, slitMarks } from '../../stages/cut/slit-marks.ts';
import type { Fills } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { ruleRow } from './frame.ts';

const SLIT = 4;
const VALUE = 13;

/** One rail's marks, a slit a row, with what stays uncut above them and the check below: what is hung beside the rail. */
const stripRows = (c: PageContext, m: SlitMarks): readonly Row[] => {
  const { voice } = c;
  // A disc takes one wall at a time; only a blade or a wheel goes down through all three.
  const byDisc = c.view.ramp.design.cutter.kind === 'thin disc';
  const first = m.slits[0]?.number ?? 1;
  const last = m.slits.at(-1)?.number ?? 1;
  const value = (v: number, as: Quantity): string =>
    padTo(write(v, as, voice.system, { fixed: true }), VALUE, 'right');
  const told = (words: string, fills: Fills = {}): Row[] =>
    wrap(say(voice, { words: `says.strip-${words}`, fills }), c.look.columns - 3).map(l => row(' ', l));
  return [
    ruleRow(c, say(voice, { words: 'says.strip-title', fills: { rail: m.rail, hand: m.hand } })),
    ...told(`hand-${m.hand.toLowerCase()}`),
    ...told(byDisc ? 'uncut-disc' : 'uncut', {
      stop: { v: m.stop_mm, as: 'length' },
      down: { v: m.down_mm, as: 'length' },
    }),
    row([
      'quiet',
      ` ${padTo('slit', SLIT, 'right')}${['mark at', 'closes', 'then gap', byDisc ? 'sides down' : 'saw down'].map(head => padTo(head, VALUE, 'right')).join('')}   third`,
    ]),
    ...m.slits.map(slit =>
      row(
        ` ${padTo(String(slit.number), SLIT, 'right')}`,
        ['lead', value(slit.at_mm, 'slit')],
        padTo(write(slit.close_rad, 'angle', voice.system, { step: 0.01, fixed: true }), VALUE, 'right'),
        value(slit.gap_mm, 'thickness'),
        value(m.down_mm, 'length'),
        ['quiet', `   ${slit.third}${slit.marked === null ? '' : ' marked'}`],
      ),
    ),
    ...told('check', {
      first,
      last,
      span: { v: m.firstToLast_mm, as: 'slit' },
      from: { v: m.slits[0]?.at_mm ?? 0, as: 'slit' },
      'to-lip': { v: m.lastToLip_mm, as: 'slit' },
      spare: { v: m.lipToEnd_mm, as: 'slit' },
      // In inches all through, like the marks it is the sum of.
      blank: { v: m.blank_mm, as: 'slit' },
    }),
    ...(m.slits.every(slit => slit.marked !== null) ? [] : told('thirds')),
  ];
};

/** The strips of some rails, or of all. */
export const slitStripRows = (
  c: PageContext,
  rails: readonly RailName[] = c.view.ramp.rails,
): readonly Row[] =>
  rails.flatMap(rail => {
    const marks = slitMarks(c.view, rail);
    return marks === null ? [] : stripRows(c, marks);
  });

import { sawReach } from '../../build/bar-saw.ts';
import { shopReach } from '../../build/shop/shop.ts';
import { openFindings, type View } from '../../coach/view.ts';
import { asShown } from '../../quantity/as-shown.ts';
import { passFor, type SawReach } from '../../ramp/cutting/bar-saw.ts';
import { SHEET } from '../../ramp/cutting/deck-wanted.ts';
import type { Order } from '../../ramp/cutting/order.ts';
import { say, type Voice } from '../../words/say.ts';
import type { OrderSheet } from './order-sheet.ts';

/** Ends that the saw does not turn to. */
const steepEnds = (order: Order, reach: SawReach): number =>
  order.sections
    .flatMap(s => s.bars.flatMap(b => b.cuts))
    .flatMap(cut => [cut.start_rad, cut.end_rad].map(angle => passFor(reach, cut.piece.across_mm, angle)))
    .filter(pass => pass === 'too steep').length;

/** Rails that something is still to be done about before anything is cut to them. */
const unsettled = (view: View): string =>
  view.ramp.rails
    .filter(rail =>
      openFindings(view).some(
        f => f.severity !== 'watch' && f.key.startsWith('rail') && f.key.split('#')[0]?.endsWith(`@${rail}`),
      ),
    )
    .join(', ');

/** What is said under the bars: a rail not settled, steel held back, the spare, mitres turned, ends that the saw does not turn to. */
export const orderNotes = (view: View, voice: Voice, sheet: OrderSheet): readonly string[] => {
  const { build } = view;
  const { totals, order } = sheet;
  const length = (v: number) => ({ v, as: 'length' }) as const;
  const notes: string[] = [];
  const rails = unsettled(view);
  if (rails !== '') notes.push(say(voice, { words: 'says.order-unsettled-note', fills: { rails } }));
  const pieces = order.sections.flatMap(s => s.bars.flatMap(b => b.cuts.map(cut => cut.piece)));
  const held = pieces.filter(p => !p.known);
  if (totals.held.high_mm > 0)
    notes.push(
      say(voice, {
        words: 'says.order-held-note',
        fills: {
          held: length(
            order.sections
              .flatMap(o => o.bars)
              .reduce((sum, b) => sum + asShown(b.held_mm, 'length', voice.system), 0),
          ),
          over: length(Math.max(...held.map(p => p.over_mm))),
        },
      }),
    );
  if (pieces.some(p => p.kind === 'spare rail')) notes.push(say(voice, { words: 'says.order-spare-note' }));
  const saved = order.sections.flatMap(s => s.bars).reduce((sum, b) => sum + b.saved_mm, 0);
  if (saved >= 1)
    notes.push(say(voice, { words: 'says.order-turned-note', fills: { saved: length(saved) } }));
  const reach = sawReach(build) ?? (sheet.shop.barSaw === null ? null : shopReach(sheet.shop));
  const steep = reach === null ? 0 : steepEnds(order, reach);
  if (steep > 0)
    notes.push(
      say(voice, {
        words: 'says.order-steep-note',
        fills: { count: steep, most: { v: reach?.turns_rad ?? 0, as: 'angle' } },
      }),
    );
  const { deck, width, system } = view.ramp.design;
  const across = width / Math.ceil(width / SHEET[system].wide - 1e-9);
  if (deck.kind === 'sheet' && SHEET[system].wide - across > 1)
    notes.push(say(voice, { words: 'says.order-rip-note', fills: { wide: length(across) } }));
  return notes;
};

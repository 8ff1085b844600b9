import { padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { asShown } from '../../quantity/as-shown.ts';
import { write } from '../../quantity/write.ts';
import { isSteel, toBuy } from '../../ramp/cutting/totals.ts';
import { weigh } from '../../ramp/cutting/weigh.ts';
import { memberMass } from '../../ramp/mass.ts';
import { pieceName } from '../../stages/piece-name.ts';
import { ONE_LIFTS_kg } from '../../stages/plan/place.ts';
import { say, type Voice } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { ruleRow } from './frame.ts';
import type { OrderSheet } from './order-sheet.ts';
import { saidRows } from './said-rows.ts';

/** Mass of the steel to buy as the rows show it, so that whoever adds them up comes to the same, kg. */
export const boughtMass = (voice: Voice, sheet: OrderSheet): number =>
  sheet.order.sections
    .filter(isSteel)
    .flatMap(toBuy)
    .reduce((sum, b) => sum + asShown(b.kg, 'mass', voice.system), 0);

/** Pieces beside the frame that are more than one person's lift. */
const heavyPlates = (ramp: Parameters<typeof weigh>[0]) =>
  ramp.entry.pieces.filter(m => memberMass(m) > ONE_LIFTS_kg);

/** The masses that stand on other pages, and what of the bars is none of them: one under the other, as a sum. Null once steel is sawn. */
export const weightLines = (
  voice: Voice,
  sheet: OrderSheet,
  ramp: Parameters<typeof weigh>[0],
): Readonly<{ lines: readonly Readonly<{ kg: number; name: string }>[]; said: readonly string[] }> | null => {
  const w = weigh(ramp, sheet.order);
  if (w === null) return null;
  const shown = (kg: number): number => asShown(kg, 'mass', voice.system);
  const [frame, entry, spare, deck] = [w.frame_kg, w.entry_kg, w.spare_kg, w.deck_kg].map(shown) as [
    number,
    number,
    number,
    number,
  ];
  const bars = sheet.order.sections
    .filter(isSteel)
    .flatMap(s => s.bars)
    .reduce((sum, b) => sum + shown(b.kg), 0);
  const line = (name: string, kg: number) => ({
    kg,
    name: say(voice, { words: `says.order-weight-${name}` }),
  });
  const mass = (v: number) => ({ v, as: 'mass' }) as const;
  return {
    lines: [
      line('frame', frame),
      line('entry', entry),
      line('spare', spare),
      line('rest', bars - frame - entry - spare),
      line('bars', bars),
    ],
    said: [
      say(voice, {
        words: 'says.order-weight-ready',
        fills: { frame: mass(frame), entry: mass(entry), deck: mass(deck), all: mass(frame + entry + deck) },
      }),
      ...heavyPlates(ramp).map(m =>
        say(voice, {
          words: 'says.order-weight-heavy',
          fills: { piece: pieceName(m.need), heavy: mass(memberMass(m)), one: mass(ONE_LIFTS_kg) },
        }),
      ),
    ],
  };
};

const MASS_WIDE = 11;

/** What of the bars is frame, entry, spare and rest; and what stands there in the end. */
export const weightRows = (c: PageContext, sheet: OrderSheet): Row[] => {
  const weights = weightLines(c.voice, sheet, c.view.ramp);
  if (weights === null) return [];
  return [
    ruleRow(c, say(c.voice, { words: 'says.order-weights' })),
    ...weights.lines.map(({ kg, name }, i) =>
      row(' ', padTo(write(kg, 'mass', c.voice.system), MASS_WIDE, 'right'), '  ', [
        i === weights.lines.length - 1 ? 'plain' : 'quiet',
        name,
      ]),
    ),
    ...weights.said.flatMap(said => saidRows(c, said)),
  ];
};

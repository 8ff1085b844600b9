import { joinSides, padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { tall } from '../../quantity/figure-text.ts';
import { write } from '../../quantity/write.ts';
import { STOCK_ROUNDS } from '../../stages/heavy/stock-answer.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from './frame.ts';
import { barRows, refusedRows, sameBars } from './order-bars.ts';
import { goodsOf } from './order-goods.ts';
import { orderNotes } from './order-notes.ts';
import { rackRows, yardRows } from './order-rack.ts';
import type { OrderSheet } from './order-sheet.ts';
import { boughtMass, weightRows } from './order-weights.ts';
import { barsTitle, moneyText, sectionText } from './order-words.ts';
import { saidRows } from './said-rows.ts';
import { type TallThing, tallRows } from './tall-figures.ts';

/** Notes under the bars. */
const noteRows = (c: PageContext, sheet: OrderSheet): Row[] =>
  orderNotes(c.view, c.voice, sheet).flatMap(n => saidRows(c, n, '* '));

const NAME_WIDE = 21;
const AMOUNT_WIDE = 15;

/** What goes with the steel: its name and its amount in as many rows as they take, the reason beside them. */
const goodRows = (c: PageContext): Row[] =>
  goodsOf(c.view, c.voice).flatMap(g => {
    const names = wrap(g.name, NAME_WIDE);
    const amounts = wrap(g.amount, AMOUNT_WIDE);
    const why = wrap(g.why, c.look.columns - NAME_WIDE - AMOUNT_WIDE - 6);
    const sign = g.done === true ? '✓ ' : '· ';
    return Array.from({ length: Math.max(names.length, amounts.length, why.length) }, (_, i) =>
      row(
        ' ',
        [g.done === true ? 'settled' : 'quiet', i === 0 ? sign : '  '],
        padTo(names[i] ?? '', NAME_WIDE + 1),
        padTo(amounts[i] ?? '', AMOUNT_WIDE + 1),
        ['quiet', why[i] ?? ''],
      ),
    );
  });

/** The whole sheet below its tall figures, for rolling, for the page printed whole, and for tests. */
export const orderRows = (c: PageContext, sheet: OrderSheet): Row[] => {
  const { order } = sheet;
  return [
    ruleRow(c, barsTitle(c.voice, sheet), say(c.voice, { words: 'says.order-columns' })),
    ...order.sections.flatMap(s => refusedRows(c, s)),
    ...sameBars(c, order.sections).flatMap(same => barRows(c, same)),
    ...noteRows(c, sheet),
    ...weightRows(c, sheet),
    ...yardRows(c, sheet),
    ...rackRows(c, sheet),
    ruleRow(
      c,
      say(c.voice, { words: 'says.order-with' }),
      say(c.voice, { words: 'says.order-with-columns' }),
    ),
    ...goodRows(c),
  ];
};

/** Up to three tall figures: bars to buy, or there when none are left to buy; kilograms; and the sum where prices are known. */
export const orderTall = (c: PageContext, sheet: OrderSheet): readonly TallThing[] => {
  const { voice } = c;
  const { totals } = sheet;
  const done = totals.bars === 0;
  const steel = done ? totals.there : totals;
  const mass = tall(done ? steel.kg : boughtMass(voice, sheet), 'mass', voice.system, { step: 1 });
  const heaviest = write(steel.heaviest_kg, 'mass', voice.system, { step: 1 });
  return [
    {
      digits: String(steel.bars),
      unit: '',
      name: say(voice, { words: done ? 'says.order-tall-there' : 'says.order-tall-bars' }),
    },
    { ...mass, name: say(voice, { words: 'says.order-tall-mass', fills: { heaviest } }) },
    ...(totals.cost === null || totals.cost === 0
      ? []
      : [
          {
            digits: moneyText(totals.cost),
            unit: '',
            name: say(voice, { words: 'says.order-tall-cost' }),
          },
        ]),
  ];
};

const day = (iso: string | null): string => (iso ?? '').slice(0, 10);

/** Row 3, right: how good the plan is, or how far its search has come; and whose prices. */
export const stateText = (c: PageContext, sheet: OrderSheet, ended: boolean): string => {
  const plans = sheet.order.sections.map(s => s.plan);
  const proven = plans.every(p => !p.ok || p.value.proven);
  const prices =
    sheet.totals.cost === null || sheet.shop.pricedAt === null
      ? say(c.voice, { words: 'says.order-no-prices' })
      : say(c.voice, { words: 'says.order-priced', fills: { day: day(sheet.shop.pricedAt) } });
  if (proven) return `${say(c.voice, { words: 'says.order-proven' })} · ${prices}`;
  if (sheet.asks.length === 0 || ended) return `${say(c.voice, { words: 'says.order-good' })} · ${prices}`;
  const round = Math.min(...sheet.known.flatMap(k => (k === null || k.next === null ? [] : [k.rounds]))) + 1;
  return say(c.voice, { words: 'says.order-searching', fills: { round, rounds: STOCK_ROUNDS } });
};

/** While the exact search runs: how many bars stand, how few there could be, and the key that ends it. */
const searchRow = (c: PageContext, sheet: OrderSheet, ended: boolean): Row => {
  const at = sheet.known.findIndex(k => k !== null && k.next !== null);
  const section = sheet.order.sections[at];
  const known = sheet.known[at];
  if (ended || section === undefined || known == null || !section.plan.ok) return [];
  const { lower_bound, price } = section.plan.value;
  const over = lower_bound > 0 ? ((price ?? lower_bound) - lower_bound) / lower_bound : 0;
  return row(' ', [
    'quiet',
    say(c.voice, {
      words: known.rounds === 0 ? 'says.order-search-first' : 'says.order-search',
      fills: {
        section: sectionText(c.voice, section.section),
        bars: section.plan.value.bar_count,
        over: { v: 100 * over, as: 'percent' },
      },
    }),
  ]);
};

const HEAD_ROWS = 8;
const FOOT_ROWS = 3;

const roomOf = (c: PageContext): number => Math.max(1, pageRows(c) - HEAD_ROWS - FOOT_ROWS);

/** The last row a page can begin with. */
export const lastStart = (c: PageContext, sheet: OrderSheet): number =>
  Math.max(0, orderRows(c, sheet).length - roomOf(c));

export const orderPage = (
  c: PageContext,
  sheet: OrderSheet,
  stage: Stage,
  from: number,
  keys: Row,
  ended: boolean,
): Row[] => {
  const rows = orderRows(c, sheet);
  const room = roomOf(c);
  const at = Math.max(0, Math.min(from, rows.length - room));
  const more =
    rows.length > room ? `rows ${at + 1} to ${Math.min(rows.length, at + room)} of ${rows.length}` : '';
  const done = sheet.totals.bars === 0;
  const tag = row(
    ' ',
    [done ? 'settled' : 'lead', done ? '✓ ' : '▸ '],
    ['lead', say(c.voice, { words: done ? 'says.order-all-there' : 'says.order-take' })],
  );
  return page(
    c,
    [
      titleRow(c),
      stripRow(c.view, stage),
      ruleRow(c, say(c.voice, { words: 'says.order-title' }), stateText(c, sheet, ended)),
      joinSides(tag, row(['quiet', more]), c.look.columns - 1),
      ...tallRows(orderTall(c, sheet), c.look.columns, c.look.ascii),
      searchRow(c, sheet, ended),
    ],
    rows.slice(at, at + room),
    [[], echoRow(c), keys],
  );
};

import { cutTo, joinSides, padTo, row, wrap } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { tall } from '../../quantity/figure-text.ts';
import { write } from '../../quantity/write.ts';
import type { CutBar } from '../../ramp/cutting/cut-bars.ts';
import type { OrderedSection } from '../../ramp/cutting/order.ts';
import { isSteel } from '../../ramp/cutting/totals.ts';
import { yardCuts } from '../../ramp/cutting/yard-cuts.ts';
import { soldAs } from '../../reckon/steel/size-tolerance.ts';
import { STOCK_ROUNDS } from '../../stages/heavy/stock-answer.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from './frame.ts';
import { goodsOf } from './order-goods.ts';
import type { OrderSheet } from './order-sheet.ts';
import { lengthText, moneyText, pieceWords, sectionText, sourceText } from './order-words.ts';
import { type TallThing, tallRows } from './tall-figures.ts';

const SECTION_AT = 5;
const PIECES_AT = 27;
const LEFT_WIDE = 9;
const PRICE_WIDE = 9;

/** Bars with the same pieces in words, one after the other, are one row. */
type Same = Readonly<{
  section: OrderedSection;
  bar: CutBar;
  from: number;
  to: number;
  words: readonly string[];
}>;

const sameBars = (c: PageContext, sections: readonly OrderedSection[]): readonly Same[] => {
  const rows: Same[] = [];
  let number = 0;
  for (const section of sections) {
    for (const bar of section.bars) {
      number++;
      const words = pieceWords(c.voice, bar);
      const last = rows.at(-1);
      if (
        last?.section === section &&
        last.words.join() === words.join() &&
        sourceText(c.voice, last.bar) === sourceText(c.voice, bar)
      )
        rows[rows.length - 1] = { ...last, to: number };
      else rows.push({ section, bar, from: number, to: number, words });
    }
  }
  return rows;
};

const barRows = (c: PageContext, same: Same): Row[] => {
  const { bar, section, from, to, words } = same;
  const wide = c.look.columns - PIECES_AT - LEFT_WIDE - PRICE_WIDE;
  const price =
    bar.price === null ? '-' : bar.source.is === 'open' ? '' : moneyText(bar.price * (to - from + 1));
  const names = [sectionText(c.voice, section.section), sourceText(c.voice, bar)];
  const pieces = wrap(words.join(' · '), wide - 1);
  return Array.from({ length: Math.max(names.length, pieces.length) }, (_, i) =>
    row(
      ' ',
      padTo(i === 0 ? (from === to ? String(from) : `${from}-${to}`) : '', SECTION_AT - 1),
      [
        i === 0 ? 'plain' : 'quiet',
        padTo(cutTo(names[i] ?? '', PIECES_AT - SECTION_AT - 1), PIECES_AT - SECTION_AT),
      ],
      padTo(pieces[i] ?? '', wide),
      padTo(i === 0 ? lengthText(c.voice, bar.left_mm) : '', LEFT_WIDE, 'right'),
      padTo(i === 0 ? price : '', PRICE_WIDE, 'right'),
    ),
  );
};

/** A refused section: the piece that is too long, or what else keeps it from a plan, and what would do. */
const refusedRows = (c: PageContext, s: OrderedSection): Row[] =>
  s.plan.ok
    ? []
    : wrap(
        `${sectionText(c.voice, s.section)}: ${s.plan.fault.message} Would do: ${s.plan.fault.accepted}.`,
        c.look.columns - 4,
      ).map(l => row(' ', ['attention', l]));

const saidRows = (c: PageContext, text: string, mark = '  '): Row[] =>
  wrap(text, c.look.columns - 5).map((l, i) => row(' ', ['quiet', i === 0 ? mark : '  '], l));

/** Notes under the bars: what is held back, the spare, mitres turned, and cuts for the way home. */
const noteRows = (c: PageContext, sheet: OrderSheet): Row[] => {
  const { voice } = c;
  const { totals, order } = sheet;
  const length = (v: number) => ({ v, as: 'length' }) as const;
  const notes: string[] = [];
  if (totals.held.high_mm > 0)
    notes.push(
      say(voice, {
        words: 'says.order-held-note',
        fills: {
          low: { v: totals.held.low_mm / 1000, as: 'distance' },
          high: { v: totals.held.high_mm / 1000, as: 'distance' },
        },
      }),
    );
  const pieces = order.sections.flatMap(s => s.bars.flatMap(b => b.cuts.map(cut => cut.piece)));
  if (pieces.some(p => p.kind === 'spare rail')) notes.push(say(voice, { words: 'says.order-spare-note' }));
  const saved = order.sections.flatMap(s => s.bars).reduce((sum, b) => sum + b.saved_mm, 0);
  if (saved >= 1)
    notes.push(say(voice, { words: 'says.order-turned-note', fills: { saved: length(saved) } }));
  return notes.flatMap(n => saidRows(c, n, '* '));
};

const yardRows = (c: PageContext, sheet: OrderSheet): Row[] => {
  const { voice } = c;
  let number = 0;
  const lines = sheet.order.sections.flatMap(s =>
    s.bars.flatMap(bar => {
      number++;
      if (!isSteel(s) || bar.source.is === 'open') return [];
      const yard = yardCuts(bar, sheet.carry_mm);
      if (yard.at_mm.length === 0) return [];
      return [
        say(voice, {
          words: yard.wander_mm >= 3 ? 'says.order-yard-bar' : 'says.order-yard-tight',
          fills: {
            bar: number,
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
const sizeNotes = (c: PageContext, sheet: OrderSheet): readonly string[] => {
  const { voice } = c;
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
const rackRows = (c: PageContext, sheet: OrderSheet): Row[] => [
  ruleRow(c, say(c.voice, { words: 'says.order-rack' })),
  ...sizeNotes(c, sheet).flatMap(note => saidRows(c, note, '◇ ')),
  ...RACK.flatMap(id => saidRows(c, say(c.voice, { words: `says.order-rack-${id}` }), '· ')),
];

const goodRows = (c: PageContext): Row[] =>
  goodsOf(c.view, c.voice).flatMap(g => {
    const why = wrap(g.why, c.look.columns - 42);
    return why.map((line, i) =>
      row(
        ' ',
        [g.done === true ? 'settled' : 'quiet', i === 0 ? (g.done === true ? '✓ ' : '· ') : '  '],
        padTo(i === 0 ? cutTo(g.name, 21) : '', 22),
        padTo(i === 0 ? g.amount : '', 15),
        ' ',
        ['quiet', line],
      ),
    );
  });

/** The whole sheet below its tall figures, for rolling, for the page printed whole, and for tests. */
export const orderRows = (c: PageContext, sheet: OrderSheet): Row[] => {
  const { order } = sheet;
  return [
    ruleRow(c, say(c.voice, { words: 'says.order-bars' }), say(c.voice, { words: 'says.order-columns' })),
    ...order.sections.flatMap(s => refusedRows(c, s)),
    ...sameBars(c, order.sections).flatMap(same => barRows(c, same)),
    ...noteRows(c, sheet),
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
  const mass = tall(steel.kg, 'mass', voice.system, { step: 1 });
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
            digits: String(Math.ceil(totals.cost - 1e-9)),
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

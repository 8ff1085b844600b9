import { sawReach } from '../../build/bar-saw.ts';
import { shopReach } from '../../build/shop/shop.ts';
import { cutTo, joinSides, padTo, row } from '../../drawing/cells.ts';
import type { Row } from '../../drawing/row.ts';
import { tall } from '../../quantity/figure-text.ts';
import type { CutBar } from '../../ramp/cutting/cut-bars.ts';
import type { Cut } from '../../ramp/cutting/lay-bar.ts';
import type { Sawn } from '../../ramp/cutting/needed.ts';
import type { OrderedSection } from '../../ramp/cutting/order.ts';
import { handOf } from '../../stages/cut/slit-marks.ts';
import { pieceName } from '../../stages/piece-name.ts';
import type { Stage } from '../../stages/sheet.ts';
import { say } from '../../words/say.ts';
import type { PageContext } from './context.ts';
import { cautionRows, endsText, noteRows } from './cutting-note.ts';
import { echoRow, page, pageRows, ruleRow, stripRow, titleRow } from './frame.ts';
import type { OrderSheet } from './order-sheet.ts';
import { closeText, lengthText, sectionText, sourceText } from './order-words.ts';
import { type TallThing, tallRows } from './tall-figures.ts';

/** One cut of the order, with the bar, or the part of one, that it is made from. */
export type ListedCut = Readonly<{ section: OrderedSection; bar: CutBar; cut: Cut }>;

/** Every cut of an order in the order of the saw. */
export const listedCuts = (sheet: OrderSheet): readonly ListedCut[] =>
  sheet.order.sections.flatMap(section =>
    section.parts.flatMap(bar => bar.cuts.map(cut => ({ section, bar, cut }))),
  );

/** What has been sawn off a bar that lies in the shop already. */
const sawnOff = (l: ListedCut): readonly Sawn[] => {
  const { source } = l.bar;
  return source.is === 'sold' ? [] : (l.section.worked.find(w => w.id === source.bar.id)?.sawn ?? []);
};

const isSawnNow = (c: Cut): boolean => c.piece.known && c.piece.when !== 'spare';

/** The first cut that can be made now; the first of all where none can. */
export const firstOpenCut = (cuts: readonly ListedCut[]): number =>
  Math.max(
    0,
    cuts.findIndex(l => isSawnNow(l.cut)),
  );

/** What is chalked on a piece before it leaves the saw; a rail says its hand as well. */
const label = (c: PageContext, cut: Cut): string => {
  const { kind, rail } = cut.piece;
  const hand = kind !== 'curved rail' || rail === undefined ? '' : ` ${handOf(c.view.ramp.rails, rail)}`;
  return `${pieceName(cut.piece.need)}${hand}`.toUpperCase();
};

/** A length of the list as the list below has it: in inches alone, for marks are counted along one tape. */
const markTall = (c: PageContext, v: number, words: string): TallThing => ({
  ...tall(v, 'length', c.voice.system, { feet: false }),
  name: say(c.voice, { words }),
});

/** The bar as one line: cuts made, the lit one, cuts to come; the steel behind the last cut dotted. */
const barLine = (c: PageContext, l: ListedCut): Row => {
  const columns = c.look.columns - 2;
  const off = sawnOff(l);
  const gone = off.reduce((sum, s) => sum + s.length_mm, 0);
  const whole = Math.max(1, l.bar.length_mm + gone);
  const at = (mm: number): number =>
    Math.min(columns - 1, Math.max(0, Math.round(((mm + gone) / whole) * (columns - 1))));
  const signs = Array.from<unknown, string>({ length: columns }, (_, i) =>
    i > at(l.bar.cuts.at(-1)?.to_mm ?? 0) ? '·' : '─',
  );
  let from = -gone;
  for (const s of off) {
    from += s.length_mm;
    signs[at(from)] = '╋';
  }
  for (const cut of l.bar.cuts) signs[at(cut.to_mm)] = cut === l.cut ? '▾' : '┴';
  return row(' ', signs.join(''));
};

const sawnRow = (c: PageContext, s: Sawn): Row =>
  row(
    ' ',
    [s.spoiled ? 'attention' : 'settled', s.spoiled ? '× ' : '✓ '],
    padTo(cutTo(pieceName(s.need), 26), 27),
    [
      'quiet',
      say(c.voice, {
        words: s.spoiled ? 'says.cutting-spoiled' : 'says.cutting-cut',
        fills: { long: { v: s.length_mm, as: 'length' } },
      }),
    ],
  );

const cutRow = (c: PageContext, cut: Cut, lit: boolean): Row => {
  const length = (v: number): string => padTo(lengthText(c.voice, v), 11, 'right');
  return row(
    ' ',
    [lit ? 'lead' : 'quiet', lit ? '▸ ' : isSawnNow(cut) ? '· ' : '◌ '],
    [lit ? 'lead' : 'plain', padTo(cutTo(label(c, cut), 24), 25)],
    length(cut.piece.long_mm),
    cut.piece.short_mm === cut.piece.long_mm ? padTo('', 11) : length(cut.piece.short_mm),
    '  ',
    padTo(endsText(c, cut), 15),
    length(cut.to_mm),
  );
};

const tagOf = (c: PageContext, l: ListedCut): Row => {
  const { need, known, when } = l.cut.piece;
  // The step that asks for the piece may wait: then it is not what comes next.
  const step = c.view.steps.find(
    s => s.piece?.need === need || (s.items ?? []).some(i => i.piece?.need === need),
  );
  const waits = step !== undefined && (step.state === 'waiting' || step.shut.length > 0);
  const words = !known ? 'held' : when === 'spare' ? 'spare' : 'next';
  return row(
    ' ',
    ['lead', `${words !== 'next' ? '◌' : waits ? '◌ WAITS' : '▸ NEXT'}  `],
    ['lead', say(c.voice, { words: `says.cutting-${words}`, fills: { piece: pieceName(l.cut.piece.need) } })],
  );
};

/** Cutting bar by bar: the lit piece tall, its bar as a line with what is cut and where the saw stands, all its pieces below. */
export const cuttingPage = (
  c: PageContext,
  sheet: OrderSheet,
  stage: Stage,
  lit: number,
  keys: Row,
  field: Row[] | null,
): Row[] => {
  const cuts = listedCuts(sheet);
  const l = cuts[Math.max(0, Math.min(lit, cuts.length - 1))];
  const minutes = say(c.voice, {
    words: 'says.cutting-minutes',
    fills: {
      low: { v: sheet.sawing_min.low * 60, as: 'time' },
      high: { v: sheet.sawing_min.high * 60, as: 'time' },
    },
  });
  if (l === undefined) {
    return page(
      c,
      [titleRow(c), stripRow(c.view, stage), ruleRow(c, say(c.voice, { words: 'says.cutting-title' }))],
      [row(' ', ['settled', `✓ ${say(c.voice, { words: 'says.cutting-done' })}`])],
      [[], echoRow(c), keys],
    );
  }
  const { bar } = l;
  const reach = sawReach(c.view.build) ?? shopReach(sheet.shop);
  const top: readonly Row[] =
    field ??
    tallRows(
      [markTall(c, l.cut.piece.long_mm, 'says.cutting-long'), markTall(c, l.cut.to_mm, 'says.cutting-to')],
      c.look.columns,
      c.look.ascii,
    );
  const rows = [...sawnOff(l).map(s => sawnRow(c, s)), ...bar.cuts.map(cut => cutRow(c, cut, cut === l.cut))];
  const head = [
    titleRow(c),
    stripRow(c.view, stage),
    ruleRow(
      c,
      say(c.voice, {
        words: 'says.cutting-bar',
        fills: {
          bar: bar.label,
          section: sectionText(c.voice, l.section.section),
          source: sourceText(c.voice, bar),
        },
      }),
      say(c.voice, { words: 'says.cutting-stops', fills: { stops: l.section.stops } }),
    ),
    joinSides(tagOf(c, l), row(['quiet', minutes]), c.look.columns - 1),
    ...top,
    ...(field === null ? noteRows(c, l, reach) : []),
    barLine(c, l),
    ruleRow(
      c,
      say(c.voice, { words: 'says.cutting-pieces' }),
      say(c.voice, { words: 'says.cutting-columns' }),
    ),
  ];
  const foot = [row(' ', ['quiet', closeText(c.voice, bar)]), ...cautionRows(c, reach), echoRow(c), keys];
  const room = Math.max(1, pageRows(c) - head.length - foot.length);
  const litRow = sawnOff(l).length + bar.cuts.indexOf(l.cut);
  const from = Math.max(0, Math.min(litRow - 2, rows.length - room));
  return page(c, head, rows.slice(from, from + room), foot);
};

import { describe, expect, test } from 'vitest';
import type { Doing } from '../../../src/build/entries.ts';
import type { ShopDoing, ShopEntry } from '../../../src/build/shop/entries.ts';
import { foldShop } from '../../../src/build/shop/shop.ts';
import { type View, viewOf } from '../../../src/coach/view.ts';
import { rowText, rowWidth } from '../../../src/drawing/cells.ts';
import { compileContent } from '../../../src/making/compile-content.ts';
import { memberMass } from '../../../src/ramp/mass.ts';
import type { PageContext } from '../../../src/screen/pages/context.ts';
import { cuttingPage, listedCuts } from '../../../src/screen/pages/cutting-page.ts';
import { orderCsv, orderText } from '../../../src/screen/pages/order-files.ts';
import { goodsOf } from '../../../src/screen/pages/order-goods.ts';
import { orderPage, orderRows, stateText } from '../../../src/screen/pages/order-page.ts';
import { buildIdOf, orderSheet } from '../../../src/screen/pages/order-sheet.ts';
import type { Content } from '../../../src/words/schema.ts';
import { entriesOf, NOW } from '../../stages/situation-for.ts';

const content = JSON.parse(compileContent(process.cwd())) as Content;

const view = (system: 'metric' | 'us', ...more: Doing[]): View =>
  viewOf(entriesOf([{ kind: 'build-begun', name: 'Yard', system }, ...more]), NOW);

const context = (v: View, ascii = false): PageContext => ({
  view: v,
  voice: { content, system: v.build.system },
  look: { columns: 80, rows: 24, ascii },
  disk: { is: 'on disk', at: null },
  message: null,
});

const shop = (...doings: ShopDoing[]) =>
  foldShop(
    doings.map((d, i) => ({ id: `s-${i}`, n: i + 1, v: 1, at: '2026-10-03T18:00:00Z', ...d }) as ShopEntry),
  );

const BOARDS: Doing = {
  kind: 'design-set',
  field: 'deck',
  value: { kind: 'boards', thickness_mm: 38, board_mm: 140 },
};

describe.each([
  ['metric', view('metric')],
  ['metric, boards', view('metric', BOARDS)],
  ['US', view('us')],
])('the order sheet, %s', (_, v) => {
  const c = context(v);
  const sheet = orderSheet(v, shop());
  const pages = [
    orderRows(c, sheet),
    orderPage(c, sheet, 'plan', 0, [], false),
    ...listedCuts(sheet).map((_cut, i) => cuttingPage(c, sheet, 'cut', i, [], null)),
  ];

  test('every word it says is there, and every mark is filled', () => {
    const all = pages.flat().map(rowText).join('\n');
    expect(all).not.toMatch(/says\.|\{[a-z-]+\}|NaN|undefined|Infinity/);
    expect(orderText(v, c.voice, sheet, '2026-10-03')).not.toMatch(
      /says\.|\{[a-z-]+\}|NaN|undefined|Infinity/,
    );
  });

  test('pages keep to 80 columns, 23 rows, and to 7-bit signs where asked', () => {
    for (const rows of pages.slice(1)) {
      expect(rows.length).toBeLessThanOrEqual(23);
      for (const r of rows) expect(rowWidth(r)).toBeLessThanOrEqual(80);
    }
    for (const r of orderPage(context(v, true), sheet, 'plan', 0, [], false))
      expect(rowText(r)).toMatch(/^[\x20-\x7e]*$/);
  });

  test('text for a phone: short lines, plain signs', () => {
    for (const line of orderText(v, c.voice, sheet, '2026-10-03').split('\n')) {
      expect(line.length).toBeLessThanOrEqual(48);
      expect(line).toMatch(/^[\x20-\x7e]*$/);
    }
  });

  test('on the phone: why a spare is bought, what is held back, and that two carry a heavy plate', () => {
    const text = orderText(v, c.voice, sheet, '2026-10-03').replace(/\s+/g, ' ');
    for (const [spare] of text.split('CUTTING LIST')[0]?.matchAll(/SPARE.{16}/g) ?? [])
      expect(spare).toContain('a tenth over');
    expect(text).toMatch(/HELD BACK [^*]* cut to the rails later \*/);
    expect(text).toContain('* HELD BACK is for uprights');
    expect(text).toContain('* The spare rail and a tenth over come first');
    const kg = v.ramp.entry.pieces.filter(m => m.kind === 'entry plate').map(memberMass)[0] ?? 0;
    expect(text.includes('two people')).toBe(kg > 25);
  });

  test('every good has a reason, and wire, gas and discs a band', () => {
    const goods = goodsOf(v, c.voice);
    for (const g of goods) expect(g.why).toMatch(/\w{3}/);
    for (const id of ['wire', 'gas', 'cored-wire', 'rods'])
      expect(goods.find(g => g.id === id)?.amount).toMatch(/ to /);
    expect(new Set(goods.map(g => g.id)).size).toBe(goods.length);
  });

  test('comma-separated values: as many fields in every line as in the head', () => {
    const lines = orderCsv(v, c.voice, sheet).trimEnd().split('\r\n');
    const fields = (l: string): number => l.replace(/"(?:[^"]|"")*"/g, '').split(',').length;
    const head = fields(lines[0] ?? '');
    for (const l of lines) expect(fields(l)).toBe(head);
    expect(lines.filter(l => l.startsWith('piece,')).length).toBe(listedCuts(sheet).length);
  });
});

describe('what the person typed', () => {
  const v = view('metric');

  test('no prices: no money figure, and the key that asks for them', () => {
    const c = context(v);
    const sheet = orderSheet(v, shop());
    expect(stateText(c, sheet, false)).not.toContain('yours');
    expect(stateText(c, { ...sheet, asks: [] }, false)).toContain('c: type your prices once');
  });

  test('all priced: the sum, and the day they were typed', () => {
    const all = orderSheet(v, shop()).order.sections.map(
      (s): ShopDoing => ({
        kind: 'price-set',
        section: s.section.name,
        bar_mm: s.bars[0]?.length_mm ?? 0,
        price: 10,
        typed: '10',
      }),
    );
    const sheet = orderSheet(v, shop(...all));
    const bars = sheet.order.sections.flatMap(s => s.bars).length;
    expect(sheet.totals.cost).toBe(10 * bars);
    expect(stateText(context(v), { ...sheet, asks: [] }, false)).toContain('2026-10-03');
    const text = orderText(v, context(v).voice, sheet, '2026-10-03').replace(/\s+/g, ' ');
    const each = [...text.matchAll(/, price (\d+\.\d\d)/g)].map(m => Number(m[1]));
    expect(each.length).toBe(bars);
    expect(text).toContain(`${each.reduce((a, p) => a + p, 0).toFixed(2)} for bars and deck`);
  });

  test('bars bought: nothing to buy, and a piece cut stands as cut in its bar', () => {
    const first = orderSheet(v, shop());
    const bars = first.order.sections.flatMap(s =>
      s.bars.map(b => ({
        section: s.section.name,
        length_mm: b.length_mm,
        needs: b.cuts.map(x => x.piece.need),
      })),
    );
    const bought = shop({ kind: 'bars-bought', build: buildIdOf(v), bars, offcuts: [] });
    const after = view('metric', {
      kind: 'piece-cut',
      need: 'curved rail@A',
      section: '40x40x3',
      asked_mm: 1698.5,
      length_mm: 1699,
      typed: '1699',
      ends_rad: [0, 0],
    });
    const sheet = orderSheet(after, bought);
    expect(sheet.totals.bars).toBe(0);
    const at = listedCuts(sheet).findIndex(l => l.cut.piece.need === 'curved rail@B');
    const rows = cuttingPage(context(after), sheet, 'cut', at, [], null).map(rowText);
    expect(rows.some(r => r.includes('✓ curved rail') && r.includes('1699'))).toBe(true);
    expect(rows.some(r => r.includes('Cut') && r.includes('curved rail'))).toBe(true);
  });
});

describe('a tube typed as the caliper read it', () => {
  const tubeOf = (wall_mm: number): Doing => ({
    kind: 'design-set',
    field: 'tube',
    value: { depth_mm: 40, width_mm: 40, wall_mm },
  });
  const rack = (wall_mm: number): string => {
    const v = view('metric', tubeOf(wall_mm));
    return orderRows(context(v), orderSheet(v, shop())).map(rowText).join('\n');
  };

  test('2.9 mm is the 3 mm tube that the yard sells, and 3 mm wants no word', () => {
    expect(rack(2.9)).toContain('Ask for 40 x 40 x 3. The 40 x 40 x 2.9 that you read is that size');
    expect(rack(2.9)).not.toContain('not among the sizes');
    expect(rack(3)).not.toMatch(/Ask for 40|not among the sizes/);
  });

  test('3.5 mm is none of them', () => {
    expect(rack(3.5)).toContain('40 x 40 x 3.5 is not among the sizes');
  });
});

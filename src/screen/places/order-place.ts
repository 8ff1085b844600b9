import type { Keeper } from '../../coach/keeper.ts';
import type { ShopKeeper } from '../../coach/shop-keeper.ts';
import { writeSheet } from '../../machine/sheet-file.ts';
import { barsToBuy } from '../../ramp/cutting/order.ts';
import { totalsOf } from '../../ramp/cutting/totals.ts';
import { askKey } from '../../stages/situation.ts';
import { say } from '../../words/say.ts';
import type { PageKey } from '../keys.ts';
import { orderCsv, orderText } from '../pages/order-files.ts';
import { lastStart, orderPage } from '../pages/order-page.ts';
import { askingFor, buildIdOf, type OrderSheet, orderSheet } from '../pages/order-sheet.ts';
import type { Lit } from '../pages/stage-page.ts';
import { commonAct } from './common.ts';
import { cuttingPlace } from './cutting-place.ts';
import type { Desk, Place } from './desk.ts';
import { offcutsPlace } from './offcuts-place.ts';
import { pricesPlace } from './prices-place.ts';

const OWN: readonly PageKey[] = [
  { char: 'c', act: 'prices', word: 'prices', help: 'prices, bars and saw', writes: false },
  { char: 'x', act: 'offcuts', word: 'offcuts', help: 'offcuts you have', writes: false },
  { char: 'e', act: 'write', word: 'files', help: 'write it as text and CSV', writes: true },
];

/** Rows a key rolls the sheet by. */
const STEP = 3;

/** The order sheet: what to buy, what goes with it, and the ways to prices, offcuts and the cutting list. */
export const orderPlace = (lit: Lit): Place => {
  let at = 0;
  let ended = false;
  /** The tick that went with the last purchase: taking the purchase back takes it too. */
  let ticked: string | null = null;
  const asked = new Set<string>();

  const shopOf = (desk: Desk): ShopKeeper => desk.shop();

  /** The sheet with what is known; what is not known yet is asked once, and comes back as a redraw. */
  const sheetOf = (desk: Desk): OrderSheet => {
    const sheet = orderSheet(desk.view, shopOf(desk).shop());
    const build = desk.keeper;
    if (ended || build === null) return sheet;
    const asks = sheet.asks.filter(a => !asked.has(askKey(a)));
    for (const a of asks) asked.add(askKey(a));
    if (asks.length > 0) {
      const asking: Keeper = { ...build, view: () => askingFor(build.view(), asks) };
      desk.around.think(asking);
    }
    return sheet;
  };

  const buy = (desk: Desk): void => {
    const { order } = sheetOf(desk);
    const bars = order.sections.flatMap(s =>
      barsToBuy(s).map(({ length_mm, label, trim_mm, needs }) => ({
        section: s.section.name,
        length_mm,
        label,
        ...(trim_mm === undefined ? {} : { trim_mm }),
        needs: [...needs],
      })),
    );
    if (bars.length === 0) return desk.say(say(desk.voice, { words: 'says.order-none-to-buy' }));
    const offcuts = order.sections.flatMap(s =>
      s.bars.flatMap(b =>
        b.source.is === 'open' && b.source.bar.from === 'offcut' ? [b.source.bar.id] : [],
      ),
    );
    const steel = totalsOf(order).bars;
    const why = shopOf(desk).act({ kind: 'bars-bought', build: buildIdOf(desk.view), bars, offcuts });
    if (why !== null) return desk.say(say(desk.voice, { words: 'says.order-cannot-keep', fills: { why } }));
    const step = desk.view.steps.find(s => s.key === 'plan/order');
    if (step?.state === 'to do' && desk.act({ do: 'tick', step: 'plan/order' }))
      ticked = desk.view.build.ticks.get('plan/order')?.entry ?? null;
    desk.say(say(desk.voice, { words: 'says.order-bought', fills: { bars: steel } }));
  };

  const writeFiles = (desk: Desk): void => {
    const path = desk.keeper?.path;
    if (path === undefined) return;
    const sheet = sheetOf(desk);
    const day = desk.around.now().toISOString().slice(0, 10);
    const text = writeSheet(path, 'order', '.txt', orderText(desk.view, desk.voice, sheet, day));
    const csv = text.ok ? writeSheet(path, 'order', '.csv', orderCsv(desk.view, desk.voice, sheet)) : text;
    desk.say(
      text.ok && csv.ok
        ? say(desk.voice, { words: 'says.order-written', fills: { files: `${text.value}, ${csv.value}` } })
        : say(desk.voice, {
            words: 'says.order-cannot-write',
            fills: { why: csv.ok ? '' : csv.fault.message },
          }),
    );
  };

  const place: Place = {
    stage: () => lit.stage,
    own: OWN,
    rows: desk => orderPage(desk.context(), sheetOf(desk), lit.stage, at, desk.keyRow(place), ended),
    keys: () => [
      { act: 'tick', words: 'bought' },
      { act: 'open', words: 'cutting' },
      ...OWN.map(o => ({ act: o.act })),
      { act: 'next', words: 'move', shown: '↑ ↓' },
      { act: 'back' },
    ],
    // Some rows of what was seen stay, on the smallest page too.
    pageStep: 3,
    act: (desk, act, char) => {
      switch (act) {
        case 'next':
          at = Math.min(at + STEP, lastStart(desk.context(), sheetOf(desk)));
          return true;
        case 'previous':
          at = Math.max(0, at - STEP);
          return true;
        case 'tick':
          buy(desk);
          return true;
        case 'open':
          desk.push(cuttingPlace(lit, shopOf(desk)));
          return true;
        case 'prices':
          desk.push(pricesPlace(lit.stage, shopOf(desk)));
          return true;
        case 'offcuts':
          desk.push(offcutsPlace(lit.stage, shopOf(desk)));
          return true;
        case 'write':
          writeFiles(desk);
          return true;
        case 'skip': {
          const running = !ended && sheetOf(desk).asks.length > 0;
          if (running) ended = true;
          desk.say(say(desk.voice, { words: running ? 'says.order-search-ended' : 'says.order-no-search' }));
          return true;
        }
        case 'take-back':
          if (!shopOf(desk).takeBack()) return commonAct(desk, act, char, lit);
          if (ticked !== null && !desk.view.build.struck.has(ticked))
            desk.act({ do: 'strike', entry: ticked });
          ticked = null;
          desk.say(say(desk.voice, { words: 'says.order-taken-back' }));
          return true;
        case 'back':
          desk.pop();
          return true;
        default:
          return commonAct(desk, act, char, lit);
      }
    },
  };
  return place;
};

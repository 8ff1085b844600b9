import { compute } from '../coach/compute.ts';
import type { Keeper } from '../coach/keeper.ts';
import { openShopKeeper } from '../coach/shop-keeper.ts';
import { withAnswer } from '../coach/tasks.ts';
import type { View } from '../coach/view.ts';
import { yardCuts } from '../ramp/cutting/yard-cuts.ts';
import { orderCsv, orderText } from '../screen/pages/order-files.ts';
import { goodsOf } from '../screen/pages/order-goods.ts';
import { type OrderSheet, orderSheet } from '../screen/pages/order-sheet.ts';
import { pieceName } from '../stages/piece-name.ts';
import type { Voice } from '../words/say.ts';
import type { CommandModule } from './command.ts';
import { EXIT, SCHEMA_VERSION } from './exit-codes.ts';
import { keeperOf } from './find-build.ts';

/** The order with its search run to the end: nobody waits at a key. */
const settledOrder = async (keeper: Keeper): Promise<OrderSheet> => {
  const view = keeper.view();
  const shop = openShopKeeper(keeper.path).shop();
  let answers = view.situation.answers;
  let sheet = orderSheet(view, shop, answers);
  while (sheet.asks.length > 0) {
    for (const ask of sheet.asks) answers = withAnswer(answers, ask, await compute(ask));
    sheet = orderSheet(view, shop, answers);
  }
  return sheet;
};

const degrees = (rad: number): number => (rad * 180) / Math.PI;

/** The order as data: lengths in mm, angles in degrees, masses in kg. */
export const orderJson = (view: View, voice: Voice, sheet: OrderSheet): object => {
  const { totals, order } = sheet;
  return {
    schemaVersion: SCHEMA_VERSION,
    build: view.build.name,
    kerf_mm: order.kerf_mm,
    bars_to_buy: totals.bars,
    steel_to_buy_kg: totals.kg,
    heaviest_bar_kg: totals.heaviest_kg,
    cost: totals.cost === null ? null : Number(totals.cost.toFixed(2)),
    unpriced: totals.unpriced,
    held_back_mm: totals.held,
    sections: order.sections.map(s => ({
      section: s.section.name,
      kind: s.section.kind,
      kg_m: s.section.kgPerM,
      proven: s.plan.ok && s.plan.value.proven,
      error: s.plan.ok ? null : s.plan.fault,
      stop_settings: s.stops,
      bars: s.bars.map(bar => ({
        bar: bar.label,
        from: bar.source.is === 'sold' ? 'buy' : bar.source.bar.from,
        length_mm: bar.length_mm,
        kg: bar.kg,
        price: bar.price,
        held_mm: bar.held_mm,
        yard_cuts: yardCuts(bar, sheet.carry_mm, voice.system),
      })),
      // As they lie at the saw: marks count from the squared end of each part.
      parts: s.parts.map(part => ({
        part: part.label,
        length_mm: part.length_mm,
        trim_mm: part.trim_mm,
        kerfs_mm: part.kerfs_mm,
        turned_mm: part.turned_mm,
        saved_mm: part.saved_mm,
        left_mm: part.left_mm,
        cuts: part.cuts.map(c => ({
          need: c.piece.need,
          piece: pieceName(c.piece.need),
          when: c.piece.when,
          known: c.piece.known,
          long_mm: c.piece.long_mm,
          short_mm: c.piece.short_mm,
          start_deg: degrees(c.start_rad),
          end_deg: degrees(c.end_rad),
          from_mm: c.from_mm,
          to_mm: c.to_mm,
          rolled_over: c.swung,
          start_lean: c.start_lean,
          end_lean: c.end_lean,
        })),
      })),
    })),
    with_it: goodsOf(view, voice).map(({ id, name, amount, why, done }) => ({ id, name, amount, why, done })),
  };
};

export const run: CommandModule['run'] = async (_words, options, world) => {
  const json = options.json === true;
  if (json && options.csv === true) {
    const error = {
      code: 'contradiction',
      field: 'csv',
      message: '--json and --csv are two answers',
      accepted: 'one of them',
    };
    world.out(`${JSON.stringify({ schemaVersion: SCHEMA_VERSION, error })}\n`);
    return EXIT.refused;
  }
  const keeper = keeperOf(typeof options.build === 'string' ? options.build : undefined, world);
  if (!keeper.ok) {
    const { message } = keeper.fault;
    const accepted = 'curvewright builds lists them';
    if (json)
      world.out(
        `${JSON.stringify({ schemaVersion: SCHEMA_VERSION, error: { code: keeper.fault.code, field: 'build', message, accepted } })}\n`,
      );
    else world.err(`curvewright: ${message}. ${accepted}\n`);
    return EXIT.noInput;
  }
  try {
    const view = keeper.value.view();
    const voice: Voice = { content: world.content(), system: view.build.system };
    const sheet = await settledOrder(keeper.value);
    if (json) world.out(`${JSON.stringify(orderJson(view, voice, sheet))}\n`);
    else if (options.csv === true) world.out(orderCsv(view, voice, sheet));
    else world.out(orderText(view, voice, sheet, world.now().toISOString().slice(0, 10)));
    return sheet.order.sections.every(s => s.plan.ok) ? EXIT.done : EXIT.no;
  } finally {
    keeper.value.open.release();
  }
};

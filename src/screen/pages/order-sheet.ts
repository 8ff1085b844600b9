import { haveOf } from '../../build/shop/have-of.ts';
import type { Band } from '../../build/shop/learned.ts';
import { learnedMinutes, type Shop } from '../../build/shop/shop.ts';
import type { View } from '../../coach/view.ts';
import { type Order, orderOf } from '../../ramp/cutting/order.ts';
import { type Totals, totalsOf } from '../../ramp/cutting/totals.ts';
import { CARRY } from '../../ramp/cutting/usual-stock.ts';
import type { StockJob } from '../../reckon/stock/stock-job.ts';
import { type Known, knownPlan } from '../../stages/heavy/stock-answer.ts';
import type { Answers, Ask } from '../../stages/situation.ts';

/** The order of a build as it stands with what is known by now. */
export type OrderSheet = Readonly<{
  order: Order;
  totals: Totals;
  shop: Shop;
  /** Longest thing that goes home in one piece, mm. */
  carry_mm: number;
  /** What was searched for each section, in the order's order; null where nothing had to be. */
  known: readonly (Known | null)[];
  /** Rounds of searching still to ask. */
  asks: readonly Ask[];
  /** Minutes of sawing left, by what was learned. */
  sawing_min: Band & Readonly<{ count: number }>;
}>;

/** The name by which the shop knows a build: the id of its first entry. */
export const buildIdOf = (view: View): string => view.build.all[0]?.id ?? view.build.name;

/**
 * The order sheet of a build.
 * @param answers heavy answers known by now; the plan made at once stands where there is none
 */
export const orderSheet = (view: View, shop: Shop, answers: Answers = view.situation.answers): OrderSheet => {
  const asked = new Map<StockJob, Known>();
  const order = orderOf(view.ramp, haveOf(view.build, buildIdOf(view), shop), job => {
    const known = knownPlan(answers, job);
    asked.set(job, known);
    return known.plan;
  });
  const totals = totalsOf(order);
  const each = learnedMinutes(shop, 'cut');
  return {
    order,
    totals,
    shop,
    carry_mm: shop.carry_mm ?? CARRY[view.ramp.design.system],
    known: order.sections.map(s => asked.get(s.question.job) ?? null),
    asks: [...asked.values()].flatMap(k => (k.next === null ? [] : [k.next])),
    sawing_min: {
      low: each.low * totals.cuts,
      likely: each.likely * totals.cuts,
      high: each.high * totals.cuts,
      count: each.count,
    },
  };
};

/** A view that asks for more than its pages do, for whoever works the answers out. */
export const askingFor = (view: View, asks: readonly Ask[]): View => ({
  ...view,
  sheets: view.sheets.map((sheet, i) =>
    i === 0 ? { ...sheet, asked: [...(sheet.asked ?? []), ...asks] } : sheet,
  ),
});

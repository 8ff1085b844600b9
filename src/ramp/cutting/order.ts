import { good, type Outcome } from '../../quantity/outcome.ts';
import type { StockJob, StockPlan } from '../../reckon/stock/stock-job.ts';
import type { System } from '../design.ts';
import type { Ramp } from '../ramp.ts';
import { asBought } from './as-bought.ts';
import { barParts } from './bar-parts.ts';
import { barsLeft, type HeldBar, type WorkedBar } from './bars-left.ts';
import { type CutBar, type CutBars, cutBars, type PlannedBar, plannedBars } from './cut-bars.ts';
import { deckWanted } from './deck-wanted.ts';
import { type Sawn, steelWanted, type Wanted } from './needed.ts';
import { type CutAim, type Question, questionOf, type SoldBar, together } from './question.ts';
import { isSteelStock, type StockSection } from './stock-section.ts';
import { SAW_KERF, SQUARING, usualBars } from './usual-stock.ts';

/** All that an order knows beside the ramp: what the yard sells, what lies in the shop, what was sawn. */
export type Have = Readonly<{
  /** Lengths the yard sells of a section, mm; the usual ones where none are named. */
  barSizes: ReadonlyMap<string, readonly number[]>;
  /** What the yard asks, by section and length. */
  prices: ReadonlyMap<string, ReadonlyMap<number, number>>;
  /** Bars bought for this build, by section; null before anything was bought. */
  bought: ReadonlyMap<string, readonly HeldBar[]> | null;
  offcuts: ReadonlyMap<string, readonly HeldBar[]>;
  sawn: readonly Sawn[];
  /** Kerf of the saw that cuts the bars, mm; null until read. */
  kerf_mm: number | null;
  aim: CutAim;
  /** The longest that goes home in one part, mm; null where bars go home whole. */
  carry_mm: number | null;
}>;

export const NOTHING_HAD: Have = {
  barSizes: new Map(),
  prices: new Map(),
  bought: null,
  offcuts: new Map(),
  sawn: [],
  kerf_mm: null,
  aim: 'price',
  carry_mm: null,
};

/** Gives a plan for a question: the best known by now. */
export type Solve = (job: StockJob) => Outcome<StockPlan>;

export type OrderedSection = Readonly<{
  section: StockSection;
  question: Question;
  /** Lengths the yard sells, also those the plan leaves out because they have no price and others have. */
  listed: readonly SoldBar[];
  plan: Outcome<StockPlan>;
  /** In the order they are cut; empty where there is no plan. */
  bars: readonly CutBar[];
  /** The same as they lie at the saw: what is bought in the parts that it goes home in, with marks counted from each part's own end. */
  parts: readonly CutBar[];
  /** Times the saw's stop is set. */
  stops: number;
  /** Bars that lie in the shop, with what was sawn off each. */
  worked: readonly WorkedBar[];
  /** Bars were bought for it: what is sold is only what is still missing. */
  bought: boolean;
}>;

export type Order = Readonly<{ sections: readonly OrderedSection[]; kerf_mm: number }>;

/** Every length of a section that the yard sells, priced or not. */
const listedFor = (ramp: Ramp, have: Have, section: StockSection): readonly SoldBar[] =>
  (have.barSizes.get(section.name) ?? usualBars(ramp.design.system, section)).map(length_mm => ({
    length_mm,
    price: have.prices.get(section.name)?.get(length_mm) ?? null,
  }));

/** Who priced some lengths means to buy those: the others are left out of the plan. */
const soldFor = (ramp: Ramp, have: Have, section: StockSection): readonly SoldBar[] => {
  const listed = listedFor(ramp, have, section);
  const priced = listed.filter(b => b.price !== null);
  return priced.length > 0 ? priced : listed;
};

/** The bars that the first plan of the frame as drawn took: what was bought, where no list of it was kept. */
const asDrawn = (
  ramp: Ramp,
  have: Have,
  w: Wanted,
  kerf_mm: number,
  trim_mm: number,
  solve: Solve,
): readonly HeldBar[] => {
  const drawn = steelWanted(ramp, [], kerf_mm, ramp.nominal, have.carry_mm ?? undefined).find(
    n => n.section.name === w.section.name,
  );
  if (drawn === undefined || drawn.pieces.length === 0) return [];
  const saw = { kerf_mm, trim_mm };
  const question = questionOf(w.section, drawn.pieces, soldFor(ramp, have, w.section), [], saw, have.aim);
  const plan = solve(question.job);
  if (!plan.ok) return [];
  const { bars } = cutBars(question, plannedBars(question, plan.value));
  return barsOf(w.section.name, partsOf(question, bars, have.carry_mm, ramp.design.system).bars);
};

/** Steel that is bought goes home in parts; what lies in the shop stays as it is. */
const partsOf = (q: Question, bars: readonly CutBar[], carry_mm: number | null, system: System): CutBars => {
  const planned = bars.flatMap((bar): readonly PlannedBar[] =>
    isSteelStock(q.section) && carry_mm !== null && bar.source.is === 'sold'
      ? barParts(bar, q.trim_mm, q.kerf_mm, carry_mm, system)
      : [{ source: bar.source, lumps: bar.cuts.map(c => together([c.piece], q.kerf_mm)), part: bar }],
  );
  return cutBars(q, planned);
};

const barsOf = (section: string, bars: readonly CutBar[]): readonly HeldBar[] =>
  bars.map(b => ({
    id: `${section}#${b.label}`,
    from: 'bought',
    length_mm: b.length_mm,
    label: b.label,
    trim_mm: b.trim_mm,
    needs: b.cuts.map(c => c.piece.need),
  }));

/** What is bought when a person takes the sheet to the yard: bars not in the shop yet, in the parts they go home in, with the pieces they are for. */
export const barsToBuy = (ordered: OrderedSection): readonly HeldBar[] =>
  barsOf(
    ordered.section.name,
    ordered.parts.filter(b => b.source.is === 'sold'),
  );

/** A plan that stands as it was bought: what it takes more is nothing, and nothing takes less. */
const nothingToBuy = (q: Question, planned: readonly PlannedBar[]): StockPlan => ({
  bars: planned.map(({ source, lumps }) => {
    const length_mm = source.is === 'open' ? source.bar.left_mm : source.bar.length_mm;
    const cuts = lumps.map(l => ({ name: l.name, length_mm: l.length_mm }));
    const used = cuts.reduce((sum, c) => sum + c.length_mm, 0) + q.kerf_mm * (cuts.length - 1);
    return { length_mm, cuts, left_mm: Math.max(0, length_mm - used) };
  }),
  bar_count: planned.length,
  total_length_mm: planned.reduce((sum, p) => sum + (p.source.is === 'open' ? p.source.bar.left_mm : 0), 0),
  price: 0,
  lower_bound: 0,
  proven: true,
});

const sectionOrder = (ramp: Ramp, have: Have, w: Wanted, solve: Solve): OrderedSection => {
  const { system } = ramp.design;
  const steel = w.section.kind === 'tube' || w.section.kind === 'flat';
  const kerf_mm = have.kerf_mm ?? SAW_KERF[system];
  const trim_mm = steel ? SQUARING[system] : 0;
  const sawn = have.sawn.filter(s => w.needs.has(s.need) || s.section === w.section.name);
  const bought = have.bought?.get(w.section.name) ?? null;
  // Steel that was sawn was bought, whether or not anybody said so.
  const held = bought ?? (sawn.length > 0 ? asDrawn(ramp, have, w, kerf_mm, trim_mm, solve) : []);
  const worked = barsLeft([...held, ...(have.offcuts.get(w.section.name) ?? [])], sawn, kerf_mm, trim_mm);
  const open = worked.filter(b => b.left_mm > 0);
  const saw = { kerf_mm, trim_mm };
  const question = questionOf(w.section, w.pieces, soldFor(ramp, have, w.section), open, saw, have.aim);
  const kept = held.length > 0 ? asBought(question, held, worked) : null;
  const plan = kept === null ? solve(question.job) : good(nothingToBuy(question, kept));
  const planned = kept ?? (plan.ok ? plannedBars(question, plan.value) : []);
  const numbered = Math.max(0, ...worked.map(b => Number.parseInt(b.label, 10) || 0));
  const { bars } = cutBars(question, planned, numbered);
  const { bars: parts, stops } = partsOf(question, bars, have.carry_mm, ramp.design.system);
  const listed = listedFor(ramp, have, w.section);
  return { section: w.section, question, listed, plan, bars, parts, stops, worked, bought: held.length > 0 };
};

/** Every section of a ramp's order with its cutting plan: steel by section, then what the deck is cut from. */
export const orderOf = (ramp: Ramp, have: Have, solve: Solve): Order => {
  const kerf_mm = have.kerf_mm ?? SAW_KERF[ramp.design.system];
  const longest = have.carry_mm ?? undefined;
  const wanted = [
    ...steelWanted(ramp, have.sawn, kerf_mm, ramp.members, longest),
    ...deckWanted(ramp, have.sawn),
  ];
  return {
    kerf_mm,
    sections: wanted.filter(w => w.pieces.length > 0).map(w => sectionOrder(ramp, have, w, solve)),
  };
};

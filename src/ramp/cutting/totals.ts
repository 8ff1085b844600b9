import type { CutBar } from './cut-bars.ts';
import type { Order, OrderedSection } from './order.ts';
import { isSteelStock } from './stock-section.ts';

/** Bars of steel, their mass together and that of the heaviest, kg. */
type Steel = Readonly<{ bars: number; kg: number; heaviest_kg: number }>;

export type Totals = Readonly<
  Steel & {
    /** Steel that lies in the shop and is still to be cut from; what stands beside it is to buy. */
    there: Steel;
    /** Of what is to buy, deck included, at the person's prices; null until every bar of it has one. */
    cost: number | null;
    /** Sections to buy that have no price yet. */
    unpriced: readonly string[];
    /** Length that stays uncut for pieces cut to the rails: as drawn, and with what they may come out longer, mm. */
    held: Readonly<{ low_mm: number; high_mm: number }>;
    /** Saw cuts still to make. */
    cuts: number;
  }
>;

export const isSteel = (s: OrderedSection): boolean => isSteelStock(s.section);

/** Bars of a section that are not in the shop yet. */
export const toBuy = (s: OrderedSection): readonly CutBar[] => s.bars.filter(b => b.source.is === 'sold');

const steelOf = (bars: readonly CutBar[]): Steel => ({
  bars: bars.length,
  kg: sum(bars.map(b => b.kg)),
  heaviest_kg: Math.max(0, ...bars.map(b => b.kg)),
});

const sum = (values: readonly number[]): number => values.reduce((a, v) => a + v, 0);

/** What an order comes to. */
export const totalsOf = (order: Order): Totals => {
  const steel = order.sections.filter(isSteel);
  const all = order.sections.flatMap(toBuy);
  const unpriced = order.sections.filter(s => toBuy(s).some(b => b.price === null)).map(s => s.section.name);
  const pieces = order.sections.flatMap(s => s.bars.flatMap(b => b.cuts.map(c => c.piece)));
  const held = pieces.filter(p => p.when === 'to the rail' && !p.known);
  return {
    ...steelOf(steel.flatMap(toBuy)),
    there: steelOf(steel.flatMap(s => s.bars).filter(b => b.source.is === 'open')),
    cost: unpriced.length > 0 ? null : sum(all.map(b => b.price ?? 0)),
    unpriced,
    held: { low_mm: sum(held.map(p => p.long_mm)), high_mm: sum(held.map(p => p.long_mm + p.over_mm)) },
    cuts: pieces.filter(p => p.when !== 'spare').length,
  };
};

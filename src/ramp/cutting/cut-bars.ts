import type { StockPlan } from '../../reckon/stock/stock-job.ts';
import { type LaidBar, layBar } from './lay-bar.ts';
import type { CutWhen } from './needed.ts';
import type { Lump, OpenBar, Question, SoldBar } from './question.ts';
import { stopOrder } from './stop-order.ts';

export type BarSource = Readonly<{ is: 'sold'; bar: SoldBar }> | Readonly<{ is: 'open'; bar: OpenBar }>;

/** One bar of a section as it is to be cut, in the order of the saw. */
export type CutBar = LaidBar &
  Readonly<{
    /** What is chalked on it: its place in the section's order from 1, what it was bought as. */
    label: string;
    source: BarSource;
    /** What there is of it before the first of these cuts, mm. */
    length_mm: number;
    /** Taken off to square it; 0 where it is square. */
    trim_mm: number;
    kg: number;
    /** What is bought with it; null without a price, 0 for what lies in the shop. */
    price: number | null;
    /** Steel that stays uncut for pieces cut to the rail as it comes out, with what they may come out longer, mm; saw cuts are not in it. */
    held_mm: number;
  }>;

export type CutBars = Readonly<{
  bars: readonly CutBar[];
  /** Times the saw's stop is set for what can be cut now or after the rails. */
  stops: number;
}>;

const PHASES: readonly CutWhen[] = ['now', 'after the rails', 'to the rail', 'spare'];
const phaseOf = (l: Lump): number => PHASES.indexOf(l.pieces[0]?.when ?? 'spare');
/** Lengths nearer than this are one setting of the stop, mm. */
const ONE_STOP = 0.1;
const stopOf = (l: Lump): number => Math.round((l.pieces[0]?.long_mm ?? 0) / ONE_STOP) * ONE_STOP;
const byName = (a: Lump, b: Lump): number => (a.name < b.name ? -1 : a.name > b.name ? 1 : 0);

/** What is chalked on a bar or a part of one, its length, and what squaring takes of its ends, mm. */
export type Blank = Readonly<{ label: string; length_mm: number; trim_mm: number }>;

/** A bar of a plan: where it comes from, and what is cut from it; and which part of that bar, where the yard cuts it. */
export type PlannedBar = Readonly<{ source: BarSource; lumps: readonly Lump[]; part?: Blank }>;

/** A solver's plan with its names and lengths turned back into pieces and bars; steel that lies in the shop first, each once. */
export const plannedBars = (q: Question, plan: StockPlan): readonly PlannedBar[] => {
  const byName = new Map(q.lumps.map(l => [l.name, l]));
  const open = [...q.open];
  const sourceOf = (bar: StockPlan['bars'][number]): BarSource => {
    const at = open.findIndex(o => Math.abs(o.left_mm + q.trim_mm - o.trim_mm - bar.length_mm) < 1e-6);
    if (at >= 0) return { is: 'open', bar: open.splice(at, 1)[0] as OpenBar };
    const sold = q.sold.find(s => Math.abs(s.length_mm - bar.length_mm) < 1e-6);
    return { is: 'sold', bar: sold ?? { length_mm: bar.length_mm, price: null } };
  };
  return plan.bars.map(bar => ({
    source: sourceOf(bar),
    lumps: bar.cuts.map(c => byName.get(c.name ?? '')).filter(l => l !== undefined),
  }));
};

/** Pieces of a bar in the order of the saw: what is cut first, one length after the other, held steel and spares last. */
const inOrder = (lumps: readonly Lump[], firstPhase: number, lengths: readonly number[]): readonly Lump[] => {
  const rank = (l: Lump): number => (phaseOf(l) === firstPhase ? lengths.indexOf(stopOf(l)) : -stopOf(l));
  return [...lumps].sort((a, b) => phaseOf(a) - phaseOf(b) || rank(a) - rank(b) || byName(a, b));
};

const heldIn = (laid: LaidBar): number =>
  laid.cuts
    .filter(c => c.piece.when === 'to the rail' && !c.piece.known)
    .reduce((sum, c) => sum + c.to_mm - c.from_mm, 0);

/**
 * A section's plan as bars to cut, in the order that sets the stop fewest times; bars with nothing but held steel come last.
 * @param numbered bars that have a number already: those to buy are numbered on from it
 */
export const cutBars = (q: Question, planned: readonly PlannedBar[], numbered = 0): CutBars => {
  const sawn = (l: Lump): boolean =>
    phaseOf(l) < PHASES.indexOf('to the rail') || l.pieces.every(p => p.known && p.when !== 'spare');
  const all = planned.flatMap(p => p.lumps);
  const firstPhase = Math.min(PHASES.length, ...all.filter(sawn).map(phaseOf));
  const stopsIn = (p: PlannedBar): readonly number[] => [
    ...new Set(p.lumps.filter(l => sawn(l) && phaseOf(l) === firstPhase).map(stopOf)),
  ];
  const first = planned.filter(p => stopsIn(p).length > 0);
  const later = planned.filter(p => stopsIn(p).length === 0);
  const stops = stopOrder(first.map(stopsIn));
  const ordered = [
    ...stops.order.map((i, k) => ({
      ...(first[i] as PlannedBar),
      lengths: stops.lengths[k] ?? [],
    })),
    ...later.map(p => ({ ...p, lengths: [] as readonly number[] })),
  ];
  let last = numbered;
  const blankOf = ({ source, part }: PlannedBar): Blank => {
    if (part !== undefined) return part;
    if (source.is === 'sold')
      return { label: String(++last), length_mm: source.bar.length_mm, trim_mm: q.trim_mm };
    const { label, left_mm, trim_mm } = source.bar;
    return { label, length_mm: left_mm, trim_mm };
  };
  return {
    stops: stops.settings,
    bars: ordered.map(({ lengths, ...bar }): CutBar => {
      const { source, lumps } = bar;
      const { label, length_mm, trim_mm } = blankOf(bar);
      const pieces = inOrder(lumps, firstPhase, lengths).flatMap(l => l.pieces);
      const laid = layBar(pieces, length_mm - trim_mm, q.kerf_mm);
      return {
        ...laid,
        label,
        source,
        length_mm,
        trim_mm,
        kg: (length_mm / 1000) * q.section.kgPerM,
        price: source.is === 'open' ? 0 : source.bar.price,
        held_mm: heldIn(laid),
      };
    }),
  };
};

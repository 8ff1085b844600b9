import { MOST_KINDS, type StockBar, type StockJob } from '../../reckon/stock/stock-job.ts';
import type { Needed } from './needed.ts';
import type { StockSection } from './stock-section.ts';

/** A length of bar the yard sells, and what it asks for one; null where the person has not said. */
export type SoldBar = Readonly<{ length_mm: number; price: number | null }>;

/** What is left of a bar, or an offcut, that lies in the shop. */
export type OpenBar = Readonly<{
  id: string;
  from: 'bought' | 'offcut';
  label: string;
  /** Before this build cut into it, mm. */
  whole_mm: number;
  /** Its end is square already: no trim is taken again. */
  squared: boolean;
  /** What squaring still takes, mm. */
  trim_mm: number;
  left_mm: number;
}>;

export const CUT_AIMS = ['price', 'bars', 'length'] as const;
/** What a plan is to have least of. */
export type CutAim = (typeof CUT_AIMS)[number];

/** Pieces that stay together in one bar. */
export type Lump = Readonly<{ name: string; pieces: readonly Needed[]; length_mm: number }>;

/** One section's cutting question: what the solver is asked, and what its answer's names and bars stand for. */
export type Question = Readonly<{
  section: StockSection;
  lumps: readonly Lump[];
  sold: readonly SoldBar[];
  open: readonly OpenBar[];
  kerf_mm: number;
  trim_mm: number;
  /** What the plan has least of: the aim asked for, or length where prices are missing. */
  by: CutAim;
  job: StockJob;
}>;

export const together = (pieces: readonly Needed[], kerf_mm: number): Lump => ({
  name: pieces.map(p => p.need).join(' + '),
  pieces,
  length_mm: pieces.reduce((sum, p) => sum + p.plan_mm, 0) + kerf_mm * (pieces.length - 1),
});

/** Curved rails come from one bar where they fit, since tubes of two bars differ; then as evenly as can be from as few as hold them. */
const paired = (rails: readonly Needed[], room_mm: number, kerf_mm: number): readonly Lump[] => {
  if (rails.length === 0) return [];
  const longest = Math.max(...rails.map(r => r.plan_mm));
  const most = Math.max(1, Math.floor((room_mm + kerf_mm) / (longest + kerf_mm) + 1e-9));
  const groups = Math.ceil(rails.length / most);
  const lumps: Lump[] = [];
  for (let g = 0, at = 0; g < groups; g++) {
    const size = Math.ceil((rails.length - at) / (groups - g));
    lumps.push(together(rails.slice(at, at + size), kerf_mm));
    at += size;
  }
  return lumps;
};

/** Steps to which lengths are rounded up, mm, until there are no more kinds than the solver takes: a measured frame has a length of its own for every piece. */
const ROUND_UP = [0, 1, 2, 5, 10, 20, 50] as const;

const lumpLengths = (lumps: readonly Lump[]): readonly number[] => {
  for (const step of ROUND_UP) {
    const lengths = lumps.map(l => (step === 0 ? l.length_mm : Math.ceil(l.length_mm / step) * step));
    if (new Set(lengths).size <= MOST_KINDS) return lengths;
  }
  return lumps.map(l => Math.ceil(l.length_mm / 100) * 100);
};

/** A bar's own cost: its price, or what stands for it where the person named none. Steel that lies in the shop costs nothing. */
const costOf = (bar: SoldBar, aim: CutAim): number =>
  aim === 'price' && bar.price !== null ? bar.price : aim === 'bars' ? 1 : bar.length_mm;

/**
 * The question for one section.
 * @param pieces still to be cut, spares among them
 * @param open what lies in the shop, used first
 * @param trim_mm for squaring a fresh bar's ends
 * @param aim what to have least of; `price` counts only where every length sold has one, and is length until then
 */
export const questionOf = (
  section: StockSection,
  pieces: readonly Needed[],
  sold: readonly SoldBar[],
  open: readonly OpenBar[],
  saw: Readonly<{ kerf_mm: number; trim_mm: number }>,
  aim: CutAim,
): Question => {
  const { kerf_mm, trim_mm } = saw;
  const rails = pieces.filter(p => p.kind === 'curved rail');
  // Parts of bars that hold a rail each lie there: no new bar is bought to have both from one.
  const there = Math.max(0, ...open.map(b => b.left_mm - b.trim_mm));
  const room = rails.every(r => r.plan_mm <= there)
    ? there
    : Math.max(...sold.map(b => b.length_mm)) - trim_mm;
  const others = pieces.filter(p => p.kind !== 'curved rail');
  const lumps = [...paired(rails, room, kerf_mm), ...others.map(p => together([p], kerf_mm))];
  const lengths = lumpLengths(lumps);
  const priced = sold.every(b => b.price !== null);
  const by: CutAim = aim === 'price' && !priced ? 'length' : aim;
  const bars: StockBar[] = [
    ...sold.map(b => ({ length_mm: b.length_mm, price: costOf(b, by) })),
    // Where squaring takes less than of a fresh bar, the bar is told that much longer.
    ...open.map(b => ({ length_mm: b.left_mm + trim_mm - b.trim_mm, count: 1, price: 0 })),
  ];
  return {
    section,
    lumps,
    sold,
    open,
    kerf_mm,
    trim_mm,
    by,
    job: {
      pieces: lumps.map((l, i) => ({ name: l.name, length_mm: lengths[i] ?? l.length_mm, count: 1 })),
      bars,
      kerf_mm,
      trim_mm,
      aim: 'price',
    },
  };
};

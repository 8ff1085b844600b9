import { type BarSaw, type SawReach, usualReach } from '../../ramp/cutting/bar-saw.ts';
import { live } from '../order.ts';
import type { MINUTES_OF, ShopEntry } from './entries.ts';
import { type Belief, type Learned, learn } from './learned.ts';

export type Offcut = Readonly<{
  id: string;
  section: string;
  length_mm: number;
  /** The build it was left of. */
  from: string | null;
  /** The build it was taken for; a used one is gone for all others. */
  usedBy: string | null;
}>;

export type BoughtBar = Readonly<{
  section: string;
  length_mm: number;
  needs: readonly string[];
  label?: string | undefined;
  trim_mm?: number | undefined;
}>;

/** Work whose minutes are learned. */
export type TimedWork = (typeof MINUTES_OF)[number];

/** The shop as its journal tells it. Total: whatever the entries say, there is a shop. */
export type Shop = Readonly<{
  /** By section, then by bar length in mm. */
  prices: ReadonlyMap<string, ReadonlyMap<number, number>>;
  /** When a price was last set, as its machine's clock had it. */
  pricedAt: string | null;
  barSizes: ReadonlyMap<string, readonly number[]>;
  offcuts: readonly Offcut[];
  /** By build. */
  bought: ReadonlyMap<string, readonly BoughtBar[]>;
  /** Kerf readings, mm, the newest last. */
  kerfs: Readonly<Record<'bars' | 'slits', readonly number[]>>;
  /** Minutes for one, as logged, the newest last. */
  minutes: Readonly<Record<TimedWork, readonly number[]>>;
  /** When minutes of each were last logged. */
  minutesAt: Readonly<Record<TimedWork, string | null>>;
  /** The saw that cuts the bars; null until said. */
  barSaw: BarSaw | null;
  aim: 'price' | 'bars' | 'length';
  carry_mm: number | null;
}>;

/** The shop that a set of entries tells, in any order they come. Never throws, never refuses. */
export const foldShop = (entries: readonly ShopEntry[]): Shop => {
  const prices = new Map<string, Map<number, number>>();
  let pricedAt: string | null = null;
  const barSizes = new Map<string, readonly number[]>();
  const offcuts = new Map<string, Offcut>();
  const bought = new Map<string, BoughtBar[]>();
  const kerfs = { bars: [] as number[], slits: [] as number[] };
  const minutes = { cut: [] as number[], slit: [] as number[], joint: [] as number[] };
  const minutesAt: Record<TimedWork, string | null> = { cut: null, slit: null, joint: null };
  let barSaw: BarSaw | null = null;
  let aim: Shop['aim'] = 'price';
  let carry_mm: number | null = null;

  const use = (id: string, build: string | null): void => {
    const offcut = offcuts.get(id);
    // '' is a build nobody knows: an offcut that went into the bin is gone for all.
    if (offcut !== undefined) offcuts.set(id, { ...offcut, usedBy: build ?? '' });
  };

  for (const e of live(entries)) {
    switch (e.kind) {
      case 'price-set': {
        const own = prices.get(e.section) ?? new Map<number, number>();
        own.set(e.bar_mm, e.price);
        prices.set(e.section, own);
        pricedAt = e.at;
        break;
      }
      case 'bar-sizes-set':
        barSizes.set(e.section, e.bars_mm);
        break;
      case 'offcut-kept':
        offcuts.set(e.id, {
          id: e.id,
          section: e.section,
          length_mm: e.length_mm,
          from: e.build ?? null,
          usedBy: null,
        });
        break;
      case 'offcut-used':
        use(e.offcut, e.build ?? null);
        break;
      case 'bars-bought':
        bought.set(e.build, [...(bought.get(e.build) ?? []), ...e.bars]);
        for (const id of e.offcuts) use(id, e.build);
        break;
      case 'saw-kerf-read':
        kerfs[e.saw].push(e.kerf_mm);
        break;
      case 'minutes-logged':
        minutes[e.what].push(e.minutes / e.count);
        minutesAt[e.what] = e.at;
        break;
      case 'machine-set':
        barSaw = e.saw;
        break;
      case 'aim-set':
        aim = e.aim;
        break;
      case 'carry-set':
        carry_mm = e.length_mm;
        break;
      case 'entry-struck':
        break;
    }
  }
  return {
    prices,
    pricedAt,
    barSizes,
    offcuts: [...offcuts.values()],
    bought,
    kerfs,
    minutes,
    minutesAt,
    barSaw,
    aim,
    carry_mm,
  };
};

/** A shop that nobody has typed anything into. */
export const EMPTY_SHOP: Shop = foldShop([]);

/** What each saw takes with a cut, mm: abrasive 2.5 to 3, metal blade 2 to 2.5, band and hand 0.9 to 1.2, thin disc 1 to 1.2 [practice]. */
const SAW_TAKES: Readonly<Record<BarSaw, readonly [number, number]>> = {
  'abrasive saw': [2.5, 3.2],
  'metal blade saw': [2, 2.5],
  'band saw': [0.9, 1.2],
  hacksaw: [0.9, 1.3],
  grinder: [1, 1.6],
};
/** A kerf read by caliper scatters by some 8 % [practice]. */
const KERF_SCATTER = 0.08;

/** Minutes of a beginner, half as long again on a first project: a cut with its burr 3 to 8; a slit's three cuts 3 to 6; a joint fitted, tacked and welded 8 to 18 [practice]. One logged batch scatters by a third. */
const MINUTES_BELIEF: Readonly<Record<TimedWork, Belief>> = {
  cut: { usual: [3, 12], scatter: 0.33 },
  slit: { usual: [3, 9], scatter: 0.33 },
  joint: { usual: [8, 27], scatter: 0.33 },
};

/** Reach of the person's saw as saws of its kind have it; what was read at the bench goes before it. */
export const shopReach = (shop: Shop): SawReach => usualReach(shop.barSaw ?? 'abrasive saw');

/** Kerf of the saw that cuts the bars, or of what cuts the slits, mm. */
export const learnedKerf = (shop: Shop, of: 'bars' | 'slits'): Learned => {
  const saw = of === 'slits' ? 'grinder' : (shop.barSaw ?? 'abrasive saw');
  return learn(shop.kerfs[of], { usual: SAW_TAKES[saw], scatter: KERF_SCATTER });
};

/** Kerf to plan bars with, mm: what was learned, else the most its saw takes, so that the last piece is not short; null while nothing is known. */
export const plannedKerf = (shop: Shop): number | null => {
  if (shop.kerfs.bars.length > 0) return learnedKerf(shop, 'bars').high;
  return shop.barSaw === null ? null : SAW_TAKES[shop.barSaw][1];
};

export const learnedMinutes = (shop: Shop, what: TimedWork): Learned =>
  learn(shop.minutes[what], MINUTES_BELIEF[what]);

/**
 * The shop's numbers as a build copies them, by name: `kerf-bars`, `kerf-slits` (mm), `minutes-cut` … (likely), `carry` (mm), and
 * `price 40x40x3 6000`. Only what was read or set: nothing that is merely usual.
 */
export const shopCopy = (shop: Shop): Readonly<Record<string, number>> => {
  const values: Record<string, number> = {};
  for (const saw of ['bars', 'slits'] as const)
    if (shop.kerfs[saw].length > 0) values[`kerf-${saw}`] = learnedKerf(shop, saw).likely;
  for (const what of ['cut', 'slit', 'joint'] as const)
    if (shop.minutes[what].length > 0) values[`minutes-${what}`] = learnedMinutes(shop, what).likely;
  for (const [section, own] of shop.prices)
    for (const [bar, price] of own) values[`price ${section} ${Math.round(bar * 10) / 10}`] = price;
  if (shop.carry_mm !== null) values.carry = shop.carry_mm;
  return values;
};

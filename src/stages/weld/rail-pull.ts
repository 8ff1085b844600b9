import { readingKey } from '../../build/fold.ts';
import { READINGS } from '../../build/reading-names.ts';
import type { RailName } from '../../ramp/design.ts';
import type { RailPlan } from '../../ramp/rail-plan.ts';
import type { Situation } from '../situation.ts';
import { halvesOf, pulledSlits, SIDES_SHARE, skipOrder } from '../weld-order.ts';

/** Two-sided 95 % of a normal belief. */
const NINETY_FIVE = 1.96;

export type Band = Readonly<{ low: number; likely: number; high: number }>;

/** What one slit's weld pulls, rad: 95 % of what is believed of it, likely value between. */
export const pullBand = (plan: RailPlan): Band => {
  const by = Math.exp(NINETY_FIVE * plan.pull.spread);
  return { low: plan.pull.rad / by, likely: plan.pull.rad, high: plan.pull.rad * by };
};

/** A range about the likely value of a band, as wide each way as the nearer end or `least`; for the question "is that what you read?". */
export const around = (b: Band, least: number): readonly [number, number] => {
  const w = Math.max(least, b.likely - b.low);
  return [b.likely - w, b.likely + w];
};

const times = (b: Band, n: number): Band => ({ low: n * b.low, likely: n * b.likely, high: n * b.high });

export const slitNumbers = (plan: RailPlan): readonly number[] => plan.slits.map(slit => slit.number);

/** The slits whose tops are welded first, and those between; each in skip order. */
export const topsOf = (plan: RailPlan): Readonly<{ odd: readonly number[]; even: readonly number[] }> => ({
  odd: skipOrder(slitNumbers(plan).filter(n => n % 2 === 1)),
  even: skipOrder(slitNumbers(plan).filter(n => n % 2 === 0)),
});

/** Bend that all welds of a rail bring, rad. */
export const pullAll = (plan: RailPlan): Band => times(pullBand(plan), plan.slits.length);

/** Bend that is in at the half-way survey, with only the sides of the first half welded, rad. */
export const pullHalf = (plan: RailPlan): Band => {
  const pull = pullBand(plan);
  const n = halvesOf(slitNumbers(plan)).first.length;
  return {
    low: n * pull.low * SIDES_SHARE.low,
    likely: n * pull.likely * SIDES_SHARE.likely,
    high: n * pull.high * SIDES_SHARE.high,
  };
};

/** Bend that all sides and the odd tops have brought, rad. */
export const pullOddTops = (plan: RailPlan): Band => {
  const pull = pullBand(plan);
  const n = plan.slits.length;
  const odd = topsOf(plan).odd.length;
  const at = (share: number): number => pulledSlits(n, odd, share);
  return {
    low: pull.low * at(SIDES_SHARE.low),
    likely: pull.likely * at(SIDES_SHARE.likely),
    high: pull.high * at(SIDES_SHARE.high),
  };
};

/** Bend the rail was tacked to, rad: as read after its last third, else as it was to be tacked. */
export const tackedBend = (s: Situation, plan: RailPlan): number => {
  const last = plan.slits.at(-1)?.third;
  const read =
    last === undefined ? undefined : s.build.readings.get(readingKey(READINGS.bent(plan.rail, last), 'bent'));
  return read?.value ?? plan.tack.turn_rad;
};

export const KEYS = {
  sidesFirst: (rail: RailName) => `weld/sides-first@${rail}`,
  half: (rail: RailName) => `weld/half-survey@${rail}`,
  sidesRest: (rail: RailName) => `weld/sides-rest@${rail}`,
  topsOdd: (rail: RailName) => `weld/tops-odd@${rail}`,
  readTops: (rail: RailName) => `weld/read-tops@${rail}`,
  topsEven: (rail: RailName) => `weld/tops-even@${rail}`,
  cool: (rail: RailName) => `weld/cool@${rail}`,
  bend: (rail: RailName) => `weld/read-bend@${rail}`,
  cold: (rail: RailName) => `weld/cold-survey@${rail}`,
} as const;

/**
 * Bend the rail is foreseen to have when cold, rad. Before any top is read: what was tacked and the whole pull believed. Once the bend
 * with the odd tops in is read, the pull that this rail shows is taken for the tops to come.
 */
export const bendForeseen = (s: Situation, plan: RailPlan): Band => {
  const tacked = tackedBend(s, plan);
  const read = s.build.readings.get(readingKey(KEYS.readTops(plan.rail), 'bent'));
  if (read === undefined) {
    const all = pullAll(plan);
    return { low: tacked + all.low, likely: tacked + all.likely, high: tacked + all.high };
  }
  const gained = Math.max(0, read.value - tacked);
  const n = plan.slits.length;
  const odd = topsOf(plan).odd.length;
  const left = (share: number): number =>
    ((n - odd) * (1 - share) * gained) / Math.max(1e-9, pulledSlits(n, odd, share));
  return {
    low: read.value + left(SIDES_SHARE.high),
    likely: read.value + left(SIDES_SHARE.likely),
    high: read.value + left(SIDES_SHARE.low),
  };
};

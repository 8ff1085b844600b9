import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { need, type Part, partsOf, SUPPLIES, type Supply, there, toldBy, weldsOf } from './supplies.ts';
import { amount, FLOW_l_min } from './supplies-steps.ts';

/** A plain bead against a beginner's full one, as a share of its metal (1.15 of 1.3; common practice). */
const PLAIN_BEAD = 1.15 / 1.3;
/** A rod burnt to its usual stub against one laid aside early: 50 mm and 80 mm of 350 (common practice; derived). */
const WHOLE_ROD = 270 / 300;
/** Minutes to fetch more, to set for less, to mark where to stop (our own judgement). */
const MINUTES = { fetch: 90, save: 15, part: 5 } as const;

/** What thrift leaves of the use. */
const THRIFT: Readonly<Record<Supply, number>> = {
  gas: FLOW_l_min.least / FLOW_l_min.likely,
  wire: PLAIN_BEAD,
  rods: WHOLE_ROD,
};

/** Steps of a part that nothing should stop half way. */
const hotSteps = (s: Situation, part: Part): readonly string[] => {
  switch (part) {
    case 'rails':
      return s.ramp.rails.flatMap(rail => [`weld/sides-first@${rail}`, `weld/tops-odd@${rail}`]);
    case 'sides':
      return s.ramp.rails.flatMap(rail => [`brace/fit-uprights@${rail}`, `brace/weld-uprights@${rail}`]);
    case 'frame':
      return ['assemble/crossmembers', 'assemble/weld-joints', 'assemble/weld'];
  }
};

/** The part is welded: nothing is short for it any more. */
const isOver = (s: Situation, part: Part): boolean => {
  const { ticks, skips, surveys } = s.build;
  const read = (phase: 'cold' | 'unclamped'): boolean =>
    s.ramp.rails.every(rail => surveys.some(x => x.closed && x.rail === rail && x.phase === phase));
  if (part === 'rails') return read('cold');
  if (part === 'sides') return read('unclamped');
  return ticks.has('assemble/weld') || skips.has('assemble/weld');
};

const findingFor = (s: Situation, part: Part, supply: Supply): Finding | null => {
  const left = there(s, part, supply);
  const use = need(s, part, supply);
  if (left === null || use === null || left >= use.high || isOver(s, part)) return null;
  const { slits, joints } = weldsOf(s, part);
  const all = slits + joints;
  const reach = Math.floor((all * left) / use.high);
  const saved = use.likely * THRIFT[supply];
  const fills: Fills = {
    left: amount(s, supply, left),
    low: amount(s, supply, use.low),
    likely: amount(s, supply, use.likely),
    high: amount(s, supply, use.high),
    lack: amount(s, supply, use.high - left),
    saved: amount(s, supply, saved),
    flow: { v: FLOW_l_min.least, as: 'flow' },
    reach,
    all,
  };
  const plan = { part, left, likely: use.likely, high: use.high };
  const offers: readonly Offer[] = [
    { remedy: `${supply}-fetch`, fills, minutes: MINUTES.fetch, plan },
    ...(reach > 0
      ? [{ remedy: `${supply}-part`, fills, minutes: MINUTES.part, plan: { ...plan, reach } }]
      : []),
    { remedy: `${supply}-save`, fills, minutes: MINUTES.save, plan: { ...plan, saved } },
    { remedy: `leave-${supply}`, fills, minutes: 0, plan },
  ];
  const short = left < use.likely;
  return {
    key: `${supply}-short@${part}#${toldBy(s, part, supply)}`,
    stage: 'prep',
    severity: short ? 'fix' : 'watch',
    words: short ? `${supply}-short` : `${supply}-tight`,
    fills,
    offers: sortOffers(offers),
    ...(short ? { blocks: hotSteps(s, part) } : {}),
  };
};

/** Not enough of something for the part that is welded next: a bead that ends in the middle is ground out again. */
export const suppliesFindings = (s: Situation): readonly Finding[] =>
  partsOf(s).flatMap(part =>
    SUPPLIES.map(supply => findingFor(s, part, supply)).filter(found => found !== null),
  );

import { learnedUse, thinDiscs, type Use } from '../../reckon/welding/consumption.ts';
import { railTurn } from '../order.ts';
import type { Ask, Fills, Finding, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sawItemKey } from '../slit-strip.ts';
import { sortOffers } from '../sort-offers.ts';
import { once } from './once.ts';

/** Third of a rail before which the discs are counted again: what the first wore is known by then. */
const COUNTED_BEFORE = 2;
const MINUTES = { fetch: 60, slow: 15 } as const;
/** Cuts without pushing, disc kept for slits alone: so much of the wear (common practice). */
const GENTLE = 0.75;
/** Discs bought with the job; a count of more is no surprise. */
const IN_HAND = 15;

const leftKey = (rail: string): string => `prep/discs-left@${rail}`;

type Count = Readonly<{ left: number; at: number; entry: string; rail: string | null }>;

/** Section of one slit, mm². */
const slitArea = (s: Situation): number => {
  const { width_mm, depth_mm, wall_mm } = s.ramp.design.tube;
  return (width_mm + 2 * (depth_mm - 2 * wall_mm)) * wall_mm;
};

const isDisc = (s: Situation): boolean =>
  s.ramp.design.route === 'slit' && s.ramp.design.cutter.kind === 'thin disc';

/** Ticks of sawn slits, as times; slits still to be sawn. */
const sawn = once((s): Readonly<{ at: readonly number[]; toGo: number }> => {
  const at: number[] = [];
  let toGo = 0;
  for (const plan of s.ramp.plans.values())
    for (const slit of plan.slits) {
      const tick = s.build.ticks.get(sawItemKey(plan.rail, slit.third, slit.number));
      if (tick === undefined) toGo++;
      else at.push(Date.parse(tick.at));
    }
  return { at, toGo };
});

/** Counts of discs in hand, each when it was made. */
const countsOf = once((s): readonly Count[] =>
  [null, ...s.ramp.rails]
    .flatMap((rail): readonly Count[] => {
      const read = s.build.readings.get(rail === null ? 'prep/discs#thin' : `${leftKey(rail)}#thin`);
      return read === undefined
        ? []
        : [{ left: read.value, at: Date.parse(read.at), entry: read.entry, rail }];
    })
    .sort((a, b) => a.at - b.at),
);

/** Discs that the slits still to be sawn wear, by what those before wore. */
const needOf = (s: Situation, counts: readonly Count[]): Use => {
  const { at, toGo } = sawn(s);
  const area = slitArea(s);
  const logged = counts.slice(1).flatMap((now, i) => {
    const before = counts[i] as Count;
    const between = at.filter(t => t > before.at && t <= now.at).length;
    const used = before.left - now.left;
    return used < 0 || between === 0 ? [] : [{ used, likely: thinDiscs(between * area).likely }];
  });
  const use = learnedUse(thinDiscs(toGo * area), logged);
  return { low: Math.ceil(use.low), likely: Math.ceil(use.likely), high: Math.ceil(use.high) };
};

/** Thin discs in hand, asked where slits are sawn with them. */
export const discsAsk = (s: Situation): readonly Ask[] => {
  if (!isDisc(s)) return [];
  const most = needOf(s, []).high;
  return [{ ask: 'thin', as: 'count', expected: [most, most + IN_HAND], possible: [0, 500] }];
};

/** Discs are counted again on each rail after its first third. */
export const discsLeftSteps = (s: Situation): readonly StepDraft[] => {
  if (!isDisc(s)) return [];
  const need = needOf(s, countsOf(s));
  return s.ramp.rails.flatMap((rail, i): readonly StepDraft[] => {
    const plan = s.ramp.plans.get(rail);
    const first = plan?.slits.filter(slit => slit.third < COUNTED_BEFORE) ?? [];
    if (plan === undefined || first.length === plan.slits.length || first.length === 0) return [];
    return [
      {
        key: leftKey(rail),
        stage: 'prep',
        words: 'discs-left',
        fills: { rail, low: need.low, likely: need.likely, high: need.high, slits: sawn(s).toGo },
        turn: railTurn(s.ramp.design, i, { third: COUNTED_BEFORE, part: 'mark' }) - 2,
        needs: [`cut/saw-third@${rail}:1`],
        uses: [],
        asks: [{ ask: 'thin', as: 'count', expected: [need.high, need.high + IN_HAND], possible: [0, 500] }],
        minutes: [1, 2],
      },
    ];
  });
};

/** Fewer discs than the slits to come are likely to wear: a worn one is the one that grabs. */
export const discsFindings = (s: Situation): readonly Finding[] => {
  if (!isDisc(s)) return [];
  const counts = countsOf(s);
  const last = counts.at(-1);
  if (last === undefined) return [];
  const need = needOf(s, counts);
  const { at, toGo } = sawn(s);
  // Slits sawn since the count wore some of what was counted.
  const since = at.filter(t => t > last.at).length;
  if (toGo === 0 || since > 0 || last.left >= need.likely) return [];
  const fills: Fills = {
    left: last.left,
    low: need.low,
    likely: need.likely,
    high: need.high,
    lack: need.high - last.left,
    slits: toGo,
    reach: Math.floor((toGo * last.left) / Math.max(1, need.high)),
    saved: Math.ceil(need.likely * GENTLE),
  };
  const plan = { left: last.left, likely: need.likely, high: need.high };
  return [
    {
      key: `discs-short@${last.entry}`,
      stage: 'prep',
      severity: 'watch',
      words: 'discs-short',
      fills,
      offers: sortOffers([
        { remedy: 'discs-fetch', fills, minutes: MINUTES.fetch, plan },
        { remedy: 'discs-save', fills, minutes: MINUTES.slow, plan },
        { remedy: 'leave-discs', fills, minutes: 0, plan },
      ]),
    },
  ];
};

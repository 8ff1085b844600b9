import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import { tubeMassPerMetre } from '../../ramp/mass.ts';
import { MOVE_FROM, STOP_FROM } from '../../reckon/rail/hot-sag.ts';
import { bestRow, type HotRail, type HotRow, hotRow, indexOf } from '../../reckon/rail/hot-supports.ts';
import { railTurn } from '../order.ts';
import type { Figure, Fills, Finding, Offer, StepDraft } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';
import { YIELD_MPa } from './limits.ts';

export const SUPPORTS = 'tack/supports';

/** A back wall beside a pass that is being laid, °C (derived from the soft zone of a single pass; common practice to look at 600 to 800). */
const HOT_C = 700;
/** More supports than this are a board. */
const MOST = 9;
/** What is asked for where nothing was said yet (common practice: ends, and between by a short arm's length). */
const USUAL = 4;
/** Minutes to set one support level, and to strap a rail to a plank again (common practice). */
const MINUTES = { support: 5, plank: 15 } as const;

const length = (v: number) => ({ v, as: 'length' }) as const;
const percent = (v: number) => ({ v: 100 * v, as: 'percent' }) as const;

/** The longest of the rails: what carries it carries the others. */
const longestRail = (s: Situation): RailName | null =>
  s.ramp.rails.reduce<RailName | null>((long, rail) => {
    const mm = (r: RailName | null) => (r === null ? -1 : (s.ramp.plans.get(r)?.toLip_mm ?? 0));
    return mm(rail) > mm(long) ? rail : long;
  }, null);

type Hot = Readonly<{ rail: HotRail; count: number; best: HotRow; stands: HotRow | null; entry: string }>;

const railKept = new Map<string, HotRow>();
const KEPT = 64;

/** Rows are looked for at every key press; the same rail has the same. */
const bestFor = (rail: HotRail, count: number): HotRow => {
  const key = JSON.stringify([rail, count]);
  const known = railKept.get(key);
  if (known !== undefined) return known;
  const row = bestRow(rail, count);
  if (railKept.size >= KEPT) railKept.clear();
  railKept.set(key, row);
  return row;
};

const hotOf = (s: Situation): Hot | null => {
  const name = longestRail(s);
  const plan = name === null ? undefined : s.ramp.plans.get(name);
  if (name === null || plan === undefined || plan.slits.length === 0) return null;
  const tube = { ...s.ramp.design.tube, ...s.measured.tubes.get(name) };
  const read = s.build.readings.get(readingKey(SUPPORTS, 'supports'));
  const first = s.build.readings.get(readingKey(SUPPORTS, 'first'));
  const rail: HotRail = {
    tube: {
      width_mm: tube.width_mm,
      depth_mm: tube.depth_mm,
      wall_mm: tube.wall_mm,
      yield_MPa: YIELD_MPa,
      mass_kg_m: tubeMassPerMetre(tube),
    },
    length_mm: plan.toLip_mm,
    slits_mm: plan.slits.map(slit => slit.at_mm),
    hot_C: HOT_C,
    slits_up: true,
  };
  const count = Math.min(MOST, Math.max(1, Math.round(read?.value ?? USUAL)));
  const best = bestFor(rail, count);
  const stands =
    read === undefined ? null : first === undefined || count < 2 ? best : hotRow(rail, count, first.value);
  const entry = `${read?.entry ?? ''}:${first?.entry ?? ''}`;
  return { rail, count, best, stands, entry };
};

/** Share of what a hot slit holds that the rail's own weight asks of the worst one. */
export const hotFigures = (s: Situation): readonly Figure[] => {
  const hot = hotOf(s);
  if (hot === null) return [];
  return [
    {
      id: 'hot-share',
      kind: 'size',
      as: 'percent',
      value:
        hot.stands === null
          ? { is: 'unknown', needs: SUPPORTS }
          : { is: 'exact', v: 100 * indexOf(hot.stands) },
      matters: 5,
    },
  ];
};

/** How many supports there are, and where they go: asked once for all rails, before the first is carried to them. */
export const hotSteps = (s: Situation): readonly StepDraft[] => {
  const hot = hotOf(s);
  if (hot === null) return [];
  return [
    {
      key: SUPPORTS,
      stage: 'tack',
      words: 'supports',
      fills: {
        count: hot.count,
        over: length(hot.best.over_mm),
        apart: length(hot.best.apart_mm),
        share: percent(indexOf(hot.best)),
      },
      turn: railTurn(s.ramp.design, 0, { after: 'survey', at: 14 }),
      needs: [],
      uses: [],
      asks: [
        { ask: 'supports', as: 'count', expected: [USUAL - 1, USUAL + 1], possible: [1, MOST] },
        { ask: 'first', as: 'length', possible: [0, 0.45 * hot.rail.length_mm], optional: true },
      ],
      minutes: [5, 10],
    },
  ];
};

/** Fewest supports over which the worst slit holds what it has to, or the most that are looked at. */
const enough = (rail: HotRail, from: number): number => {
  for (let n = from; n < MOST; n++) if (indexOf(bestFor(rail, n)) < MOVE_FROM) return n;
  return MOST;
};

/** Supports that leave a hot slit more of the rail's weight than it should bear. */
export const hotFindings = (s: Situation): readonly Finding[] => {
  const hot = hotOf(s);
  const { stands } = hot ?? {};
  if (hot === null || stands === null || stands === undefined) return [];
  const share = indexOf(stands);
  if (share < MOVE_FROM) return [];
  const over = stands.slits.filter(x => x.index >= MOVE_FROM);
  const opened = over.filter(x => !x.closes).map(x => stands.slits.indexOf(x) + 1);
  const worst = stands.slits[stands.worst];
  const count = enough(hot.rail, hot.count + 1);
  const more = bestFor(hot.rail, count);
  const after = (v: number): NonNullable<Offer['after']> => ({ ...percent(v), within: v < MOVE_FROM });
  const fills: Fills = {
    count: hot.count,
    share: percent(share),
    limit: percent(MOVE_FROM),
    slit: stands.worst + 1,
    slits: over.length,
    opened: opened.length,
    over: length(stands.over_mm),
  };
  const moved = {
    from: length(stands.over_mm),
    over: length(hot.best.over_mm),
    apart: length(hot.best.apart_mm),
  };
  const added = { more: count, over: length(more.over_mm), apart: length(more.apart_mm) };
  const offers: Offer[] = [
    { remedy: 'hot-plank', fills, minutes: MINUTES.plank, plan: {}, after: after(0) },
    {
      remedy: 'hot-more',
      fills: { ...fills, ...added },
      minutes: MINUTES.support * (count - hot.count),
      plan: { count, over_mm: more.over_mm, apart_mm: more.apart_mm },
      after: after(indexOf(more)),
    },
    { remedy: 'leave-hot', fills, minutes: 0, plan: {}, after: after(share) },
  ];
  if (share - indexOf(hot.best) > 0.05)
    offers.push({
      remedy: 'hot-move',
      fills: { ...fills, ...moved },
      minutes: MINUTES.support * hot.count,
      plan: { count: hot.count, over_mm: hot.best.over_mm, apart_mm: hot.best.apart_mm },
      after: after(indexOf(hot.best)),
    });
  return [
    {
      key: `hot-sag:${hot.entry}`,
      stage: 'tack',
      severity: share > STOP_FROM ? 'fix' : 'watch',
      words: worst?.closes === true ? 'hot-sag-closes' : 'hot-sag-opens',
      fills,
      tall: percent(share),
      limit: percent(MOVE_FROM),
      offers: sortOffers(offers),
      ...(share > STOP_FROM ? { blocks: s.ramp.rails.map(rail => `weld/sides-first@${rail}`) } : {}),
    },
  ];
};

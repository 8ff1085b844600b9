import type { HeldBar } from '../../ramp/cutting/bars-left.ts';
import type { Have } from '../../ramp/cutting/order.ts';
import { CARRY } from '../../ramp/cutting/usual-stock.ts';
import type { Build } from '../fold.ts';
import { type BoughtBar, type Offcut, plannedKerf, type Shop } from './shop.ts';

/** Kerf, prices, bars and offcuts of the shop, and what the build has sawn, as a cutting order takes them. */
export const haveOf = (build: Build, buildId: string, shop: Shop): Have => {
  const bought = shop.bought.get(buildId);
  const offcuts = new Map<string, HeldBar[]>();
  for (const o of shop.offcuts) {
    // What this build left behind is counted with its bars already.
    if (o.from === buildId || isElsewhere(o, buildId)) continue;
    const bar: HeldBar = {
      id: o.id,
      from: 'offcut',
      length_mm: o.length_mm,
      label: `x${offcuts.get(o.section)?.length ?? 0}`,
      needs: [],
    };
    offcuts.set(o.section, [...(offcuts.get(o.section) ?? []), bar]);
  }
  return {
    barSizes: shop.barSizes,
    prices: shop.prices,
    bought: bought === undefined ? null : bySection(bought),
    offcuts,
    sawn: [
      ...build.pieces.map(p => ({
        need: p.need,
        section: p.section,
        length_mm: p.length_mm,
        spoiled: p.fate === 'spoiled' || build.chosen.some(c => c.plan.spoils === p.id),
      })),
      ...shop.offcuts.filter(o => o.from === buildId && isElsewhere(o, buildId)).map(endGone),
    ],
    // A build that was moved to another folder still has the kerf it began with.
    kerf_mm: plannedKerf(shop) ?? build.shop['kerf-bars'] ?? null,
    aim: shop.aim,
    carry_mm: shop.carry_mm ?? CARRY[build.system],
  };
};

/** Another build took it, or it went into the bin. */
const isElsewhere = (o: Offcut, buildId: string): boolean => o.usedBy !== null && o.usedBy !== buildId;

/** An end of this build's own bars that is no longer there: its steel is used, for no piece of this build. */
const endGone = (o: Offcut) => ({
  need: `end ${o.id}`,
  section: o.section,
  length_mm: o.length_mm,
  spoiled: true,
  isEnd: true as const,
});

const bySection = (bars: readonly BoughtBar[]) => {
  const map = new Map<string, HeldBar[]>();
  bars.forEach(b => {
    const own = map.get(b.section) ?? [];
    own.push({
      id: `${b.section}#${own.length + 1}`,
      from: 'bought',
      length_mm: b.length_mm,
      // Bars bought before parts had a name are numbered as they were listed.
      label: b.label ?? String(own.length + 1),
      ...(b.trim_mm === undefined ? {} : { trim_mm: b.trim_mm }),
      needs: b.needs,
    });
    map.set(b.section, own);
  });
  return map;
};

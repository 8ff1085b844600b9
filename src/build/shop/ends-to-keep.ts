import { LEAST_OFFCUT, SAME_END, type WorkedBar } from '../../ramp/cutting/bars-left.ts';
import type { ShopDoing } from './entries.ts';
import type { Offcut, Shop } from './shop.ts';

/** Bars of one section, as a build leaves them. */
export type Left = Readonly<{ section: string; worked: readonly WorkedBar[] }>;

/** An offcut that nobody sawed or put aside for this build still lies in the shop as it lay there. */
const isTouched = (bar: WorkedBar, offcut: Offcut | undefined, build: string): boolean =>
  bar.from === 'bought' || bar.sawn.length > 0 || offcut?.usedBy === build;

/**
 * What is written to the shop when the last piece of a build is cut: its ends worth keeping, offcuts it sawed as used, and ends
 * kept earlier that have been cut since as gone. Nothing for what is written already, so that it can be asked for again.
 * @param build name by which the shop knows the build
 */
export const endsToKeep = (left: readonly Left[], shop: Shop, build: string): readonly ShopDoing[] => {
  const doings: ShopDoing[] = [];
  const mine = shop.offcuts.filter(o => o.from === build);
  const matched = new Set<string>();
  for (const { section, worked } of left) {
    for (const bar of worked) {
      const offcut = shop.offcuts.find(o => o.id === bar.id);
      if (!isTouched(bar, offcut, build)) continue;
      if (offcut !== undefined && offcut.usedBy === null)
        doings.push({ kind: 'offcut-used', offcut: offcut.id, build });
      if (bar.left_mm < LEAST_OFFCUT) continue;
      const kept = mine.find(
        o => !matched.has(o.id) && o.section === section && Math.abs(o.length_mm - bar.left_mm) < SAME_END,
      );
      if (kept === undefined)
        doings.push({ kind: 'offcut-kept', section, length_mm: bar.left_mm, typed: '', build });
      else matched.add(kept.id);
    }
  }
  const gone = mine.filter(o => !matched.has(o.id) && o.usedBy === null);
  return [...doings, ...gone.map((o): ShopDoing => ({ kind: 'offcut-used', offcut: o.id, build }))];
};

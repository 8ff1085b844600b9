import { nextN } from '../build/order.ts';
import { type ShopDoing, type ShopEntry, understandShop } from '../build/shop/entries.ts';
import { foldShop, type Shop, shopCopy } from '../build/shop/shop.ts';
import { type Clock, clock } from '../machine/clock.ts';
import { newId } from '../machine/ids.ts';
import type { JournalFile } from '../machine/journal-file.ts';
import { lookIntoShop, openShop, shopFolder } from '../machine/shop-file.ts';

/** The shop beside the builds: what it remembers, and the one way anything is written to it. */
export type ShopKeeper = Readonly<{
  shop(): Shop;
  /** Writes one entry. Null when it is on disk, else why it is not. */
  act(doing: ShopDoing): string | null;
  /** Takes back the last entry that was written here; false when there is none. */
  takeBack(): boolean;
}>;

/**
 * The shop of the folder a build lies in. Nothing is made on disk before the first entry; a shop that cannot be read is an empty
 * one that says why when it is written to.
 */
export const openShopKeeper = (buildPath: string, now: Clock = clock): ShopKeeper => {
  const folder = shopFolder(buildPath);
  let file: JournalFile<ShopEntry> | null = null;
  let trouble: string | null = null;
  const looked = lookIntoShop(folder, understandShop);
  if (looked.ok) file = looked.value;
  else trouble = looked.fault.message;
  const written: string[] = [];
  let shop = foldShop(file?.reading().entries ?? []);

  const write = (doing: ShopDoing): string | null => {
    if (trouble !== null) return trouble;
    if (file === null) {
      const opened = openShop(folder, understandShop, now);
      if (!opened.ok) return opened.fault.message;
      file = opened.value;
    }
    // Another program may have written to the shop since: what it wrote is read first.
    if (file.changed()) file.reload();
    const id = newId();
    const entry = {
      id,
      n: nextN(file.reading().stored),
      v: 1,
      at: now().toISOString(),
      ...doing,
    } as ShopEntry;
    const done = file.append(entry);
    shop = foldShop(file.reading().entries);
    if (doing.kind !== 'entry-struck') written.push(id);
    return done.ok ? null : done.fault.message;
  };

  return {
    shop: () => shop,
    act: write,
    takeBack: () => {
      const last = written.pop();
      return last !== undefined && write({ kind: 'entry-struck', target: last }) === null;
    },
  };
};

/** The numbers of a folder's shop, for a build that begins there; none where there is no shop yet, or it cannot be read. */
export const shopNumbers = (folder: string): Readonly<Record<string, number>> => {
  const looked = lookIntoShop(folder, understandShop);
  return looked.ok && looked.value !== null ? shopCopy(foldShop(looked.value.reading().entries)) : {};
};

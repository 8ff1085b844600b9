import type { Shop } from '../../build/shop/shop.ts';
import type { View } from '../../coach/view.ts';
import type { Look } from '../../drawing/row.ts';
import type { Voice } from '../../words/say.ts';

/** Where what was entered is now. */
export type DiskState =
  | Readonly<{ is: 'on disk'; at: string | null }>
  | Readonly<{ is: 'not on disk'; why: string }>
  | Readonly<{ is: 'read only'; why: string }>;

/** What every page is drawn from. */
export type PageContext = Readonly<{
  view: View;
  voice: Voice;
  look: Look;
  disk: DiskState;
  /** What the shop has learned; absent where a page is drawn without one. */
  shop?: Shop;
  /** Row 22: what was last done, or why a key did nothing. */
  message: string | null;
}>;

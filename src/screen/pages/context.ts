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
  /** Row 22: what was last done, or why a key did nothing. */
  message: string | null;
}>;

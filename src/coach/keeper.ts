import type { Doing, Entry } from '../build/entries.ts';
import { nextN } from '../build/order.ts';
import { understandEntry } from '../build/versions/understand.ts';
import { type Clock, clock } from '../machine/clock.ts';
import type { FileFault } from '../machine/file-fault.ts';
import { newId } from '../machine/ids.ts';
import type { WriteFault } from '../machine/journal-file.ts';
import { type OpenBuild, openBuild } from '../machine/open-build.ts';
import type { Outcome } from '../quantity/outcome.ts';
import type { Answers } from '../stages/situation.ts';
import { decide } from './decide/decide.ts';
import type { Refusal } from './decide/refusal.ts';
import type { Intent } from './intents.ts';
import { type View, viewOf } from './view.ts';

/** What came of an act: the entry that is now on disk (or waits for it), or why not. */
export type Acted =
  | { readonly is: 'kept'; readonly entry: Entry; readonly view: View; readonly unwritten: WriteFault | null }
  | { readonly is: 'refused'; readonly refusal: Refusal }
  | { readonly is: 'barred'; readonly why: string };

/** An open build with its view: the one way anything is written to it, from the bench and from `log` alike. */
export type Keeper = Readonly<{
  path: string;
  open: OpenBuild<Entry>;
  view(): View;
  act(intent: Intent): Acted;
  /** Answers to heavy questions: a new map, a new view. */
  know(answers: Answers): View;
  /** Reads the clock anew, for pages that show one. */
  refresh(): View;
}>;

/** A doing as the entry it becomes: id, count and time. */
export const stamp = (doing: Doing, entries: readonly { n: number; id: string }[], now: Clock): Entry =>
  ({ id: newId(), n: nextN(entries), v: 1, at: now().toISOString(), ...doing }) as Entry;

/** Opens a build; one held by another program opens to be looked at. */
export const openKeeper = (
  path: string,
  options: { now?: Clock; takeOver?: boolean } = {},
): Outcome<Keeper, FileFault> => {
  const now = options.now ?? clock;
  const opened = openBuild<Entry>(path, {
    understand: understandEntry,
    now,
    ...(options.takeOver === undefined ? {} : { takeOver: options.takeOver }),
  });
  if (!opened.ok) return opened;
  const open = opened.value;
  let answers: Answers = new Map();
  let view = viewOf(open.journal.reading().entries, now().getTime(), answers);
  const renew = (): View => {
    view = viewOf(open.journal.reading().entries, now().getTime(), answers);
    return view;
  };
  return {
    ok: true,
    value: {
      path,
      open,
      view: () => view,
      know: known => {
        answers = known;
        return renew();
      },
      refresh: renew,
      act: intent => {
        const barred = open.barred();
        if (barred !== null) return { is: 'barred', why: barred };
        const decided = decide(view, intent);
        if (!decided.ok) return { is: 'refused', refusal: decided.refusal };
        const entry = stamp(decided.value, open.journal.reading().stored, now);
        const written = open.journal.append(entry);
        if (!written.ok && !written.fault.waits) return { is: 'barred', why: written.fault.message };
        return { is: 'kept', entry, view: renew(), unwritten: written.ok ? null : written.fault };
      },
    },
  };
};

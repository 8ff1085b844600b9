import type { Entry } from '../build/entries.ts';
import type { System } from '../quantity/quantities.ts';
import { decide } from './decide/decide.ts';
import type { Decided } from './decide/refusal.ts';
import { stamp } from './keeper.ts';
import { viewOf } from './view.ts';

/**
 * The first entries of a new build: its beginning, the shop's numbers as they stand, the answers given (each through the same refusals as at the bench), and,
 * when asked, the agreement that ends the questions.
 * @param shop numbers of the shop by name, as `shopCopy` gives them; nothing is written where there are none
 */
export const newBuildEntries = (
  name: string,
  system: System,
  answers: readonly { field: string; value: unknown }[],
  now: () => Date,
  agree: boolean,
  invented = false,
  shop: Readonly<Record<string, number>> = {},
): Decided<readonly Entry[]> => {
  const entries: Entry[] = [
    stamp({ kind: 'build-begun', name, system, ...(invented ? { invented: true } : {}) }, [], now),
  ];
  if (Object.keys(shop).length > 0)
    entries.push(stamp({ kind: 'shop-copied', values: { ...shop } }, entries, now));
  const view = () => viewOf(entries, now().getTime());
  for (const { field, value } of answers) {
    const decided = decide(view(), { do: 'answer', field, value });
    if (!decided.ok) return decided;
    entries.push(stamp(decided.value, entries, now));
  }
  if (agree) {
    const decided = decide(view(), { do: 'agree' });
    if (!decided.ok) return decided;
    entries.push(stamp(decided.value, entries, now));
  }
  return { ok: true, value: entries };
};

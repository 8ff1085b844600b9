import type { Entry } from '../build/entries.ts';
import type { System } from '../quantity/quantities.ts';
import { decide } from './decide/decide.ts';
import type { Decided } from './decide/refusal.ts';
import { stamp } from './keeper.ts';
import { viewOf } from './view.ts';

/**
 * The first entries of a new build: its beginning, the answers given (each through the same refusals as at the bench), and,
 * when asked, the agreement that ends the questions.
 */
export const newBuildEntries = (
  name: string,
  system: System,
  answers: readonly { field: string; value: unknown }[],
  now: () => Date,
  agree: boolean,
  invented = false,
): Decided<readonly Entry[]> => {
  const entries: Entry[] = [
    stamp({ kind: 'build-begun', name, system, ...(invented ? { invented: true } : {}) }, [], now),
  ];
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

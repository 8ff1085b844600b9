import type { Doing, Entry } from '../../src/build/entries.ts';
import { measuredOf } from '../../src/build/facts.ts';
import { fold } from '../../src/build/fold.ts';
import { rampOf } from '../../src/ramp/ramp.ts';
import { deckThickness, settle } from '../../src/ramp/settle.ts';
import type { Situation } from '../../src/stages/situation.ts';

export const NOW = Date.parse('2026-11-20T19:00:00Z');

/** Doings stamped as entries, in order, an hour apart, ending now. Ids are entry-1, entry-2 … unless the doing names its own. */
export const entriesOf = (doings: readonly (Doing & { id?: string })[]): Entry[] =>
  doings.map(
    (doing, i) =>
      ({
        id: `entry-${i + 1}`,
        ...doing,
        n: i + 1,
        v: 1,
        at: new Date(NOW - (doings.length - i) * 3_600_000).toISOString(),
      }) as Entry,
  );

/** What a stage sees of a build told by these doings. */
export const situationFor = (
  doings: readonly Doing[],
  answers: Situation['answers'] = new Map(),
): Situation => {
  const build = fold(entriesOf(doings));
  const planned = settle(build.name, build.system, build.answers);
  if (!planned.ok) throw new Error(planned.fault.message);
  const measured = measuredOf(build, {
    tube: planned.value.tube,
    deck_mm: deckThickness(planned.value.deck),
  });
  const ramp = rampOf(build.name, build.system, build.answers, measured);
  if (!ramp.ok) throw new Error(ramp.fault.message);
  return { build, measured, ramp: ramp.value, answers, now: NOW };
};

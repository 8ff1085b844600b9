import type { Item } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { roundsOf } from '../weld-order.ts';

/**
 * Slits in their order, and after every round a pause that no clock ends: hand-warm before the next arc. After the first round of a
 * rail it is looked at before more is welded.
 */
export const roundItems = (
  key: string,
  order: readonly number[],
  of: Readonly<{ look: boolean; slitNote: string }>,
): readonly Item[] =>
  roundsOf(order).flatMap((round, r): Item[] => [
    ...round.map(
      (slit): Item => ({
        key: `${key}#${slit}`,
        name: String(slit),
        note: { words: `says.${of.slitNote}` },
      }),
    ),
    {
      key: `${key}#warm-${r + 1}`,
      name: 'cold',
      note: { words: 'says.weld-hand-warm', fills: { slits: round.join(', ') } },
    },
    ...(of.look && r === 0
      ? [{ key: `${key}#look`, name: 'look', note: { words: 'says.weld-first-look' } } satisfies Item]
      : []),
  ]);

/** The next slit of a list that is not done: what the drawing lights. */
export const openSlit = (s: Situation, items: readonly Item[]): number | undefined => {
  const open = items.find(i => /#\d+$/.test(i.key) && !s.build.ticks.has(i.key) && !s.build.skips.has(i.key));
  return open === undefined ? undefined : Number(open.name);
};

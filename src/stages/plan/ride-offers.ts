import type { Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { MENDED_WITH } from './mended-with.ts';
import { changed } from './ride-change.ts';
import { rideOf, verdictsOf } from './ride-facts.ts';
import { WAYS } from './ride-ways.ts';

/** Minutes of a change that is only said. */
const MINUTES = 3;

/** Warnings that a further step of the same change may take away. */
const WARNED: ReadonlySet<string> = new Set(['fall-hard', 'load-novice-band']);

/** The least step of a change that keeps the limit: how many refusals it leaves, and whether it leaves nothing at all. */
type Kept = Readonly<{ offer: Offer; refuses: number; all: boolean }>;

/** Limits broken, refusals by code: what a change must not bring. */
const refusedCodes = (s: Situation): ReadonlySet<string> =>
  new Set(
    verdictsOf(s, rideOf(s))
      .filter(v => v.severity === 'refuse')
      .map(v => v.code),
  );

/**
 * The single changes after which a limit is kept and none that refuses is newly broken: each tried for real on the build, none
 * promised. Those after which nothing is left to refuse or warn of come first, then the cheapest.
 */
export const mendsFor = (s: Situation, code: string): readonly Offer[] => {
  const had = refusedCodes(s);
  const alike = MENDED_WITH[code] ?? [];
  return (WAYS[code]?.(s) ?? [])
    .flatMap(({ remedy, tries, minutes = MINUTES }): Kept[] => {
      let kept: Kept | null = null;
      for (const { change, fills } of tries) {
        const after = changed(s, change);
        if (after === null) continue;
        const ride = rideOf(after);
        if (ride.stalls) continue;
        const verdicts = verdictsOf(after, ride);
        const refuses = verdicts.filter(v => v.severity === 'refuse');
        if (verdicts.some(v => v.code === code)) continue;
        if (refuses.some(v => !had.has(v.code) || alike.includes(v.code))) continue;
        const offer: Offer = { remedy, fills, minutes, plan: { ...change } };
        // One after which nothing is refused and nobody need be warned is looked for; else the one that leaves least, and changes least.
        if (refuses.length === 0 && !verdicts.some(v => WARNED.has(v.code)))
          return [{ offer, refuses: 0, all: true }];
        if (kept === null || refuses.length < kept.refuses)
          kept = { offer, refuses: refuses.length, all: false };
      }
      return kept === null ? [] : [kept];
    })
    .sort((a, b) => Number(b.all) - Number(a.all) || a.offer.minutes - b.offer.minutes)
    .map(({ offer }) => offer);
};

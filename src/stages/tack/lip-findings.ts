import { readingKey } from '../../build/fold.ts';
import type { RailName } from '../../ramp/design.ts';
import type { Fills, Finding, Offer } from '../sheet.ts';
import type { Situation } from '../situation.ts';
import { sortOffers } from '../sort-offers.ts';

/** A lip mark this far from the line's own is where it should be: a tape, a marker and a kerf each take a share, mm (common practice). */
const NEAR = 3;
/** Minutes to square a new mark round the tube, and to run a tape along the back wall again (common practice). */
const MINUTES = { mark: 5, tape: 10 } as const;

const length = (v: number) => ({ v, as: 'length' }) as const;

/** How far past (+) or short of (−) the line's lip the rail's lip mark stands, mm; null until it was read. */
const lipOff = (s: Situation, rail: RailName): { mm: number; entry: string } | null => {
  const read = s.build.readings.get(readingKey(`tack/twist@${rail}`, 'lip-mark'));
  return read === undefined ? null : { mm: read.value, entry: read.entry };
};

/**
 * A lip mark early or late. A length that is out gives no offset at all, so it is seen here only: a slit marked twice or left
 * out of the tape, or a tape read from its hook.
 */
export const lipFindings = (s: Situation): readonly Finding[] =>
  s.ramp.rails.flatMap((rail): Finding[] => {
    const off = lipOff(s, rail);
    const plan = s.ramp.plans.get(rail);
    if (off === null || plan === undefined || Math.abs(off.mm) <= NEAR) return [];
    const late = off.mm > 0;
    const spare = plan.cut_mm - plan.toLip_mm;
    // A mark that comes early is made up from what was left on to trim.
    const enough = late || -off.mm <= spare;
    const after = (v: number): NonNullable<Offer['after']> => ({ ...length(v), within: v <= NEAR });
    const fills: Fills = {
      rail,
      off: length(Math.abs(off.mm)),
      spare: length(Math.max(0, spare + Math.min(0, off.mm))),
      limit: length(NEAR),
    };
    const frozen = { rail, off_mm: off.mm };
    const offers: Offer[] = [
      { remedy: 'lip-tape', fills, minutes: MINUTES.tape, plan: frozen, after: after(Math.abs(off.mm)) },
      { remedy: 'leave-lip', fills, minutes: 0, plan: frozen, after: after(Math.abs(off.mm)) },
      {
        remedy: 'lip-mark-anew',
        fills,
        minutes: MINUTES.mark,
        plan: frozen,
        after: after(enough ? 0 : -off.mm - spare),
      },
    ];
    return [
      {
        key: `lip-mark@${rail}:${off.entry}`,
        stage: 'tack',
        severity: enough ? 'watch' : 'fix',
        words: late ? 'lip-late' : enough ? 'lip-early' : 'lip-short',
        fills,
        tall: { v: off.mm, as: 'length', sign: true },
        worst_mm: Math.abs(off.mm),
        limit: length(NEAR),
        offers: sortOffers(offers),
      },
    ];
  });

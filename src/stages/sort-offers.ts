import type { Offer } from './sheet.ts';

const leaves = (offer: Offer): boolean => offer.remedy.startsWith('leave');

/** Whether a remedy brings the thing within its limit; one that predicts nothing does, unless it only leaves it. */
const mends = (offer: Offer): boolean => offer.after?.within ?? !leaves(offer);

/** What a remedy that does not bring it within the limit leaves over: nothing said is the most. */
const left = (offer: Offer): number => offer.after?.v ?? Number.MAX_VALUE;

/** Of those that do not mend: what leaves least over first, and only leaving it after all that do something. */
const byLeft = (a: Offer, b: Offer): number => left(a) - left(b) || Number(leaves(a)) - Number(leaves(b));

/** Remedies best first: within the limit before over it, those by least minutes, these by what they leave over. */
export const sortOffers = (offers: readonly Offer[]): readonly Offer[] =>
  [...offers].sort(
    (a, b) => Number(mends(b)) - Number(mends(a)) || (mends(a) ? 0 : byLeft(a, b)) || a.minutes - b.minutes,
  );
